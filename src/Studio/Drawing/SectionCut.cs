using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>The inside of a mould cut through the middle, as it stands for casting [mm].</summary>
internal abstract class SectionCut(MouldBody mould)
{
    /// <summary>From the lowest inner point to the rim [mm].</summary>
    protected double HeightMm { get; } = mould.HeightMm;

    /// <summary>The leftmost and the rightmost x of the whole.</summary>
    public abstract (double Left, double Right) Extent { get; }

    /// <summary>Cuts a mould: a mesh by the plane y = 0, any other through the middles of two opposite faces.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="toleranceMm">What is drawn may lie this far from where the wall is.</param>
    public static SectionCut Of(MouldBody mould, double toleranceMm) =>
        mould.Shape.Needs == MouldNeeds.Mesh ? new MeshCutThrough(mould, toleranceMm) : new ProfileCut(mould, toleranceMm);

    /// <summary>What lies between two heights: outlines and holes, inside by the even-odd rule; none where nothing is between them.</summary>
    public IReadOnlyList<IReadOnlyList<SectionPoint>> Between(double fromMm, double toMm)
    {
        var (from, to) = (Inside(fromMm), Inside(toMm));
        return to > from ? Rings(from, to) : [];
    }

    /// <summary>Where a height runs inside, from left to right.</summary>
    public abstract IReadOnlyList<(double Left, double Right)> Spans(double zMm);

    /// <summary>The former's walls and the room it keeps free.</summary>
    public IEnumerable<SectionBox> Boxes(FormerSpec former)
    {
        var half = former.OuterWidthMm / 2;
        var floor = Inside(former.Solid ? former.FromMm : former.FloorMm ?? former.FromMm);
        var wall = former.WallMm is { } w && !former.Solid ? w : 0;
        var from = Inside(former.FromMm);
        if (!(half > 0) || !(HeightMm > from))
        {
            return [];
        }

        return former.Solid || !(wall > 0) || wall >= half
            ? [new(-half, half, from, HeightMm, !former.Solid)]
            : [new(-half + wall, half - wall, floor, HeightMm, Open: true), new(-half, -half + wall, from, HeightMm, Open: false), new(half - wall, half, from, HeightMm, Open: false)];
    }

    /// <summary>What lies between two heights inside the mould.</summary>
    protected abstract IReadOnlyList<IReadOnlyList<SectionPoint>> Rings(double fromMm, double toMm);

    /// <summary>A height kept inside the mould.</summary>
    protected double Inside(double zMm) => double.IsNaN(zMm) ? 0 : Math.Clamp(zMm, 0, HeightMm);
}
