using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Tests.Layers;

/// <summary>Every input that cannot be used: the field it is told at, and that nothing else is blamed.</summary>
public sealed class LayersRefusalTests
{
    private const string Good = """
        {
          "mould": { "shape": "pyramid", "baseMm": 150, "heightMm": 150 },
          "resins": { "clear": { "densityGPerMl": 1.1, "mix": { "partsA": 2, "partsB": 1, "by": "weight" }, "maxPourMm": 100, "maxBatchG": 1500, "potLifeMinutes": 30 } },
          "layers": [
            { "name": "tip", "resin": "clear", "toMm": 60,
              "additions": [{ "name": "mica", "percentOfResin": 1, "densityGPerMl": 3 }],
              "scatter": [{ "name": "petals", "bulkMl": 5, "packingFraction": 0.4 }, { "name": "beads", "massG": 2, "densityGPerMl": 2.5 }],
              "placed": [{ "name": "brass", "massG": 17, "densityGPerMl": 8.5 }, { "name": "button", "displacedMl": 1 }] },
            { "name": "clear", "resin": "clear", "thicknessMm": 40 },
            { "name": "top", "resin": "clear", "resinMl": 100 }
          ],
          "former": { "outerWidthMm": 50, "outerDepthMm": 50, "fromMm": 90, "wallMm": 2, "floorMm": 100, "solid": false },
          "waste": { "percent": 3, "perBatchG": 4 }
        }
        """;

    [Fact]
    public void The_good_input_is_good() => Ask.Result("layers", Good);

    [Theory]
    // the mould
    [InlineData("mould.baseMm", "0")]
    [InlineData("mould.baseMm", "-1")]
    [InlineData("mould.baseMm", "1e9")]
    [InlineData("mould.baseMm", "10000.1")]
    [InlineData("mould.baseMm", "1e999")]
    [InlineData("mould.baseMm", "\"150\"")]
    [InlineData("mould.baseMm", "\"150 mm\"")]
    [InlineData("mould.baseMm", "null")]
    [InlineData("mould.baseMm", "[150]")]
    [InlineData("mould.baseMm", "true")]
    [InlineData("mould.baseMm", null)]
    [InlineData("mould.heightMm", null)]
    [InlineData("mould.tipMm", "-0.1")]
    [InlineData("mould.sides", "2")]
    [InlineData("mould.sides", "13")]
    [InlineData("mould.sides", "4.5")]
    [InlineData("mould.shape", "\"egg\"")]
    [InlineData("mould.shape", "\"Pyramid\"")]
    [InlineData("mould.shape", "4")]
    [InlineData("mould.shape", null)]
    [InlineData("mould.edgeMm", "5")] // a dimension of another shape
    [InlineData("mould.wall", "{}")]
    [InlineData("mould", "[]")]
    [InlineData("mould", null)]
    // resins
    [InlineData("resins", null)]
    [InlineData("resins", "{}")]
    [InlineData("resins", "[]")]
    [InlineData("resins.clear", "1")]
    [InlineData("resins.clear.densityGPerMl", "0")]
    [InlineData("resins.clear.densityGPerMl", "1100")] // kg/m³ by mistake
    [InlineData("resins.clear.densityGPerMl", null)]
    [InlineData("resins.clear.maxPourMm", "0")]
    [InlineData("resins.clear.maxBatchG", "-1")]
    [InlineData("resins.clear.maxBatchG", "4")] // all of it stays in the cup
    [InlineData("resins.clear.maxBatchG", "4.0001")] // would take millions of cups
    [InlineData("resins.clear.potLifeMinutes", "0")]
    [InlineData("resins.clear.colour", "\"blue\"")]
    [InlineData("resins.clear.mix", null)]
    [InlineData("resins.clear.mix.partsA", "0")]
    [InlineData("resins.clear.mix.partsB", null)]
    [InlineData("resins.clear.mix.by", "\"mass\"")]
    [InlineData("resins.clear.mix.by", null)]
    [InlineData("resins.clear.mix.densityAGPerMl", "-1")]
    [InlineData("resins.clear.mix.ratio", "2")]
    // layers
    [InlineData("layers", null)]
    [InlineData("layers", "[]")]
    [InlineData("layers", "{}")]
    [InlineData("layers[0]", "null")]
    [InlineData("layers[0].name", null)]
    [InlineData("layers[0].name", "\" \"")]
    [InlineData("layers[0].name", "5")]
    [InlineData("layers[0].resin", "\"blue\"")]
    [InlineData("layers[0].resin", null)]
    [InlineData("layers[0].toMm", "0")]
    [InlineData("layers[0].toMm", "-5")]
    [InlineData("layers[0].toMm", "1e9")]
    [InlineData("layers[0].toMm", "\"60\"")]
    [InlineData("layers[0].toMm", "null")]
    [InlineData("layers[0].depthMm", "5")]
    [InlineData("layers[1].thicknessMm", "0")]
    [InlineData("layers[1].thicknessMm", "-1")]
    [InlineData("layers[2].resinMl", "0")]
    [InlineData("layers[2].resinMl", "1e300")]
    [InlineData("layers[0].additions", "{}")]
    [InlineData("layers[0].additions[0]", "\"mica\"")]
    [InlineData("layers[0].additions[0].name", null)]
    [InlineData("layers[0].additions[0].percentOfResin", "-1")]
    [InlineData("layers[0].additions[0].percentOfResin", null)]
    [InlineData("layers[0].additions[0].densityGPerMl", "0")]
    [InlineData("layers[0].additions[0].grams", "1")]
    [InlineData("layers[0].scatter[0].packingFraction", "0")]
    [InlineData("layers[0].scatter[0].packingFraction", "1.01")]
    [InlineData("layers[0].scatter[0].bulkMl", "-1")]
    [InlineData("layers[0].scatter[1].massG", null)]
    [InlineData("layers[0].scatter[1].densityGPerMl", null)]
    [InlineData("layers[0].scatter[1].massG", "-2")]
    [InlineData("layers[0].scatter[1].displacedMl", "2")]
    [InlineData("layers[0].placed[0].densityGPerMl", "0")]
    [InlineData("layers[0].placed[1].displacedMl", "-1")]
    [InlineData("layers[0].placed[1].bulkMl", "1")]
    // former and waste
    [InlineData("former", "7")]
    [InlineData("former.outerWidthMm", "200")] // wider than the mould
    [InlineData("former.outerWidthMm", "100")] // pokes through at its foot
    [InlineData("former.outerDepthMm", "100")]
    [InlineData("former.outerWidthMm", "0")]
    [InlineData("former.outerDepthMm", null)]
    [InlineData("former.fromMm", "-1")]
    [InlineData("former.fromMm", null)]
    [InlineData("former.wallMm", null)]
    [InlineData("former.wallMm", "25")] // two walls meet
    [InlineData("former.wallMm", "0")]
    [InlineData("former.floorMm", "89")]
    [InlineData("former.floorMm", "151")]
    [InlineData("former.solid", "\"no\"")]
    [InlineData("former.solid", "0")]
    [InlineData("former.lid", "1")]
    [InlineData("waste", "3")]
    [InlineData("waste.percent", "-1")]
    [InlineData("waste.perBatchG", "-1")]
    [InlineData("waste.grams", "1")]
    [InlineData("colour", "1")]
    public void One_fault_is_one_error_at_its_field(string path, string? value)
    {
        var errors = Ask.Errors("layers", Good.With(path, value));
        errors.Select(e => e.Path).ShouldBe([path]);
        errors[0].Message.ShouldEndWith(".");
    }

