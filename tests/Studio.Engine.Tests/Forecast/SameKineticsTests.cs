namespace Studio.Engine.Tests.Forecast;

/// <summary>The clock and the heat take the same kinetics and refuse the same.</summary>
public sealed class SameKineticsTests
{
    private const string Kinetics = """{ "rateAt23CPerS": 0.00004, "kappa": 0.04, "activationJPerMol": 55000, "heatJPerKg": 360000, "m": 1, "n": 2, "glassStartC": -40, "glassEndC": 52, "lambda": 0.4, "vitrificationOffsetK": 8, "vitrificationWidthK": 5, "gelConversion": 0.577 }""";

    private const string Clock = $$"""
        { "resins": { "r": { "kinetics": {{Kinetics}} } }, "layers": [{ "name": "a", "resin": "r", "pouredAtHours": 0 }], "room": [{ "hours": 0, "celsius": 23 }], "untilHours": 48 }
        """;

    private const string Heat = $$"""
        {
          "mould": { "shape": "cone", "bottomDiameterMm": 40, "topDiameterMm": 40, "heightMm": 20, "wall": { "thicknessMm": 5 } },
          "resins": { "r": { "kinetics": {{Kinetics}} } }, "layers": [{ "name": "a", "resin": "r", "toMm": 10, "pouredAtHours": 0 }], "room": [{ "hours": 0, "celsius": 23 }], "untilHours": 48
        }
        """;

    [Theory]
    [InlineData("rateAt23CPerS", "0")]
    [InlineData("rateAt23CPerS", "11")]
    [InlineData("kappa", "0")]
    [InlineData("kappa", "101")]
    [InlineData("m", "-0.1")]
    [InlineData("m", "10.1")]
    [InlineData("n", "-0.1")]
    [InlineData("n", "10.1")]
    [InlineData("activationJPerMol", "-1")]
    [InlineData("activationJPerMol", "500001")]
    [InlineData("heatJPerKg", "-1")]
    [InlineData("heatJPerKg", "5000001")]
    [InlineData("glassStartC", "-274")]
    [InlineData("glassEndC", "1001")]
    [InlineData("glassEndC", "-41")]
    [InlineData("lambda", "0")]
    [InlineData("lambda", "10.1")]
    [InlineData("vitrificationOffsetK", "-1001")]
    [InlineData("vitrificationWidthK", "0")]
    [InlineData("gelConversion", "0")]
    [InlineData("gelConversion", "1")]
    public void Both_refuse(string field, string value)
    {
        var path = "resins.r.kinetics." + field;
        Ask.Errors("cure", Clock.With(path, value)).ShouldHaveSingleItem().Path.ShouldBe(path);
        Ask.Errors("heat", Heat.With(path, value)).ShouldHaveSingleItem().Path.ShouldBe(path);
    }

    // at the very edge the heat may be too fast to follow: then it refuses to answer, in words
    [Theory]
    [InlineData("rateAt23CPerS", "1e-30")]
    [InlineData("rateAt23CPerS", "10")]
    [InlineData("kappa", "1e-12")]
    [InlineData("kappa", "100")]
    [InlineData("m", "0")]
    [InlineData("m", "10")]
    [InlineData("n", "0")]
    [InlineData("n", "10")]
    [InlineData("activationJPerMol", "0")]
    [InlineData("activationJPerMol", "500000")]
    [InlineData("heatJPerKg", "0")]
    [InlineData("heatJPerKg", "5000000")]
    [InlineData("glassStartC", "-273.15")]
    [InlineData("glassEndC", "1000")]
    [InlineData("glassEndC", "-40")]
    [InlineData("lambda", "1e-6")]
    [InlineData("lambda", "10")]
    [InlineData("vitrificationOffsetK", "-1000")]
    [InlineData("vitrificationOffsetK", "1e6")]
    [InlineData("vitrificationWidthK", "1e-6")]
    [InlineData("vitrificationWidthK", "1e6")]
    [InlineData("gelConversion", "0.001")]
    [InlineData("gelConversion", "0.999")]
    [Trait("Slow", "solver")]
    public void Both_take_the_edge(string field, string value)
    {
        var path = "resins.r.kinetics." + field;
        Ask.Result("cure", Clock.With(path, value)).Number("layers[0].conversion").ShouldBeInRange(0, 1);
        var heat = Calculations.Run("heat", Heat.With(path, value));
        if (heat.ExitCode == 0)
        {
            Ask.Result("heat", Heat.With(path, value)).Number("layers[0].conversion.mean").ShouldBeInRange(0, 1 + 1e-12);
        }
        else
        {
            heat.Json.ShouldContain("No answer is given.");
        }
    }

    // a reaction that does not feel what it has used up runs at one rate to its end: (κ + 1)·k·t with m = 0
    [Fact]
    public void A_reaction_of_no_order_ends_when_nothing_is_left()
    {
        var kinetics = """{ "rateAt23CPerS": 0.00001, "kappa": 1, "m": 0, "n": 0, "activationJPerMol": 0, "heatJPerKg": 0, "vitrificationOffsetK": 1e6 }""";
        var json = Heat.With("resins.r.kinetics", kinetics);
        Ask.Result("heat", json.With("untilHours", "10")).Number("layers[0].conversion.mean").ShouldBe(0.72, 1e-6);
        Ask.Result("heat", json.With("untilHours", "20")).Number("layers[0].conversion.mean").ShouldBe(1, 1e-9);
        Ask.Result("cure", Clock.With("resins.r.kinetics", kinetics).With("untilHours", "10")).Number("layers[0].conversion").ShouldBe(0.72, 1e-6);
        Ask.Result("cure", Clock.With("resins.r.kinetics", kinetics).With("untilHours", "20")).Number("layers[0].conversion").ShouldBe(1, 1e-6);
    }
}
