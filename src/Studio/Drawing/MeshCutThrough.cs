using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Drawing;

/// <summary>A mould of any form, cut by the plane y = 0: overhangs, islands and holes as they are.</summary>
internal sealed class MeshCutThrough : SectionCut
{
    private readonly FlatArea area;

    public MeshCutThrough(MouldBody mould, double toleranceMm)
        : base(mould)
    {
        area = MeshSection.Through(mould.Surface()).Simpler(toleranceMm);
        var across = area.Rings.SelectMany(r => r).Select(p => p.U).DefaultIfEmpty(0).ToList();
        Extent = (across.Min(), across.Max());
    }

    /// <inheritdoc/>
    public override (double Left, double Right) Extent { get; }

    // just below the rim, because at the rim itself nothing is left above
    /// <inheritdoc/>
    public override IReadOnlyList<(double Left, double Right)> Spans(double zMm) => area.Spans(Math.Min(Inside(zMm), HeightMm * (1 - 1e-6)));

    /// <inheritdoc/>
    protected override IReadOnlyList<IReadOnlyList<SectionPoint>> Rings(double fromMm, double toMm) =>
        [.. area.Between(fromMm <= 0 ? double.NegativeInfinity : fromMm, toMm >= HeightMm ? double.PositiveInfinity : toMm).Rings.Select(r => (IReadOnlyList<SectionPoint>)[.. r.Select(p => new SectionPoint(p.U, p.V))])];
}