    [Theory]
    [InlineData("layers[1].thicknessMm", "40, \"toMm\": 100", "layers[1]")] // two ways at once
    [InlineData("layers[1].thicknessMm", null, "layers[1]")] // none
    [InlineData("layers[0].scatter[0]", """{ "name": "moss" }""", "layers[0].scatter[0]")]
    [InlineData("layers[0].scatter[0]", """{ "name": "moss", "bulkMl": 5, "massG": 1, "densityGPerMl": 1 }""", "layers[0].scatter[0]")]
    [InlineData("layers[0].placed[0]", """{ "name": "brass", "displacedMl": 5, "massG": 1, "densityGPerMl": 1 }""", "layers[0].placed[0]")]
    [InlineData("layers[1]", """{ "name": "lower", "resin": "clear", "toMm": 60 }""", "layers[1].toMm")]
    [InlineData("layers[1]", """{ "name": "lower", "resin": "clear", "toMm": 59 }""", "layers[1].toMm")]
    [InlineData("layers[2]", """{ "name": "lower", "resin": "clear", "toMm": 99 }""", "layers[2].toMm")]
    [InlineData("former", """{ "outerWidthMm": 5, "outerDepthMm": 5, "fromMm": 150, "solid": true }""", "former.fromMm")]
    [InlineData("former", """{ "outerWidthMm": 50, "outerDepthMm": 95, "fromMm": 90, "solid": true }""", "former.outerDepthMm")] // the width alone would fit
    [InlineData("former", """{ "outerWidthMm": 95, "outerDepthMm": 95, "fromMm": 90, "solid": true }""", "former.outerWidthMm")]
    public void Fields_that_do_not_go_together(string path, string? value, string told) =>
        Ask.Errors("layers", Good.With(path, value)).Select(e => e.Path).ShouldBe([told]);

    [Fact]
    public void A_mix_by_volume_needs_both_densities() =>
        Ask.Errors("layers", Good.With("resins.clear.mix.by", "\"volume\"")).Select(e => e.Path)
            .ShouldBe(["resins.clear.mix.densityAGPerMl", "resins.clear.mix.densityBGPerMl"]);

