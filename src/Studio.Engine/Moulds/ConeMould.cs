namespace Studio.Engine.Moulds;

/// <summary>A round mould with straight walls: a cone, a cut cone, or a cylinder when both diameters are equal.</summary>
public sealed class ConeMould : TaperedMould
{
    private const int CirclePoints = 180;

    private readonly double bottomMm;
    private readonly double growth;

    private ConeMould(double bottomMm, double topMm, double heightMm)
        : base(Kind, heightMm, Area(bottomMm, (topMm - bottomMm) / heightMm), (topMm - bottomMm) / heightMm / 2)
    {
        (this.bottomMm, growth) = (bottomMm, (topMm - bottomMm) / heightMm);
        Outline = new Outline(RadiusMm, z => Circle(RadiusMm(z), CirclePoints));
    }

    /// <summary>Key, words and dimensions of this shape.</summary>
    public static MouldShape Kind { get; } = new(
        "cone",
        "Cone or cylinder",
        [
            new Dimension("bottomDiameterMm", "Diameter at the bottom", "mm", 0, Dimension.LongestMm) { Example = 70 },
            Dimension.Length("topDiameterMm", "Diameter at the open top"),
            Dimension.Height,
        ],
        d => new ConeMould(d["bottomDiameterMm"], d["topDiameterMm"], d["heightMm"]))
    {
        Called = s => Words(s.Dimensions.GetValueOrDefault("bottomDiameterMm"), s.Dimensions.GetValueOrDefault("topDiameterMm")),
        Note = "A cylinder has the same diameter below and above, a cone with a point none below.",
        Grid = MouldGrid.Round,
    };

    /// <summary>A cylinder of a diameter and a height [mm].</summary>
    public static MouldSpec Cylinder(double diameterMm, double heightMm) =>
        new(Kind.Key, new Dictionary<string, double>(StringComparer.Ordinal) { ["bottomDiameterMm"] = diameterMm, ["topDiameterMm"] = diameterMm, ["heightMm"] = heightMm });

    /// <inheritdoc/>
    public override string DisplayName => Words(bottomMm, bottomMm + (growth * HeightMm));

    /// <inheritdoc/>
    public override Outline Outline { get; }

    /// <inheritdoc/>
    protected override double GapInPlanMm(double halfWidthMm, double halfDepthMm, double zMm) =>
        RadiusMm(zMm) - Math.Sqrt((halfWidthMm * halfWidthMm) + (halfDepthMm * halfDepthMm));

    private static string Words(double bottomMm, double topMm) => bottomMm == 0 ? "Cone" : Math.Abs(bottomMm - topMm) < 1e-9 ? "Cylinder" : "Sloping round";

    private static (double Area0, double Area1, double Area2) Area(double bottom, double growth) =>
        (Math.PI / 4 * bottom * bottom, Math.PI / 2 * bottom * growth, Math.PI / 4 * growth * growth);

    private double RadiusMm(double zMm) => (bottomMm + (growth * Height(zMm))) / 2;
}
