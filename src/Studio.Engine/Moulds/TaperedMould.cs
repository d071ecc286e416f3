namespace Studio.Engine.Moulds;

/// <summary>
/// A mould whose walls are straight from bottom to rim: its area is a quadratic in z, so volume and moment are exact polynomials
/// (prismatoid; Machinery's Handbook, Volumes of Solids).
/// </summary>
public abstract class TaperedMould : MouldBody
{
    private readonly double area0;
    private readonly double area1;
    private readonly double area2;
    private readonly double lean;

    /// <summary>Takes area(z) = area0 + area1·z + area2·z² [mm²] and how far a wall moves outwards per mm of height [mm/mm].</summary>
    protected TaperedMould(MouldShape shape, double heightMm, (double Area0, double Area1, double Area2) area, double leanPerMm)
        : base(shape, heightMm)
    {
        (area0, area1, area2) = area;
        lean = Math.Sqrt(1 + (leanPerMm * leanPerMm));
    }

    /// <inheritdoc/>
    public override double AreaMm2(double zMm)
    {
        var z = Height(zMm);
        return area0 + (z * (area1 + (z * area2)));
    }

    /// <inheritdoc/>
    public override double VolumeMl(double zMm)
    {
        var z = Height(zMm);
        return z * (area0 + (z * ((area1 / 2) + (z * area2 / 3)))) / 1000;
    }

    /// <inheritdoc/>
    public override double MomentMlMm(double zMm)
    {
        var z = Height(zMm);
        return z * z * ((area0 / 2) + (z * ((area1 / 3) + (z * area2 / 4)))) / 1000;
    }

    /// <inheritdoc/>
    public override double FaceMarkMm(double zMm) => Height(zMm) * lean;

    /// <inheritdoc/>
    public override double ClearanceMm(double widthMm, double depthMm, double zMm) =>
        GapInPlanMm(Require.Positive(widthMm, "mm") / 2, Require.Positive(depthMm, "mm") / 2, Height(zMm)) / lean;

    /// <summary>Smallest horizontal distance from a centred rectangle to a wall [mm]; negative where it pokes through.</summary>
    protected abstract double GapInPlanMm(double halfWidthMm, double halfDepthMm, double zMm);
}
