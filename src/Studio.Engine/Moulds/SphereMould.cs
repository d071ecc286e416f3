namespace Studio.Engine.Moulds;

/// <summary>A sphere cut by its pouring hole, or a dome where the hole is as wide as the sphere. Cap: V = π z² (R − z/3); Machinery's Handbook, Volumes of Solids.</summary>
public sealed class SphereMould : MouldBody
{
    private const int CirclePoints = 180;
    private const int Rings = 90;

    private readonly double radiusMm;

    private SphereMould(MouldShape kind, double diameterMm, double heightMm)
        : base(kind, heightMm)
    {
        radiusMm = diameterMm / 2;
        Outline = new Outline(RadiusAtMm, z => Circle(RadiusAtMm(z), CirclePoints));
    }

    /// <summary>A sphere with a pouring hole at its top.</summary>
    public static MouldShape Sphere { get; } = new(
        "sphere",
        "Sphere",
        [Dimension.Length("diameterMm", "Diameter"), Dimension.Length("openingDiameterMm", "Diameter of the pouring hole") with { Example = 36 }],
        d => new SphereMould(Sphere!, d["diameterMm"], Height(d["diameterMm"] / 2, d["openingDiameterMm"] / 2)))
    {
        Complaints = d => d["openingDiameterMm"] > d["diameterMm"]
            ? [("openingDiameterMm", FormattableString.Invariant($"The pouring hole, {d["openingDiameterMm"]} mm, cannot be wider than the sphere, {d["diameterMm"]} mm."))]
            : [],
        Grid = MouldGrid.Round with { PoleBelow = true, PoleAbove = true, BlockHalfMm = s => s.Dimensions["diameterMm"] / 2 },
    };

    /// <summary>Half a sphere, pole down.</summary>
    public static MouldShape Dome { get; } = new(
        "dome", "Dome", [Dimension.Length("diameterMm", "Diameter at the open top")], d => new SphereMould(Dome!, d["diameterMm"], d["diameterMm"] / 2))
    {
        Grid = MouldGrid.Round with { PoleBelow = true },
    };

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    public override IReadOnlyList<double> SurfaceHeightsMm =>
        [.. Enumerable.Range(0, Rings + 1).Select(k => Math.Clamp(radiusMm * (1 - Math.Cos(Angle(HeightMm) * k / Rings)), 0, HeightMm))];

    /// <inheritdoc/>
    public override double AreaMm2(double zMm)
    {
        var z = Height(zMm);
        return Math.PI * z * Math.Max(0, (2 * radiusMm) - z);
    }

    /// <inheritdoc/>
    public override double VolumeMl(double zMm)
    {
        var z = Height(zMm);
        return Math.PI * z * z * (radiusMm - (z / 3)) / 1000;
    }

    /// <inheritdoc/>
    public override double MomentMlMm(double zMm)
    {
        var z = Height(zMm);
        return Math.PI * z * z * z * ((2 * radiusMm / 3) - (z / 4)) / 1000;
    }

    /// <summary>Along the meridian from the pole: a tape lies there rather than a ruler.</summary>
    public override double FaceMarkMm(double zMm) => radiusMm * Angle(Height(zMm));

    /// <inheritdoc/>
    public override double ClearanceMm(double widthMm, double depthMm, double zMm)
    {
        var corner = Math.Sqrt((Require.Positive(widthMm, "mm") * widthMm) + (Require.Positive(depthMm, "mm") * depthMm)) / 2;
        var up = Height(zMm) - radiusMm;
        return radiusMm - Math.Sqrt((corner * corner) + (up * up));
    }

    private static double Height(double radius, double opening) => radius + Math.Sqrt(Math.Max(0, (radius - opening) * (radius + opening)));

    // from the pole; 2 asin of the half chord keeps its digits near the pole, where acos would lose them
    private double Angle(double zMm) => 2 * Math.Asin(Math.Min(1, Math.Sqrt(zMm / (2 * radiusMm))));

    private double RadiusAtMm(double zMm)
    {
        var z = Height(zMm);
        return Math.Sqrt(z * Math.Max(0, (2 * radiusMm) - z));
    }
}
