namespace Studio.Engine.Moulds;

/// <summary>An upright prism: the same regular polygon at every height.</summary>
public sealed class PrismMould : TaperedMould
{
    private readonly RegularPolygon polygon;
    private readonly double edgeMm;

    private PrismMould(RegularPolygon polygon, double edgeMm, double heightMm)
        : base(Kind, heightMm, (polygon.AreaOfUnitEdge * edgeMm * edgeMm, 0, 0), 0)
    {
        (this.polygon, this.edgeMm) = (polygon, edgeMm);
        Outline = new Outline(_ => polygon.HalfWidthMm(edgeMm), _ => polygon.Corners(edgeMm));
    }

    /// <summary>Key, words and dimensions of this shape.</summary>
    public static MouldShape Kind { get; } = new(
        "prism",
        "Prism",
        [Dimension.Sides(null), Dimension.Length("edgeMm", "Edge") with { Example = 52 }, Dimension.Height],
        d => new PrismMould(new RegularPolygon((int)d["sides"]), d["edgeMm"], d["heightMm"]))
    {
        Called = s => RegularPolygon.Called(s.Dimensions.GetValueOrDefault("sides", 4)) + " prism",
        Grid = MouldGrid.Sided(s => (int)s.Dimensions["sides"]),
    };

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    protected override double GapInPlanMm(double halfWidthMm, double halfDepthMm, double zMm) =>
        polygon.GapMm(edgeMm, halfWidthMm, halfDepthMm);
}
