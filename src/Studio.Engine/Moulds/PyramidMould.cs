namespace Studio.Engine.Moulds;

/// <summary>A pyramid cast tip down: a regular polygon whose edge grows evenly from the tip at z = 0 to the open base at the rim.</summary>
public sealed class PyramidMould : TaperedMould
{
    private const double UsualSides = 4;

    private readonly RegularPolygon polygon;
    private readonly double tipMm;
    private readonly double growth;

    private PyramidMould(RegularPolygon polygon, double baseMm, double tipMm, double heightMm)
        : base(Kind, heightMm, Area(polygon, tipMm, (baseMm - tipMm) / heightMm), (baseMm - tipMm) / heightMm * polygon.ApothemOfUnitEdge)
    {
        this.polygon = polygon;
        this.tipMm = tipMm;
        growth = (baseMm - tipMm) / heightMm;
        Outline = new Outline(z => polygon.HalfWidthMm(EdgeMm(z)), z => polygon.Corners(EdgeMm(z)));
    }

    /// <summary>Key, words and dimensions of this shape.</summary>
    public static MouldShape Kind { get; } = new(
        "pyramid",
        "Pyramid",
        [
            Dimension.Sides(UsualSides),
            Dimension.Length("baseMm", "Edge at the open top"),
            Dimension.Height,
            new Dimension("tipMm", "Edge of the flattened tip", "mm", 0, Dimension.LongestMm, 0),
        ],
        d => new PyramidMould(new RegularPolygon((int)d["sides"]), d["baseMm"], d["tipMm"], d["heightMm"]))
    {
        Called = s => RegularPolygon.Called(Sides(s)) + " pyramid",
        Grid = MouldGrid.Sided(s => (int)Sides(s)),
    };

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    protected override double GapInPlanMm(double halfWidthMm, double halfDepthMm, double zMm) =>
        polygon.GapMm(EdgeMm(zMm), halfWidthMm, halfDepthMm);

    private static double Sides(MouldSpec spec) => spec.Dimensions.GetValueOrDefault("sides", UsualSides);

    private static (double Area0, double Area1, double Area2) Area(RegularPolygon polygon, double tip, double growth)
    {
        var unit = polygon.AreaOfUnitEdge;
        return (unit * tip * tip, unit * 2 * tip * growth, unit * growth * growth);
    }

    private double EdgeMm(double zMm) => tipMm + (growth * Height(zMm));
}
