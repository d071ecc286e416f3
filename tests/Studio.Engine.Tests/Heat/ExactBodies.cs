using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>Bodies with an exact answer, of half width or radius 20 mm, in the solver's own grids; a wall of a micrometre takes no part.</summary>
internal static class ExactBodies
{
    public const double HalfM = 0.02;

    private const double SideMm = 2000 * HalfM;

    // of a body without ends; short, so that nothing can differ along it
    private const double EndlessMm = 4;

    /// <summary>A resin that does not react.</summary>
    public static Kinetics Inert { get; } = new() { RateAt23CPerS = 1e-30, Kappa = 1, ActivationJPerMol = 0, HeatJPerKg = 0 };

    /// <summary>
    /// The grid of a body and its input, with one film on every side that counts.
    /// "rod" is square in a quarter, "rod by eighths" in a sector; so are the cubes. Along an axis without an end there are two cells and no film.
    /// </summary>
    public static (HeatInput Input, HeatGrid Grid) Make(string body, int cells, double film, double hours, double startC, double roomC = 0)
    {
        var ends = body is "slab" or "sphere" or "cube" or "cube by eighths" ? film : 0;
        var heightMm = ends > 0 ? SideMm : EndlessMm;
        var (shape, sizes) = body switch
        {
            "slab" or "cylinder" => ("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = SideMm, ["topDiameterMm"] = SideMm, ["heightMm"] = heightMm }),
            "sphere" => ("sphere", new Dictionary<string, double> { ["diameterMm"] = SideMm, ["openingDiameterMm"] = 1e-3 }),
            "rod by eighths" or "cube by eighths" => ("prism", new Dictionary<string, double> { ["sides"] = 4, ["edgeMm"] = SideMm, ["heightMm"] = heightMm }),
            _ => ("cuboid", new Dictionary<string, double> { ["widthMm"] = SideMm, ["depthMm"] = SideMm, ["heightMm"] = heightMm }),
        };
        var spec = new MouldSpec(shape, sizes);
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 0.001, FloorMm = 0.001, ConductivityWPerMK = 0.2, DensityKgPerM3 = 1e-3, HeatCapacityJPerKgK = 1, StartCelsius = startC },
            Boundary = new BoundarySpec(ends, body is "slab" ? 0 : film, ends),
            Room = [new RoomReading(0, roomC)],
            Layers = [new HeatLayer(Inert, 1000, 2000, 0.2, 0, heightMm, 0, startC)], // diffusivity 1e-7 m2/s
            UntilHours = hours,
        };
        var (across, through) = (body is "slab" ? 2 : cells, body is "slab" or "cube" or "cube by eighths" ? 2 * cells : 2);
        return (input, body is "sphere" ? Sphere(cells) : HeatModel.Grid(input, MouldShapes.Make(spec).Value, new HeatFineness(across, through, 1), preview: false));
    }

    // a half square bent into a half disc, so that no cell is cut short at the poles
    private static HeatGrid Sphere(int cells)
    {
        double[] planes = [.. Enumerable.Range(0, (2 * cells) + 1).Select(k => SideMm * k / (2 * cells))];
        double[][] across = [.. planes.Select(_ => Enumerable.Range(0, cells + 1).Select(i => SideMm / 2 * i / cells).ToArray())];
        var grid = new HeatGrid(HeatSymmetry.Round, 3, planes, across, [[0, 1]], (_, _, _) => HeatRegion.Inside);
        for (var n = 0; n < grid.NodeCount; n++)
        {
            var (x, z) = (grid.X[n] / HalfM, (grid.Z[n] / HalfM) - 1);
            (grid.X[n], grid.Z[n]) = (HalfM * x * Math.Sqrt(1 - (z * z / 2)), HalfM * (1 + (z * Math.Sqrt(1 - (x * x / 2)))));
        }

        return grid;
    }
}
