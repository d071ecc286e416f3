using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;
using Studio.Engine.Tests.Meshes;

namespace Studio.Engine.Tests.Forecast;

/// <summary>What is told of a mould of which only the areas are known, beside three dimensions of one whose walls are. The whole table is in docs/measurements.md.</summary>
public sealed class RoundBodyTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    // the worst of each column of the table, and some of every shape
    public static TheoryData<string> Some =>
    [
        "bar 1:4, 40, medium", "bar 1:4, 15, casting", "oblong 1:4, 20+20, medium", "oblong 1:2, 20+20, medium", "cube 50, 20+20, medium", "prism of 3, 40, medium",
        "pyramid 150, 50+30+30+20+20, medium", "pyramid of 3, 70, medium", "square 200, 5, deep", "prism of 6, 15, deep",
        "bar 1:4, 40, medium x 1.25", "prism of 3, 40, medium x 1.25", "oblong 160 x 80 around air of 100 x 30, 40, medium",
    ];

    [Theory]
    [MemberData(nameof(Some))]
    [Trait("Slow", "solver")]
    public void The_bounds_hold_what_three_dimensions_say(string name)
    {
        var one = RoundCases.All.Single(c => c.Name == name);
        var measured = RoundCases.Measured(MouldShapes.Make(one.Spec).Value);
        var told = HeatForecast.Run(one.Input(measured), MouldShapes.Make(measured).Value, [.. one.DeepMm.Select(_ => new ForecastResin(null, null))], new ForecastGrid(false, new HeatFineness(12, 12, 3)), Stop);
        told.Model.ShouldBe("body of revolution with the mould's area at every height");
        foreach (var (layer, real) in told.Layers.Zip(HeatRun.Run(one.Input(one.Spec), MouldShapes.Make(one.Spec).Value, new HeatFineness(8, 10, 3), stop: Stop).Layers))
        {
            var bounds = layer.Intervals.ShouldNotBeNull();
            real.PeakCelsius.ShouldBeInRange(bounds.PeakC.From, bounds.PeakC.To + 0.01);
            real.PeakAfterHours.ShouldBeInRange(bounds.PeakAfterHours.From, bounds.PeakAfterHours.To);
            real.MouldFacePeakCelsius.ShouldBeInRange(bounds.FaceC.From, bounds.FaceC.To);
            real.LeastConversion.ShouldBeInRange(bounds.LeastConversion.From, bounds.LeastConversion.To + 1e-3);
            real.MeanConversion.ShouldBeInRange(bounds.MeanConversion.From, bounds.MeanConversion.To + 1e-3);
            real.FirstGelAfterHours!.Value.ShouldBeInRange(bounds.FirstGelAfterHours!.From * 0.995, bounds.FirstGelAfterHours.To);
            real.LastGelAfterHours!.Value.ShouldBeInRange(bounds.LastGelAfterHours!.From, bounds.LastGelAfterHours.To);
        }
    }

    [Fact]
    public void A_mesh_tells_how_long_its_outline_is()
    {
        Share(Solids.Turned(128, (0, 0), (40, 0), (40, 50), (0, 50))).ShouldBe(1, 1e-3);
        Share(Solids.Box(0, 0, 0, 100, 100, 50)).ShouldBe(2 / Math.Sqrt(Math.PI), 1e-9); // 4 a over 2 √(π a²)
        Share(Solids.Box(0, 0, 0, 100, 25, 50)).ShouldBe(2.5 / Math.Sqrt(Math.PI), 1e-9);
        Share(Solids.Box(0, 0, 0, 100, 25, 50)).ShouldBeLessThan(RoundBody.MostOutline);

        // a ring of radii 30 and 50 has two walls: 2 π 80 over 2 √(π π 1600)
        var ring = MeshVolumeTests.Mould(Files.CavityOf(Solids.Torus(40, 10, 256, 64)));
        ring.OutlineShare(10).ShouldNotBeNull().ShouldBe(2, 0.01);
        MouldShapes.Make(new MouldSpec("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = 40, ["topDiameterMm"] = 40, ["heightMm"] = 10 })).Value.OutlineShare(5).ShouldBeNull();

        static double Share(TriangleMesh mesh) => MeshVolumeTests.Mould(Files.CavityOf(mesh)).OutlineShare(25)!.Value;
    }

    [Fact]
    public void Beyond_what_was_measured_no_latest_gel_is_told_and_it_is_said()
    {
        var (spec, mould) = Mesh(Solids.Box(0, 0, 0, 200, 20, 30));
        var told = HeatForecast.Run(Input(spec), mould, [new ForecastResin(null, null)], new ForecastGrid(false, new HeatFineness(6, 6, 2)), Stop);
        var bounds = told.Layers[0].Intervals.ShouldNotBeNull();
        told.Layers[0].LastGelAfterHours.ShouldNotBeNull();
        (bounds.LastGelAfterHours, bounds.FirstGelAfterHours).ShouldBe((null, null));
        (bounds.LeastConversion.From, bounds.PeakC.From, bounds.PeakC.To).ShouldBe((0, 23, told.Layers[0].PeakC));
        RoundBody.Findings(mould, Input(spec).Layers).Select(f => (f.Code, f.Severity)).ShouldBe([("round-body", Severity.Note), ("outline-beyond-measure", Severity.Warn)]);
    }

    [Fact]
    public void A_mould_whose_walls_are_known_is_left_alone()
    {
        var (input, mould) = Pieces.Tray(20);
        HeatForecast.Run(input, mould, [new ForecastResin(null, null)], preview: true, Stop).Layers[0].Intervals.ShouldBeNull();
        RoundBody.Findings(mould, input.Layers).ShouldBeEmpty();
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void Calc_heat_takes_a_measured_mould_and_says_what_stands_for_it()
    {
        var result = Ask.Result("heat", """
            {
              "mould": {
                "shape": "measured", "wall": { "thicknessMm": 8 },
                "readings": [{ "heightMm": 0, "volumeMl": 0 }, { "heightMm": 10, "volumeMl": 40 }, { "heightMm": 30, "volumeMl": 160 }, { "heightMm": 60, "volumeMl": 420 }]
              },
              "room": [{ "hours": 0, "celsius": 23 }],
              "resins": { "deep": { "kinetics": { "rateAt23CPerS": 0.00004, "kappa": 0.04, "activationJPerMol": 55000, "heatJPerKg": 360000 } } },
              "layers": [{ "resin": "deep", "thicknessMm": 25, "pouredAtHours": 0 }, { "resin": "deep", "thicknessMm": 25, "pouredAtHours": 30 }],
              "untilHours": 100
            }
            """);
        result.Text("model").ShouldBe("body of revolution with the mould's area at every height");
        result.At("findings").EnumerateArray().Select(f => f.Text("code")).ShouldBe(["round-body"]);
        foreach (var layer in new[] { "layers[0]", "layers[1]" })
        {
            result.Number(layer + ".interval.peakCelsius[0]").ShouldBeLessThan(result.Number(layer + ".peakCelsius"));
            result.Number(layer + ".interval.peakCelsius[1]").ShouldBe(result.Number(layer + ".peakCelsius"));
            result.Number(layer + ".interval.lastGelAfterHours[1]").ShouldBe(RoundBody.LatestGel * result.Number(layer + ".lastGelAfterHours"), 1e-9);
            result.Number(layer + ".interval.conversion.min[0]").ShouldBe(RoundBody.LeastOfLeast * result.Number(layer + ".conversion.min"), 1e-9);
        }

        Math.Abs(result.Number("energyBalance")).ShouldBeLessThan(1e-6);
    }

    private static HeatInput Input(MouldSpec spec) => Pieces.Tray(20).Input with { Mould = spec };

    private static (MouldSpec Spec, MouldBody Mould) Mesh(TriangleMesh mesh)
    {
        var spec = new MouldSpec("mesh", new Dictionary<string, double>(StringComparer.Ordinal)) { Mesh = new MeshSource("cavity.obj", "mm", "+z"), Cavity = Files.CavityOf(mesh) };
        return (spec, MouldShapes.Make(spec).Value);
    }
}
