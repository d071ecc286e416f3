using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>A mould whose section is the same on both sides of its axis: a straight wall needs two points, a curved one as many as it takes.</summary>
internal sealed class ProfileCut : SectionCut
{
    private const int Deepest = 10;

    private static readonly double[] Looks = [0.25, 0.5, 0.75];

    private readonly Func<double, double> halfWidth;
    private readonly double toleranceMm;
    private readonly double widest;

    public ProfileCut(MouldBody mould, double toleranceMm)
        : base(mould)
    {
        (halfWidth, this.toleranceMm) = (mould.Outline.HalfWidthMm, toleranceMm);
        widest = Trace(0, HeightMm).Max(p => p.XMm);
    }

    /// <inheritdoc/>
    public override (double Left, double Right) Extent => (-widest, widest);

    /// <inheritdoc/>
    public override IReadOnlyList<(double Left, double Right)> Spans(double zMm) => halfWidth(Inside(zMm)) is > 0 and var half ? [(-half, half)] : [];

    /// <inheritdoc/>
    protected override IReadOnlyList<IReadOnlyList<SectionPoint>> Rings(double fromMm, double toMm)
    {
        var right = Trace(fromMm, toMm);
        var all = new SectionPoint[2 * right.Count];
        for (var i = 0; i < right.Count; i++)
        {
            (all[i], all[^(i + 1)]) = (right[i], right[i] with { XMm = -right[i].XMm });
        }

        return [all];
    }

    private List<SectionPoint> Trace(double fromMm, double toMm)
    {
        var points = new List<SectionPoint> { At(fromMm) };
        Refine(points[0], At(toMm), points, 0);
        return points;
    }

    // halve until the wall runs straight between two points; three looks in between so that a bulge is not missed
    private void Refine(SectionPoint low, SectionPoint high, List<SectionPoint> points, int depth)
    {
        if (depth >= Deepest || Straight(low, high))
        {
            points.Add(high);
            return;
        }

        var middle = At(low.ZMm + ((high.ZMm - low.ZMm) / 2));
        Refine(low, middle, points, depth + 1);
        Refine(middle, high, points, depth + 1);
    }

    // a steep wall is looked at sideways, a flat floor up and down: the distance square to the chord counts
    private bool Straight(SectionPoint low, SectionPoint high)
    {
        var (dx, dz) = (high.XMm - low.XMm, high.ZMm - low.ZMm);
        var allowed = toleranceMm * Math.Sqrt((dx * dx) + (dz * dz)) / dz;
        return Array.TrueForAll(Looks, t => Math.Abs(halfWidth(low.ZMm + (t * dz)) - (low.XMm + (t * dx))) <= allowed);
    }

    private SectionPoint At(double zMm) => new(halfWidth(zMm), zMm);
}
