namespace Studio.Papers;

/// <summary>The two sheet sizes that a studio's printer takes.</summary>
public enum PaperSize
{
    /// <summary>210 × 297 mm.</summary>
    A4,

    /// <summary>215.9 × 279.4 mm (8½ × 11 in).</summary>
    Letter,
}

/// <summary>Lengths on paper.</summary>
internal static class Measure
{
    /// <summary>Points [1/72 in] of a length [mm].</summary>
    public static double Mm(double millimetres) => millimetres * 72 / 25.4;

    public static double WidthMm(this PaperSize size) => size is PaperSize.Letter ? 215.9 : 210;

    public static double HeightMm(this PaperSize size) => size is PaperSize.Letter ? 279.4 : 297;
}
