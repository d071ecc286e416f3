using Studio.Engine.Meshes;

namespace Studio.Engine.Moulds;

/// <summary>A mould whose volumes are those that water showed: the shape as drawn, every volume times a factor.</summary>
/// <param name="drawn">The mould as its dimensions say.</param>
/// <param name="factor">Measured over computed volume.</param>
internal sealed class ScaledMould(MouldBody drawn, double factor) : MouldBody(drawn.Shape, drawn.HeightMm)
{
    /// <inheritdoc/>
    public override string DisplayName => drawn.DisplayName;

    /// <inheritdoc/>
    public override Outline Outline => drawn.Outline;

    /// <inheritdoc/>
    public override IReadOnlyList<double> SurfaceHeightsMm => drawn.SurfaceHeightsMm;

    /// <inheritdoc/>
    public override double AreaMm2(double zMm) => factor * drawn.AreaMm2(zMm);

    /// <inheritdoc/>
    public override double VolumeMl(double zMm) => factor * drawn.VolumeMl(zMm);

    /// <inheritdoc/>
    public override double MomentMlMm(double zMm) => factor * drawn.MomentMlMm(zMm);

    /// <inheritdoc/>
    public override double FaceMarkMm(double zMm) => drawn.FaceMarkMm(zMm);

    /// <inheritdoc/>
    public override double ClearanceMm(double widthMm, double depthMm, double zMm) => drawn.ClearanceMm(widthMm, depthMm, zMm);

    /// <inheritdoc/>
    public override double ClearanceMm(double widthMm, double depthMm, double fromMm, double toMm) => drawn.ClearanceMm(widthMm, depthMm, fromMm, toMm);

    /// <inheritdoc/>
    public override double? OutlineShare(double zMm) => drawn.OutlineShare(zMm);

    /// <inheritdoc/>
    public override double HeightAtMl(double volumeMl) => drawn.HeightAtMl(volumeMl / factor);

    /// <inheritdoc/>
    public override TriangleMesh Surface() => drawn.Surface();
}
