using System.Text.Json;

namespace Studio.Engine.Tests.Layers;

public sealed class LayersHandWorkedTests
{
    // a box of 100 x 50 x 60 mm: 5 ml a millimetre of height. Every number below is worked by hand in the comments
    private const string Box = """
        {
          "mould": { "shape": "cuboid", "widthMm": 100, "depthMm": 50, "heightMm": 60 },
          "resins": { "clear": { "densityGPerMl": 1.1, "mix": { "partsA": 100, "partsB": 40, "by": "weight", "densityAGPerMl": 1.15 } } },
          "layers": [
            { "name": "ground", "resin": "clear", "toMm": 10,
              "additions": [{ "name": "white", "percentOfResin": 10, "densityGPerMl": 2.2 }],
              "scatter": [{ "name": "heather", "massG": 1.2, "densityGPerMl": 0.6 }, { "name": "sand", "bulkMl": 5 }],
              "placed": [{ "name": "hive nail", "massG": 15.7, "densityGPerMl": 7.85 }, { "name": "button", "displacedMl": 1 }] },
            { "name": "clear", "resin": "clear", "thicknessMm": 20 },
            { "name": "top", "resin": "clear", "resinMl": 50 }
          ],
          "waste": { "percent": 5, "perBatchG": 3 }
        }
        """;

    // a pyramid of 150 x 150 mm with a hollow former; z² mm² at height z. Expected values from a separate script written from the contract
    private const string Pyramid = """
        {
          "mould": { "shape": "pyramid", "sides": 4, "baseMm": 150, "heightMm": 150 },
          "resins": { "clear": { "mix": { "partsA": 2, "partsB": 1, "by": "volume", "densityAGPerMl": 1.15, "densityBGPerMl": 1.0 },
                                 "maxPourMm": 50, "maxBatchG": 500, "potLifeMinutes": 12 } },
          "layers": [
            { "name": "tip", "resin": "clear", "toMm": 40,
              "additions": [{ "name": "mica", "percentOfResin": 2, "densityGPerMl": 3 }],
              "scatter": [{ "name": "petals", "massG": 3, "densityGPerMl": 0.6 }] },
            { "name": "middle", "resin": "clear", "resinMl": 500, "placed": [{ "name": "brass", "massG": 17, "densityGPerMl": 8.5 }] },
            { "name": "top", "resin": "clear", "toMm": 150 }
          ],
          "former": { "outerWidthMm": 60, "outerDepthMm": 60, "fromMm": 90, "wallMm": 2, "floorMm": 100 },
          "waste": { "percent": 3, "perBatchG": 4 }
        }
        """;

    [Fact]
    public void First_layer_of_the_box()
    {
        var layer = Ask.Result("layers", Box).At("layers[0]");
        layer.Number("grossMl").ShouldBeNear(50); // 10 mm x 5 ml
        layer.Number("displacedMl").ShouldBeNear(8); // 1.2/0.6 + 5 x 0.6 + 15.7/7.85 + 1
        layer.Number("resinMl").ShouldBeNear(40); // (50 - 8)/(1 + 0.10 x 1.1/2.2)
        layer.Number("resinG").ShouldBeNear(44);
        layer.Number("additions[0].grams").ShouldBeNear(4.4);
        layer.Text("additions[0].name").ShouldBe("white");
        layer.Number("mixG").ShouldBeNear(49.2); // 44 x 1.05 + 3
        layer.Number("partAG").ShouldBeNear(49.2 * 100 / 140);
        layer.Number("partBG").ShouldBeNear(49.2 * 40 / 140);
        layer.Number("partAMl").ShouldBeNear(49.2 * 100 / 140 / 1.15);
        layer.TryGetProperty("partBMl", out _).ShouldBeFalse(); // B's density is not known
        layer.At("batches").GetArrayLength().ShouldBe(1);
        layer.Number("faceMarkMm").ShouldBeNear(10);
        layer.Codes("").ShouldBe(["floats"]);
    }

