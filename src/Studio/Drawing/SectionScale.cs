namespace Studio.Drawing;

/// <summary>One scale for several small drawings side by side, so that a large mould looks large.</summary>
/// <param name="PxPerMm">Drawing units a mm.</param>
public sealed record SectionScale(double PxPerMm)
{
    private const double LeastPx = 30;
    private const double MarginPx = 10;

    /// <summary>The scale at which the greatest of them fills a square.</summary>
    public static SectionScale For(IEnumerable<SectionView?> views, double squarePx)
    {
        var greatest = views.OfType<SectionView>().Select(v => Math.Max(v.WidestMm, v.HeightMm)).DefaultIfEmpty(0).Max();
        return new SectionScale(greatest > 0 ? squarePx / greatest : 1);
    }

    /// <summary>Width for <see cref="SectionDrawing.Width"/>.</summary>
    public double Width(SectionView view) => Math.Max(LeastPx, view.WidestMm * PxPerMm) + MarginPx;

    /// <summary>Height for <see cref="SectionDrawing.Tallest"/>.</summary>
    public double Tallest(SectionView view) => Math.Max(LeastPx, view.HeightMm * PxPerMm) + MarginPx;
}