    [Fact]
    public void A_weighed_heap_may_say_how_it_packs() =>
        Ask.Result("layers", Good.With("layers[0].scatter[1].packingFraction", "0.55"));

    [Fact]
    public void All_errors_come_at_once()
    {
        var json = Good.With("mould.baseMm", "-1").With("mould.colour", "1").With("resins.clear.mix.partsA", "\"two\"").With("layers[0].resin", "\"blue\"")
            .With("layers[1].thicknessMm", "0").With("layers[2].resinMl", null).With("former.wallMm", null).With("waste.percent", "-1").With("extra", "1");
        Ask.Errors("layers", json).Select(e => e.Path).ShouldBe(
            [
                "resins.clear.mix.partsA", "extra", "mould.colour", "mould.baseMm", "waste.percent", "layers[0].resin", "layers[1].thicknessMm", "layers[2]",
                "former.wallMm",
            ],
            ignoreOrder: true);
    }

    [Fact]
    public void Levels_are_checked_even_where_the_mould_cannot_be_made() =>
        Ask.Errors("layers", Good.With("mould.baseMm", "-1").With("layers[1]", """{ "name": "lower", "resin": "clear", "toMm": 10 }""")).Select(e => e.Path)
            .ShouldBe(["mould.baseMm", "layers[1].toMm"]);

    [Fact]
    public void Levels_are_checked_above_a_solved_layer_even_where_something_else_is_wrong() =>
        Ask.Errors("layers", Good.With("waste.percent", "-1").With("layers[1]", """{ "name": "solved", "resin": "clear", "resinMl": 10 }""")
            .With("layers[2]", """{ "name": "lower", "resin": "clear", "toMm": 61 }""")).Select(e => e.Path).ShouldBe(["waste.percent", "layers[2].toMm"]);

    [Theory]
    [InlineData("", "no input")]
    [InlineData("  \n ", "no input")]
    [InlineData("[]", "a list")]
    [InlineData("null", "null")]
    [InlineData("12", "the number 12")]
    [InlineData("\"x\"", "the text \"x\"")]
    [InlineData("{", "line 1, column 2")]
    [InlineData("{\n  \"mould\": {\n  \"é\": 1,,\n}", "line 3, column 10")]
    [InlineData("{} {}", "line 1, column 4")]
    [InlineData("{'mould': 1}", "line 1, column 2")]
    [InlineData("{\"mould\": NaN}", "line 1, column 11")]
    [InlineData("{\"mould\": 1,}", "line 1, column 13")]
    [InlineData("{\"mould\": /* */ 1}", "line 1, column 11")]
    [InlineData("{\"\\ud800\": 1}", "half of a character")]
    public void What_is_no_JSON_object_is_told_where_it_breaks(string json, string says)
    {
        var error = Ask.Errors("layers", json)[0];
        error.Path.ShouldBe("");
        error.Message.ShouldContain(says);
    }

    [Fact]
    public void A_page_is_told_the_same_at_the_same_fields()
    {
        var input = new LayersInput
        {
            Mould = new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = double.NaN, ["widthMm"] = 5 }),
            Resins = new Dictionary<string, ResinSpec>(),
            Layers = [new LayerSpec { Name = "", Resin = "clear", ToMm = double.PositiveInfinity, ThicknessMm = 3 }],
            Former = new FormerSpec { OuterWidthMm = double.NaN, OuterDepthMm = 5, FromMm = double.NaN, FloorMm = double.NaN },
        };
        LayersCalculation.Run(input).Errors.Select(e => e.Path).ShouldBe(
            [
                "mould.widthMm", "mould.baseMm", "mould.heightMm", "resins", "layers[0].name", "layers[0].toMm", "layers[0]", "former.outerWidthMm",
                "former.fromMm", "former.wallMm", "former.floorMm",
            ],
            ignoreOrder: true);
    }

    [Fact]
    public void A_hundred_brackets_are_answered() =>
        Ask.Errors("layers", string.Concat(Enumerable.Repeat("{\"a\":", 100)) + "1" + new string('}', 100)).Count.ShouldBe(1);

    [Fact]
    public void A_field_given_twice_is_refused_by_name()
    {
        var errors = Ask.Errors("layers", Good.Replace("\"heightMm\": 150", "\"heightMm\": 150, \"heightMm\": 150", StringComparison.Ordinal));
        errors.Single().Path.ShouldBe("mould.heightMm");
        errors[0].Message.ShouldContain("twice");
    }

    [Fact]
    public void Half_a_character_in_a_name_is_refused() =>
        Ask.Errors("layers", Good.With("layers[0].name", "\"\\ud800\"")).Single().Path.ShouldBe("layers[0].name");

    [Theory]
    [InlineData("boil")]
    [InlineData("")]
    [InlineData("Layers")]
    public void An_unknown_calculation_names_those_there_are(string what) => Ask.Errors(what, "{}").Single().Message.ShouldContain("layers, cure, heat, time, price");
}
