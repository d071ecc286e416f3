namespace Studio.Engine.Tests.Layers;

/// <summary>Every warning code, once just before it and once just past it. A cuboid of 5 ml a millimetre, 60 mm high.</summary>
public sealed class LayersWarningTests
{
    private const string Quiet = """
        {
          "mould": { "shape": "cuboid", "widthMm": 100, "depthMm": 50, "heightMm": 60 },
          "resins": { "clear": { "densityGPerMl": 1.0, "mix": { "partsA": 1, "partsB": 1, "by": "weight" } } },
          "layers": [{ "name": "first", "resin": "clear", "toMm": 10 }, { "name": "second", "resin": "clear", "thicknessMm": 20 }]
        }
        """;

    private static readonly string[] None = [];

    [Fact]
    public void A_sound_piece_has_no_warnings() => Codes(Quiet).ShouldBe(None);

    [Theory]
    [InlineData("20", false)]
    [InlineData("19.99", true)]
    public void Pour_too_deep(string maxPourMm, bool warned) => Codes(Quiet.With("resins.clear.maxPourMm", maxPourMm)).ShouldBe(warned ? ["pour-too-deep"] : None);

    [Theory] // 0.1 + 0.2 is a hair more than 0.3; that hair is not too deep
    [InlineData("0.2", false)]
    [InlineData("0.2001", true)]
    public void A_rounding_hair_is_not_too_deep(string thicknessMm, bool warned) =>
        Codes(Quiet.With("layers[0].toMm", "0.1").With("layers[1].thicknessMm", thicknessMm).With("resins.clear.maxPourMm", "0.2")).ShouldBe(warned ? ["pour-too-deep"] : None);

    [Theory]
    [InlineData("100", false)]
    [InlineData("99.9", true)]
    public void Batch_split(string maxBatchG, bool warned) => Codes(Quiet.With("resins.clear.maxBatchG", maxBatchG)).ShouldBe(warned ? ["batch-split"] : None);

    [Theory] // five minutes a batch to weigh and stir: common practice, no source
    [InlineData("5", Ample, false)]
    [InlineData("4.9", Ample, true)]
    [InlineData("10", "50", false)]
    [InlineData("9.9", "50", true)]
    public void Pot_life_short(string minutes, string maxBatchG, bool warned) =>
        Codes(Quiet.With("resins.clear.potLifeMinutes", minutes).With("resins.clear.maxBatchG", maxBatchG)).Contains("pot-life-short").ShouldBe(warned);

    [Theory] // the second layer has room for 100 ml; a heap is its solid volume over its packing
    [InlineData("""[{ "name": "sand", "bulkMl": 100 }]""", false)]
    [InlineData("""[{ "name": "sand", "bulkMl": 100.1 }]""", true)]
    [InlineData("""[{ "name": "glass", "massG": 150, "densityGPerMl": 2.5 }]""", false)]
    [InlineData("""[{ "name": "glass", "massG": 151, "densityGPerMl": 2.5 }]""", true)]
    [InlineData("""[{ "name": "sand", "bulkMl": 60 }, { "name": "glass", "massG": 75, "densityGPerMl": 2.5 }]""", true)]
    public void Scatter_overflows(string scatter, bool warned) => Codes(Quiet.With("layers[1].scatter", scatter)).ShouldBe(warned ? ["scatter-overflows"] : None);

    [Fact]
    public void Scatter_that_leaves_no_room_takes_no_resin()
    {
        var layer = Ask.Result("layers", Quiet.With("layers[1].scatter", """[{ "name": "sand", "bulkMl": 1000 }]""")).At("layers[1]");
        layer.Number("resinMl").ShouldBe(0);
        layer.Number("displacedMl").ShouldBeNear(600);
        layer.Number("mixG").ShouldBe(0);
        layer.At("batches").GetArrayLength().ShouldBe(0);
    }

    [Fact]
    public void A_thing_larger_than_its_layer_stands_out_of_it()
    {
        var result = Ask.Result("layers", Quiet.With("layers[1].placed", """[{ "name": "slate", "displacedMl": 101 }]"""));
        result.Number("layers[1].resinMl").ShouldBe(0);
        result.Codes("layers[1]").ShouldBe(["over-filled"]);
    }