    [Fact]
    public void Other_layers_of_the_box_and_the_whole()
    {
        var result = Ask.Result("layers", Box);
        result.Number("capacityMl").ShouldBeNear(300);
        result.Number("layers[1].fromMm").ShouldBe(10);
        result.Number("layers[1].toMm").ShouldBe(30);
        result.Number("layers[1].depthMm").ShouldBe(20);
        result.Number("layers[1].resinG").ShouldBeNear(110); // 20 mm x 5 ml x 1.1
        result.Number("layers[2].toMm").ShouldBeNear(40); // 50 ml are 10 mm
        result.Number("layers[2].resinMl").ShouldBeNear(50);
        result.Number("finishedMassG").ShouldBeNear(65.3 + 110 + 55); // 44 + 4.4 + 1.2 + 15.7: sand and button were not weighed
        result.Number("centreOfMassMm").ShouldBeNear(((65.3 * 5) + (110 * 20) + (55 * 35)) / 230.3);
    }

    [Fact]
    public void Pyramid_with_a_hollow_former_agrees_with_the_separate_script()
    {
        var result = Ask.Result("layers", Pyramid);
        result.Number("capacityMl").ShouldBeNear(1125);
        result.Number("finishedMassG").ShouldBeNear(1046.9219210236045);
        result.Number("centreOfMassMm").ShouldBeNear(110.09820278987945);
        result.Number("layers[0].resinMl").ShouldBeNear(16.214427531436133);
        result.Number("layers[0].mixG").ShouldBeNear(22.370946393117137);
        result.Number("layers[0].partAMl").ShouldBeNear(13.558149329161902);
        result.Number("layers[0].partBMl").ShouldBeNear(6.779074664580952);
        result.Number("layers[1].toMm").ShouldBeNear(122.16725030504381);
        result.Number("layers[1].displacedMl").ShouldBeNear(86.4421010981577);
        result.Number("layers[1].mixG").ShouldBeNear(574.5); // 500 x 1.1 x 1.03 + 2 x 4
        result.At("layers[1].batches").GetArrayLength().ShouldBe(2);
        result.Number("layers[2].resinMl").ShouldBeNear(417.0266666666666);
        result.Number("layers[2].mixG").ShouldBeNear(476.49121333333323);
        result.Number("layers[2].faceMarkMm").ShouldBeNear(150 * Math.Sqrt(1.25));
    }

    [Fact] // 2:1 by volume with 1.15 and 1.00 g/ml is 100:43.478 by weight and mixes to 1.10 g/ml: mass = volume x density
    public void Mix_by_volume_becomes_grams()
    {
        var layer = Ask.Result("layers", Pyramid).At("layers[1]");
        (layer.Number("partBG") / layer.Number("partAG") * 100).ShouldBe(43.478261, 43e-6);
        layer.Number("resinG").ShouldBeNear(550);
        (layer.Number("partAMl") / layer.Number("partBMl")).ShouldBeNear(2);
    }

    [Fact] // ideal mixing: 100 g of A fill 100/1.15 ml, 40 g of B fill 40 ml
    public void Mix_by_weight_takes_its_density_from_the_parts()
    {
        var json = Box.With("resins.clear.densityGPerMl", null).With("resins.clear.mix.densityBGPerMl", "1.0");
        var layer = Ask.Result("layers", json).At("layers[1]");
        (layer.Number("resinG") / layer.Number("resinMl")).ShouldBeNear(140 / ((100 / 1.15) + 40));
        layer.Number("partBMl").ShouldBeNear(layer.Number("partBG"));
    }

    [Fact] // Archimedes: 10 ml of pine of 0.60 g/ml in resin of 1.10 g/ml pull upwards with 5 gf (pine 0.56 to 0.64, Gere, Table H-1)
    public void Lift_of_pine_is_five_grams_force() => Warning(
        Box.With("layers[1].placed", """[{ "name": "ferry pilot's pine", "massG": 6, "densityGPerMl": 0.6 }]"""), "layers[1]", "floats").ShouldContain(" 5.0 gf");

    [Theory] // spheres in a cubic lattice fill pi/6 of a heap (Verruijt, Soil Mechanics); left out, 0.6
    [InlineData("0.5235987755982988", 5.235987755982988)]
    [InlineData("1", 10)]
    [InlineData(null, 6)]
    public void A_heap_displaces_its_packed_share(string? packing, double displacedMl)
    {
        var scatter = packing is null ? """[{ "name": "beads", "bulkMl": 10 }]""" : $$"""[{ "name": "beads", "bulkMl": 10, "packingFraction": {{packing}} }]""";
        Ask.Result("layers", Box.With("layers[1].scatter", scatter)).Number("layers[1].displacedMl").ShouldBeNear(displacedMl);
    }

