using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>Traces the mould's wall in section; a straight wall needs two points, a curved one as many as it takes.</summary>
internal sealed class SectionOutline(Mould mould, bool asStands)
{
    /// <summary>A chord may miss the wall by this much: thinner than a line on paper.</summary>
    private const double ToleranceMm = 0.02;

    private const int Deepest = 10;

    private static readonly double[] Looks = [0.25, 0.5, 0.75];

    /// <summary>The greatest width [mm].</summary>
    public double WidestMm { get; } = 2 * Trace(mould, 0, mould.HeightMm).Max(p => p.XMm);

    /// <summary>Half the width at a height, which is kept inside the mould [mm].</summary>
    public double HalfWidthMm(double zMm) => mould.Outline.HalfWidthMm(Inside(zMm));

    /// <summary>The closed outline between two heights as it stands for casting; empty when nothing is between them.</summary>
    public IReadOnlyList<SectionPoint> Between(double fromMm, double toMm)
    {
        var (from, to) = (Inside(fromMm), Inside(toMm));
        if (!(to > from))
        {
            return [];
        }

        var right = Trace(mould, from, to);
        return [.. right.Concat(right.AsEnumerable().Reverse().Select(p => p with { XMm = -p.XMm })).Select(Turn)];
    }

    /// <summary>The former's walls and the room it keeps free.</summary>
    public IEnumerable<SectionBox> Boxes(FormerSpec former)
    {
        var half = former.OuterWidthMm / 2;
        var floor = Inside(former.Solid ? former.FromMm : former.FloorMm ?? former.FromMm);
        var wall = former.WallMm is { } w && !former.Solid ? w : 0;
        var from = Inside(former.FromMm);
        if (!(half > 0) || !(mould.HeightMm > from))
        {
            return [];
        }

        return former.Solid || !(wall > 0) || wall >= half
            ? [Box(-half, half, from, mould.HeightMm, open: !former.Solid)]
            : [Box(-half + wall, half - wall, floor, mould.HeightMm, open: true), Box(-half, -half + wall, from, mould.HeightMm, open: false), Box(half - wall, half, from, mould.HeightMm, open: false)];
    }

    private static List<SectionPoint> Trace(Mould mould, double fromMm, double toMm)
    {
        var points = new List<SectionPoint> { At(mould, fromMm) };
        Refine(mould, At(mould, fromMm), At(mould, toMm), points, 0);
        return points;
    }

    // halve until the wall runs straight between two points; three looks in between so that a bulge is not missed
    private static void Refine(Mould mould, SectionPoint low, SectionPoint high, List<SectionPoint> points, int depth)
    {
        var straight = Looks.All(t =>
            Math.Abs(mould.Outline.HalfWidthMm(low.ZMm + (t * (high.ZMm - low.ZMm))) - (low.XMm + (t * (high.XMm - low.XMm)))) < ToleranceMm);
        if (straight || depth >= Deepest)
        {
            points.Add(high);
            return;
        }

        var middle = At(mould, low.ZMm + ((high.ZMm - low.ZMm) / 2));
        Refine(mould, low, middle, points, depth + 1);
        Refine(mould, middle, high, points, depth + 1);
    }

    private static SectionPoint At(Mould mould, double zMm) => new(mould.Outline.HalfWidthMm(zMm), zMm);

    private SectionBox Box(double left, double right, double low, double high, bool open) =>
        asStands ? new(left, right, low, high, open) : new(left, right, mould.HeightMm - high, mould.HeightMm - low, open);

    private SectionPoint Turn(SectionPoint p) => asStands ? p : p with { ZMm = mould.HeightMm - p.ZMm };

    private double Inside(double zMm) => double.IsNaN(zMm) ? 0 : Math.Clamp(zMm, 0, mould.HeightMm);
}