    [Theory] // lighter than the resin of 1.0 g/ml, and weighed
    [InlineData("scatter", """[{ "name": "cork", "massG": 1, "densityGPerMl": 0.99 }]""", true)]
    [InlineData("scatter", """[{ "name": "amber", "massG": 1, "densityGPerMl": 1.0 }]""", false)]
    [InlineData("placed", """[{ "name": "pine", "massG": 6, "densityGPerMl": 0.6 }]""", true)]
    [InlineData("placed", """[{ "name": "brass", "massG": 6, "densityGPerMl": 8.5 }]""", false)]
    [InlineData("placed", """[{ "name": "button", "displacedMl": 1 }]""", false)]
    public void Floats(string where, string things, bool warned) => Codes(Quiet.With("layers[1]." + where, things)).ShouldBe(warned ? ["floats"] : None);

    [Theory] // 100 x 50 mm inside: a box 40 mm deep leaves 5 mm
    [InlineData("""{ "outerWidthMm": 80, "outerDepthMm": 40, "fromMm": 15, "solid": true }""", false)]
    [InlineData("""{ "outerWidthMm": 80, "outerDepthMm": 40.1, "fromMm": 15, "solid": true }""", true)]
    [InlineData("""{ "outerWidthMm": 100, "outerDepthMm": 40, "fromMm": 15, "solid": true }""", true)]
    [InlineData("""{ "outerWidthMm": 100, "outerDepthMm": 50, "fromMm": 40, "solid": true }""", false)] // starts above both layers
    public void Former_too_close(string former, bool warned) => Codes(Quiet.With("former", former)).ShouldBe(warned ? ["former-too-close"] : None);

    [Fact] // 45° of draft: 6 mm in plan are 4.24 mm of resin square to the wall
    public void Former_too_close_is_told_of_the_layer_and_by_the_thickness_square_to_the_wall()
    {
        var json = Quiet.With("mould.draftDegrees", "45").With("former", """{ "outerWidthMm": 98, "outerDepthMm": 48, "fromMm": 5, "solid": true }""");
        var result = Ask.Result("layers", json);
        result.Codes("layers[0]").ShouldBe(["former-too-close"]);
        result.Text("layers[0].warnings[0].message").ShouldContain("4.2 mm");
        result.Codes("layers[1]").ShouldBe(None); // 11 mm in plan at its bottom
    }

    [Theory]
    [InlineData("50", false)]
    [InlineData("50.5", true)]
    public void Over_filled(string thicknessMm, bool warned)
    {
        var result = Ask.Result("layers", Quiet.With("layers[1].thicknessMm", thicknessMm));
        result.Codes("layers[1]").ShouldBe(warned ? ["over-filled"] : None);
        result.Number("layers[1].toMm").ShouldBe(60);
        result.Number("layers[1].resinMl").ShouldBeNear(250);
    }

    [Fact] // 0.1 + 0.2 is a hair more than 0.3
    public void A_rounding_hair_above_the_rim_is_not_over_filled() =>
        Codes(Quiet.With("mould.heightMm", "0.3").With("layers[0].toMm", "0.1").With("layers[1].thicknessMm", "0.2")).ShouldBe(None);

    [Fact]
    public void Over_filled_by_resin_says_how_much_is_left()
    {
        var json = Quiet.With("layers[1]", """{ "name": "rest", "resin": "clear", "resinMl": 262.5 }""");
        var layer = Ask.Result("layers", json).At("layers[1]");
        layer.Number("resinMl").ShouldBeNear(250);
        layer.Number("toMm").ShouldBe(60);
        layer.Text("warnings[0].code").ShouldBe("over-filled");
        layer.Text("warnings[0].message").ShouldContain("12.5 ml");
    }

    [Fact]
    public void A_layer_that_starts_at_the_rim_is_empty_and_over_filled()
    {
        var json = Quiet.With("layers[0].toMm", "80").With("layers[1]", """{ "name": "more", "resin": "clear", "thicknessMm": 5 }""");
        var layer = Ask.Result("layers", json).At("layers[1]");
        layer.Number("fromMm").ShouldBe(60);
        layer.Number("toMm").ShouldBe(60);
        layer.Number("grossMl").ShouldBe(0);
        layer.Number("resinMl").ShouldBe(0);
        layer.Codes("").ShouldBe(["over-filled"]);
    }

    private const string Ample = "1000000";

    private static string[] Codes(string json)
    {
        var result = Ask.Result("layers", json);
        return [.. result.Codes("layers[0]"), .. result.Codes("layers[1]")];
    }
}
