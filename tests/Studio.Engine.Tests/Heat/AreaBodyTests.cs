using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;
using Studio.Engine.Tests.Forecast;
using Studio.Engine.Tests.Meshes;
using Solids = Studio.Engine.Tests.Meshes.Solids;

namespace Studio.Engine.Tests.Heat;

/// <summary>The round body that stands for a mould of which only the areas are known.</summary>
public sealed class AreaBodyTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    // radii and heights, turned about the middle line
    private static readonly Dictionary<string, (double Radius, double Z)[]> Lines = new(StringComparer.Ordinal)
    {
        ["cylinder"] = [(0, 0), (40, 0), (40, 60), (0, 60)],
        ["foot"] = [(0, 0), (15, 0), (15, 20), (45, 20), (45, 60), (0, 60)], // a step at 20 mm, where a layer may end
        ["narrow top"] = [(0, 0), (45, 0), (45, 25), (20, 25), (20, 60), (0, 60)],
        ["waist"] = [(0, 0), (40, 0), (18, 30), (40, 60), (0, 60)],
        ["point below"] = [(0, 0), (45, 60), (0, 60)],
        ["point above"] = [(0, 0), (45, 0), (0, 60)],
        ["undercut"] = [(0, 0), (25, 0), (25, 18), (50, 22), (50, 30), (30, 31), (30, 60), (0, 60)],
        ["relief at the bottom"] = [(0, 0), (10, 0), (10, 1), (40, 1), (40, 60), (0, 60)],
    };

    public static TheoryData<string, string> Grids => [.. Lines.Keys.Append("ball").SelectMany(l => new[] { "40", "20+20", "20+3+17", "7+6+5+25" }.Select(d => (l, d)))];

    [Theory]
    [MemberData(nameof(Grids))]
    public void Every_layer_of_the_grid_holds_what_the_mould_holds(string line, string depths)
    {
        var mould = Mould(line);
        var input = Input(mould.Spec, depths);
        foreach (var fineness in new[] { new HeatFineness(), new HeatFineness(5, 6, 1), new HeatFineness(16, 20, 5) })
        {
            var grid = HeatModel.Grid(input, mould.Body, fineness, preview: false);
            grid.IsRound.ShouldBeTrue();
            foreach (var layer in input.Layers)
            {
                grid.PlanesMm.ShouldContain(z => Math.Abs(z - layer.ToMm) < 1e-9);
                Ml(grid, layer).ShouldBe(mould.Body.VolumeMl(layer.ToMm) - mould.Body.VolumeMl(layer.FromMm), 0.01 * (mould.Body.VolumeMl(layer.ToMm) - mould.Body.VolumeMl(layer.FromMm)), $"{layer.FromMm} to {layer.ToMm} mm");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Grids))]
    public void Planes_rise_and_the_wall_is_nowhere_thinner_than_it_is(string line, string depths)
    {
        var mould = Mould(line);
        var grid = HeatModel.Grid(Input(mould.Spec, depths), mould.Body, new HeatFineness(), preview: false);
        grid.PlanesMm.Zip(grid.PlanesMm.Skip(1)).ShouldAllBe(p => p.Second - p.First > 0.04);
        for (var k = 0; k <= grid.CellsK; k++)
        {
            double[] x = [.. Enumerable.Range(0, grid.CellsI + 1).Select(i => grid.X[grid.Node(i, 0, k)] * 1000)];
            x.ShouldBeInOrder();
            x.Distinct().Count().ShouldBe(x.Length);
            (x[^1] - x[6]).ShouldBeGreaterThan(8 - 1e-6);
        }
    }

    [Theory]
    [InlineData("mesh")]
    [InlineData("measured")]
    [InlineData("measured three times")]
    [Trait("Slow", "solver")]
    public void A_cylinder_is_as_warm_by_its_areas_as_by_its_walls(string known)
    {
        var cone = ConeMould.Cylinder(80, 60);
        var own = Run(cone, MouldShapes.Make(cone).Value, "20+25");
        var (spec, body) = known switch
        {
            "mesh" => Mould("cylinder", 256),
            _ => Measured(RoundCases.Measured(MouldShapes.Make(cone).Value, known == "measured" ? 60 : 3)),
        };
        foreach (var (got, want) in Run(spec, body, "20+25").Layers.Zip(own.Layers))
        {
            got.PeakCelsius.ShouldBe(want.PeakCelsius, 0.1);
            got.PeakAfterHours.ShouldBe(want.PeakAfterHours, 0.01 * want.PeakAfterHours);
            got.MouldFacePeakCelsius.ShouldBe(want.MouldFacePeakCelsius, 0.1);
            got.LastGelAfterHours!.Value.ShouldBe(want.LastGelAfterHours!.Value, 0.01 * want.LastGelAfterHours.Value);
            got.LeastConversion.ShouldBe(want.LeastConversion, 0.003);
        }
    }

    // a cone keeps its slopes, and a water factor its volumes
    [Fact]
    [Trait("Slow", "solver")]
    public void A_cone_by_its_areas_is_the_cone()
    {
        var cone = new MouldSpec("cone", new Dictionary<string, double>(StringComparer.Ordinal) { ["bottomDiameterMm"] = 40, ["topDiameterMm"] = 110, ["heightMm"] = 60 });
        var own = Run(cone, MouldShapes.Make(cone).Value, "20+25");
        var (spec, body) = Measured(RoundCases.Measured(MouldShapes.Make(cone).Value));
        Run(spec, body, "20+25").Layers.Zip(own.Layers).ShouldAllBe(l => Math.Abs(l.First.PeakCelsius - l.Second.PeakCelsius) < 0.15 && Math.Abs(l.First.MouldFacePeakCelsius - l.Second.MouldFacePeakCelsius) < 0.15);
        var wider = spec with { VolumeFactor = 1.21 };
        var scaled = cone with { VolumeFactor = 1.21 };
        Run(wider, MouldShapes.Make(wider).Value, "20+25").Layers.Zip(Run(scaled, MouldShapes.Make(scaled).Value, "20+25").Layers)
            .ShouldAllBe(l => Math.Abs(l.First.PeakCelsius - l.Second.PeakCelsius) < 0.15);
    }

    [Theory]
    [InlineData(true, true)]
    [InlineData(true, false)]
    [InlineData(false, false)]
    [Trait("Slow", "solver")]
    public void A_box_for_the_lights_stands_in_it_as_in_a_cylinder(bool solid, bool silicone)
    {
        var cone = ConeMould.Cylinder(80, 60);
        var (spec, body) = Mould("cylinder", 256);
        var former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 30, FromMm = 12, Solid = solid, WallMm = solid ? null : 2, FloorMm = solid ? null : 15 };
        HeatInput With(HeatInput input) => input with { Former = former, Fill = new FillSpec(silicone, 5) };
        var own = HeatRun.Run(With(Input(cone, "20+25")), MouldShapes.Make(cone).Value, new HeatFineness(10, 10, 2), stop: Stop);
        var got = HeatRun.Run(With(Input(spec, "20+25")), body, new HeatFineness(10, 10, 2), stop: Stop);
        got.Layers.Zip(own.Layers).ShouldAllBe(l => Math.Abs(l.First.PeakCelsius - l.Second.PeakCelsius) < 0.1 && Math.Abs(l.First.PeakAfterHours - l.Second.PeakAfterHours) < 0.1);
        Math.Abs(got.Layers[1].PeakCelsius - Run(spec, body, "20+25").Layers[1].PeakCelsius).ShouldBeGreaterThan(0.2, "the box counts");
    }

    // the same step in a grid of upright and level lines, each cell wholly resin or wall: nothing of it slopes
    [Theory]
    [InlineData("foot", "20+25")]
    [InlineData("foot", "45")]
    [InlineData("narrow top", "45")]
    [Trait("Slow", "solver")]
    public void A_step_is_as_warm_as_in_a_grid_of_squares(string line, string depths)
    {
        var (spec, body) = Mould(line, 256);
        var input = Input(spec, depths) with { Boundary = new BoundarySpec(8, 8, 8, 8) };
        var got = HeatRun.Run(input, body, new HeatFineness(16, 20, 5), stop: Stop);
        var squares = HeatRun.Run(input, Squares(input, Lines[line]), 1, Stop);
        foreach (var (l, s) in got.Layers.Zip(squares.Layers))
        {
            var rise = s.PeakCelsius - 23;
            l.PeakCelsius.ShouldBeInRange(s.PeakCelsius - Math.Max(0.3, 0.02 * rise), s.PeakCelsius + Math.Max(0.5, 0.05 * rise), "warmer is on the safe side");
        }
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void A_finer_grid_tells_the_same()
    {
        foreach (var line in new[] { "undercut", "waist", "ball" })
        {
            var (spec, body) = Mould(line);
            var (coarse, fine) = (Run(spec, body, "20+20", new HeatFineness(12, 14, 4)), Run(spec, body, "20+20", new HeatFineness(24, 28, 8)));
            coarse.Layers.Zip(fine.Layers).ShouldAllBe(l => Math.Abs(l.First.PeakCelsius - l.Second.PeakCelsius) < 0.4, line);
        }
    }

    private static HeatOutcome Run(MouldSpec spec, MouldBody body, string depths, HeatFineness? fineness = null) =>
        HeatRun.Run(Input(spec, depths), body, fineness ?? new HeatFineness(10, 10, 2), stop: Stop);

    private static HeatInput Input(MouldSpec spec, string depths)
    {
        var input = Pieces.Layers(ConeMould.Cylinder(80, 60), [.. depths.Split('+').Select(d => double.Parse(d, System.Globalization.CultureInfo.InvariantCulture))], 23, 20, 100).Input;
        return input with { Mould = spec, Wall = input.Wall with { ThicknessMm = 8, FloorMm = 8 } };
    }

    private static (MouldSpec Spec, MouldBody Body) Mould(string line, int sides = 96)
    {
        var mesh = line == "ball" ? Solids.Ball(30, 4).Moved(p => p with { Z = p.Z + 30 }) : Solids.Turned(sides, [.. Lines[line].Select(p => (p.Radius * Math.Sqrt(2 * Math.PI / sides / Math.Sin(2 * Math.PI / sides)), p.Z))]);
        var spec = new MouldSpec("mesh", new Dictionary<string, double>(StringComparer.Ordinal)) { Mesh = new MeshSource("cavity.obj", "mm", "+z"), Cavity = Files.CavityOf(mesh) };
        return (spec, MouldShapes.Make(spec).Value);
    }

    private static (MouldSpec Spec, MouldBody Body) Measured(MouldSpec spec) => (spec, MouldShapes.Make(spec).Value);

    private static double Ml(HeatGrid grid, HeatLayer layer)
    {
        double m3 = 0;
        for (var k = 0; k < grid.CellsK; k++)
        {
            var middle = (grid.PlanesMm[k] + grid.PlanesMm[k + 1]) / 2;
            for (var i = 0; i < grid.CellsI && middle > layer.FromMm && middle < layer.ToMm; i++)
            {
                m3 += grid.Region(i, 0, k) is HeatRegion.Inside ? HeatCell.Integrate(grid, grid.Corners(i, 0, k)).Volume.Sum() : 0;
            }
        }

        return 2 * Math.PI * m3 * 1e6;
    }

    // outside the wall there is room: eight millimetres measured level, and as much over and under a ledge
    private static HeatGrid Squares(HeatInput input, (double Radius, double Z)[] line)
    {
        double[] edges = [0, .. line.Select(p => p.Radius).Where(r => r > 0), .. line.Select(p => p.Radius + 8).Where(r => r > 8)];
        double[] heights = [-8, .. line.Select(p => p.Z), .. input.Layers.Select(l => l.ToMm), .. line.Select(p => p.Z - 8).Where(z => z > 0), .. line.Select(p => p.Z + 8).Where(z => z < 60)];
        var (across, planes) = (Divided(edges, 1.5), Divided(heights, 1.25));
        double Inner(double z) => line.Zip(line.Skip(1)).First(p => p.First.Z < z && p.Second.Z >= z).First.Radius;
        bool Wall(double r, double z) => Enumerable.Range(-16, 33).Select(k => z + (k * 0.5)).Any(near => near is > 0 and < 60 && r < Inner(near) + 8);
        return new HeatGrid(HeatSymmetry.Round, 3, planes, [.. planes.Select(_ => across)], [[0, 1]], (i, _, k) =>
        {
            var (r, z) = ((across[i] + across[i + 1]) / 2, (planes[k] + planes[k + 1]) / 2);
            return z > 0 && r < Inner(z) ? HeatRegion.Inside : z < 0 ? r < Inner(0.1) + 8 ? HeatRegion.Mould : HeatRegion.Room : Wall(r, z) ? HeatRegion.Mould : HeatRegion.Room;
        });

        static double[] Divided(double[] at, double most)
        {
            double[] order = [.. at.Distinct().Order()];
            return [.. order.Take(1), .. order.Zip(order.Skip(1)).SelectMany(p => Enumerable.Range(1, (int)Math.Ceiling((p.Second - p.First) / most)) is var n ? n.Select(k => p.First + ((p.Second - p.First) * k / n.Count())) : [])];
        }
    }
}