    [Fact] // 20 x 10 mm outside, 2 mm walls: 16 x 6 inside; walls alone from 20 to 25, the whole box from 25 to 30
    public void Hollow_former_displaces_its_walls_below_the_floor_and_all_above()
    {
        var json = Box.With("former", """{ "outerWidthMm": 20, "outerDepthMm": 10, "fromMm": 20, "wallMm": 2, "floorMm": 25 }""");
        Ask.Result("layers", json).Number("layers[1].displacedMl").ShouldBeNear(((200 - 96) * 5 / 1000.0) + (200 * 5 / 1000.0));
    }

    [Theory]
    [InlineData("""{ "outerWidthMm": 20, "outerDepthMm": 10, "fromMm": 20, "solid": true }""")]
    [InlineData("""{ "outerWidthMm": 20, "outerDepthMm": 10, "fromMm": 20, "wallMm": 2 }""")] // the floor is where the box starts
    [InlineData("""{ "outerWidthMm": 20, "outerDepthMm": 10, "fromMm": 20, "wallMm": 2, "floorMm": 20, "solid": false }""")]
    public void Solid_former_displaces_the_whole_box(string former) =>
        Ask.Result("layers", Box.With("former", former)).Number("layers[1].displacedMl").ShouldBeNear(2);

    [Fact] // a former lifts the centroid of what is around it: 100 ml at 20 mm less 2 ml at 25 mm
    public void Centre_of_a_layer_is_the_centroid_beside_the_former()
    {
        var json = Box.With("former", """{ "outerWidthMm": 20, "outerDepthMm": 10, "fromMm": 20, "solid": true }""")
            .With("layers", """[{ "name": "all", "resin": "clear", "toMm": 30 }]""");
        Ask.Result("layers", json).Number("centreOfMassMm").ShouldBeNear(((150.0 * 15) - (2 * 25)) / 148);
    }

    [Fact] // 5 parts waste, 3 g a cup: 110 g become 115.5 g; cups of at most 42 g take 39 g each, so three, 124.5 g in all
    public void Batches_count_the_residue_of_every_cup()
    {
        var layer = Ask.Result("layers", Box.With("resins.clear.maxBatchG", "42")).At("layers[1]");
        layer.Number("mixG").ShouldBeNear(124.5);
        layer.At("batches").GetArrayLength().ShouldBe(3);
        layer.Number("batches[2].partAG").ShouldBeNear(41.5 * 100 / 140);
        layer.Number("batches[2].partBG").ShouldBeNear(41.5 * 40 / 140);
    }

    [Theory] // 0.1 has no exact double: three batches of 0.1 must not become four
    [InlineData("118.5", 1)]
    [InlineData("118.49", 2)]
    [InlineData("60.75", 2)]
    [InlineData("41.5", 3)]
    [InlineData("14.55", 10)]
    public void A_batch_that_just_fits_is_not_split(string maxBatchG, int batches) =>
        Ask.Result("layers", Box.With("resins.clear.maxBatchG", maxBatchG)).At("layers[1].batches").GetArrayLength().ShouldBe(batches);

    [Fact]
    public void Names_come_back_as_they_went_in()
    {
        var answer = Calculations.Run("layers", Box.With("layers[0].name", "\"Möwe – 海 \\\"A\\\"\""));
        JsonElement.Parse(answer.Json).Text("layers[0].name").ShouldBe("Möwe – 海 \"A\"");
        answer.Json.ShouldContain("Möwe – 海");
    }

    [Fact]
    public void The_same_input_gives_the_same_text_in_any_culture()
    {
        var before = Thread.CurrentThread.CurrentCulture;
        try
        {
            var expected = Calculations.Run("layers", Pyramid).Json;
            Thread.CurrentThread.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo("de-DE");
            Calculations.Run("layers", Pyramid).Json.ShouldBe(expected);
        }
        finally
        {
            Thread.CurrentThread.CurrentCulture = before;
        }
    }

    private static string Warning(string json, string layer, string code) =>
        Ask.Result("layers", json).At(layer + ".warnings").EnumerateArray().Single(w => w.Text("code") == code).Text("message");
}
