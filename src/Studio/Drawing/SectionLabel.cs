namespace Studio.Drawing;

/// <summary>A name beside the drawing with the line that leads to it; all in drawing units (about one pixel each).</summary>
/// <param name="Number">The layer's, 0 for what is no layer.</param>
/// <param name="Lines">The name.</param>
/// <param name="Details">Smaller lines below it.</param>
/// <param name="Full">The name in full.</param>
/// <param name="Y">Top of the block of lines.</param>
public sealed record SectionLabel(int Number, IReadOnlyList<string> Lines, IReadOnlyList<string> Details, string Full, LayerState State, double X, double Y, double AnchorX, double AnchorY)
{
    internal const double NameSize = 15;
    internal const double DetailSize = 13;
    internal const double LineHeight = 18;
    internal const double DetailHeight = 16;

    /// <summary>Height of the block.</summary>
    public double Height => (Lines.Count * LineHeight) + (Details.Count * DetailHeight);

    /// <summary>Width of the block, a little too wide rather than too narrow.</summary>
    public double Width => Math.Max(Lines.Select(l => LetterWidth.Of(l, NameSize)).DefaultIfEmpty().Max(), Details.Select(l => LetterWidth.Of(l, DetailSize)).DefaultIfEmpty().Max());
}
