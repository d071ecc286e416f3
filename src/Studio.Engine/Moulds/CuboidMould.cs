namespace Studio.Engine.Moulds;

/// <summary>A box, each wall leaning outwards by the draft so that the piece comes out.</summary>
public sealed class CuboidMould : TaperedMould
{
    private readonly double widthMm;
    private readonly double depthMm;
    private readonly double draft;

    private CuboidMould(double widthMm, double depthMm, double heightMm, double draft)
        : base(Kind, heightMm, (widthMm * depthMm, 2 * draft * (widthMm + depthMm), 4 * draft * draft), draft)
    {
        (this.widthMm, this.depthMm, this.draft) = (widthMm, depthMm, draft);
        Outline = new Outline(HalfWidth, Corners);
    }

    /// <summary>Key, words and dimensions of this shape.</summary>
    public static MouldShape Kind { get; } = new(
        "cuboid",
        "Cuboid",
        [
            Dimension.Length("widthMm", "Width at the bottom"),
            Dimension.Length("depthMm", "Depth at the bottom"),
            Dimension.Height,
            new Dimension("draftDegrees", "Draft of the walls", "°", 0, 45, 0),
        ],
        d => new CuboidMould(d["widthMm"], d["depthMm"], d["heightMm"], Math.Tan(d["draftDegrees"] * Math.PI / 180)))
    {
        Grid = MouldGrid.Sided(_ => 4) with { Oblong = true },
    };

    /// <summary>A square block with upright walls, of a side and a height [mm].</summary>
    public static MouldSpec Square(double sideMm, double heightMm) =>
        new(Kind.Key, new Dictionary<string, double>(StringComparer.Ordinal) { ["widthMm"] = sideMm, ["depthMm"] = sideMm, ["heightMm"] = heightMm });

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    protected override double GapInPlanMm(double halfWidthMm, double halfDepthMm, double zMm) =>
        Math.Min(HalfWidth(zMm) - halfWidthMm, HalfDepth(zMm) - halfDepthMm);

    private double HalfWidth(double zMm) => (widthMm / 2) + (draft * Height(zMm));

    private double HalfDepth(double zMm) => (depthMm / 2) + (draft * Height(zMm));

    private IReadOnlyList<PlanPoint> Corners(double zMm)
    {
        var (x, y) = (HalfWidth(zMm), HalfDepth(zMm));
        return [new(x, -y), new(x, y), new(-x, y), new(-x, -y)];
    }
}
