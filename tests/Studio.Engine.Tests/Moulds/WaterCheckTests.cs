using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Tests.Moulds;

public sealed class WaterCheckTests
{
    // a cube of 100 mm: 10 ml a millimetre, so every figure below is worked by hand
    private static readonly MouldSpec Cube = new("cuboid", new Dictionary<string, double>(StringComparer.Ordinal) { ["widthMm"] = 100, ["depthMm"] = 100, ["heightMm"] = 100 });

    [Fact]
    public void The_factor_is_all_the_water_over_all_the_computed_volume() // (515 + 1010) / (500 + 1000)
    {
        var sum = Check((50, 515), (100, 1010));
        sum.Factor.ShouldBeNear(1525.0 / 1500);
        sum.Marks.Select(m => m.Ratio).ShouldBe([1.03, 1.01], 1e-12);
        sum.Marks.Select(m => m.ComputedMl).ShouldBe([500, 1000], 1e-9);
    }

    [Fact]
    public void The_spread_is_half_the_range_where_the_marks_disagree() // (1.06 - 1.00) / 2 / (1530 / 1500) = 2.941 %; a millimetre explains sqrt(200) / 1500 = 0.943 %
    {
        var sum = Check((50, 530), (100, 1000));
        sum.SpreadPercent.ShouldBeNear(100 * 0.03 / 1.02);
        sum.MarksDisagree.ShouldBeTrue();
    }

    [Fact]
    public void Marks_that_agree_by_luck_still_have_a_millimetre_each() // sqrt(10² + 10²) / 1500
    {
        var sum = Check((50, 515), (100, 1030));
        sum.SpreadPercent.ShouldBeNear(100 * Math.Sqrt(200) / 1500);
        sum.MarksDisagree.ShouldBeFalse();
    }

    [Fact]
    public void One_mark_is_as_good_as_a_millimetre_of_height() // 10 ml of 500 ml
    {
        var sum = Check((50, 515));
        sum.Factor.ShouldBeNear(1.03);
        sum.SpreadPercent.ShouldBeNear(2);
        sum.Findings.Select(f => f.Code).ShouldBe(["one-mark"]);
    }

    [Fact]
    public void A_mark_far_off_is_pointed_at_by_its_number()
    {
        var sum = Check((50, 510), (100, 1300));
        sum.Findings.Where(f => f.Code == "check-far-off").Select(f => f.Path).ShouldBe(["checks[1]"]);
        sum.Usable.ShouldBeTrue();
    }

    [Theory]
    [InlineData(260, 520, 840, 1)] // 1.04, 1.04, 1.05: no steady drift
    [InlineData(255, 525, 864, 2)] // 1.02, 1.05, 1.08: six hundredths from 25 to 80 mm; a millimetre explains 0.04 + 0.0125
    [InlineData(248, 500, 808, 1)] // 0.992, 1, 1.01: less than three hundredths
    public void A_steady_drift_means_another_shape(double low, double middle, double high, int findings)
    {
        var sum = WaterCheckSum.Run(Make(Cube), [new(25, low), new(50, middle), new(80, high)]).Value;
        sum.Findings.Count(f => f.Code == "shape-differs").ShouldBe(findings - 1);
    }

    [Fact]
    public void A_factor_beyond_reason_is_not_to_be_used() => Check((100, 2839)).Usable.ShouldBeFalse(); // fluid ounces taken for something else: 28.4 ml each

    [Fact]
    public void Everything_that_cannot_be_compared_is_said_at_once()
    {
        var errors = WaterCheckSum.Run(Make(Cube), [new(120, 500), new(0, 20), new(50, -1), new(double.NaN, 3), new(20, double.PositiveInfinity)]).Errors;
        errors.Select(e => e.Path).ShouldBe(["checks[0].heightMm", "checks[1].heightMm", "checks[2].volumeMl", "checks[3].heightMm", "checks[4].volumeMl"]);
        WaterCheckSum.Run(Make(Cube), []).Errors.Select(e => e.Path).ShouldBe(["checks"]);
    }

    [Fact]
    public void The_spread_travels_into_grams() // 2 % of 500 ml at 1.1 g/ml is 11 g; 100 ml of it are taken by a stone, which is not uncertain
    {
        var layer = new LayerSpec { Name = "clear", Resin = "r", ToMm = 50, Placed = [new PlacedSpec { Name = "stone", DisplacedMl = 100 }] };
        var result = Layers(Cube with { VolumeSpreadPercent = 2 }, layer);
        result.MixSpreadG!.Value.ShouldBeNear(0.02 * 500 * 1.1);
        result.MixG.ShouldBeNear(400 * 1.1);
        result.LevelSpreadMm.ShouldBeNull();
    }

    [Fact]
    public void Where_the_resin_is_given_the_level_is_uncertain_instead() // 500 ml stand 50 mm high, give or take 2 %
    {
        var result = Layers(Cube with { VolumeSpreadPercent = 2 }, new LayerSpec { Name = "clear", Resin = "r", ResinMl = 500 });
        result.MixSpreadG.ShouldBeNull();
        result.LevelSpreadMm!.Value.ShouldBeNear(1);
    }

    [Fact]
    public void Without_a_check_there_is_no_spread_and_the_answer_reads_as_before()
    {
        Layers(Cube, new LayerSpec { Name = "clear", Resin = "r", ToMm = 50 }).MixSpreadG.ShouldBeNull();
        const string Json = """{"mould":{"shape":"cuboid","widthMm":100,"depthMm":100,"heightMm":100},"resins":{"r":{"densityGPerMl":1.1,"mix":{"partsA":2,"partsB":1,"by":"weight"}}},"layers":[{"name":"clear","resin":"r","toMm":50}]}""";
        Calculations.Run("layers", Json).Json.ShouldNotContain("pread");
    }

    [Fact]
    public void Scaled_volumes_scale_the_grams() => // 1.03 times 500 ml at 1.1 g/ml
        Layers(Cube with { VolumeFactor = 1.03 }, new LayerSpec { Name = "clear", Resin = "r", ToMm = 50 }).MixG.ShouldBeNear(1.03 * 500 * 1.1);

    private static LayerResult Layers(MouldSpec mould, LayerSpec layer) => LayersCalculation.Run(new LayersInput
    {
        Mould = mould,
        Resins = new Dictionary<string, ResinSpec>(StringComparer.Ordinal) { ["r"] = new ResinSpec { DensityGPerMl = 1.1, Mix = new MixSpec { PartsA = 2, PartsB = 1, By = "weight" } } },
        Layers = [layer],
    }).Value.Layers[0];

    private static WaterCheckResult Check(params (double HeightMm, double Ml)[] fills) =>
        WaterCheckSum.Run(Make(Cube), [.. fills.Select(f => new FillReading(f.HeightMm, f.Ml))]).Value;

    private static MouldBody Make(MouldSpec spec) => MouldShapes.Make(spec).Value;
}
