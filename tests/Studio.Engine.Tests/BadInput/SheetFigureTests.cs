using System.Globalization;
using Studio.Engine.Resins;

namespace Studio.Engine.Tests.BadInput;

/// <summary>A slipped point on a data sheet is found, and what was meant is said. The ranges are common practice, no source.</summary>
public sealed class SheetFigureTests
{
    private static readonly string[] Classes = ["deepPour", "casting", "fast"];

    public static TheoryData<string, string> Each
    {
        get
        {
            var each = new TheoryData<string, string>();
            foreach (var figure in SheetFigure.All)
            {
                foreach (var resin in Classes)
                {
                    each.Add(figure.Key, resin);
                }
            }

            return each;
        }
    }

    [Theory]
    [MemberData(nameof(Each))]
    public void The_ends_of_a_range_are_usual_and_what_lies_beyond_is_not(string key, string resin)
    {
        var (low, high) = Range(key, resin);
        low.ShouldBeLessThan(high);
        foreach (var usual in new[] { low, high, (low + high) / 2, Math.Sqrt(low * high) })
        {
            SheetFigure.Doubt(key, usual, resin, "x").ShouldBeNull(usual.ToString(CultureInfo.InvariantCulture));
        }

        foreach (var odd in new[] { low * 0.999, high * 1.001 })
        {
            var doubt = SheetFigure.Doubt(key, odd, resin, "x").ShouldNotBeNull();
            (doubt.Severity, doubt.Path).ShouldBe((Severity.Warn, "x"));
            doubt.Message.ShouldEndWith(".");
        }
    }

    [Theory]
    [MemberData(nameof(Each))]
    public void A_point_that_slipped_by_one_place_is_put_back(string key, string resin)
    {
        var (low, high) = Range(key, resin);
        foreach (var (slipped, meant) in new[] { (low / 10, low), (high * 10, high), (low * 1.05 / 10, low * 1.05), (high * 0.95 * 10, high * 0.95) })
        {
            var doubt = SheetFigure.Doubt(key, slipped, resin, "x").ShouldNotBeNull();
            doubt.Code.ShouldBe("figure-slipped");
            doubt.Message.ShouldContain(double.Parse(meant.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).ToString("R", CultureInfo.InvariantCulture));
        }
    }

    [Theory]
    [InlineData("densityGPerMl", 0.11, null, "0.11 g/ml: 1.1 g/ml was probably meant.")]
    [InlineData("densityGPerMl", 11, null, "11 g/ml: 1.1 g/ml was probably meant.")]
    [InlineData("densityGPerMl", 1100, null, "1100 g/ml: 1.1 g/ml was probably meant, if the sheet prints kg/m³.")]
    [InlineData("densityGPerMl", 0.011, null, "0.011 g/ml: 1.1 g/ml was probably meant.")]
    [InlineData("densityKgPerM3", 1.1, null, "1.1 kg/m³: 1100 kg/m³ was probably meant, if the sheet prints g/ml.")]
    [InlineData("densityKgPerM3", 110, null, "110 kg/m³: 1100 kg/m³ was probably meant.")]
    [InlineData("potLifeMinutes", 400, "casting", "400 min: 40 min was probably meant.")]
    [InlineData("potLifeMinutes", 5, "deepPour", "5 min: 50 min was probably meant, or 300 min if the sheet prints hours.")]
    [InlineData("demouldHours", 1440, "casting", "1440 h: 24 h was probably meant, if the sheet prints minutes.")]
    [InlineData("fullCureHours", 7, "casting", "7 h: 70 h was probably meant, or 168 h if the sheet prints days.")]
    [InlineData("glassEndC", 212, "casting", "212 °C: 100 °C was probably meant, if the sheet prints °F.")]
    [InlineData("peakCelsius", 311, "casting", "155 °C")]
    [InlineData("maxPourMm", 2, "deepPour", "2 mm: 20 mm was probably meant, or 50.8 mm if the sheet prints inches.")]
    [InlineData("viscosityMPas", 0.7, "casting", "0.7 mPa·s: 700 mPa·s was probably meant, if the sheet prints Pa·s.")]
    [InlineData("partsB", 4.4, "casting", "4.4 parts of B to 100 of A: 44 parts of B to 100 of A was probably meant.")]
    public void What_was_probably_meant(string key, double value, string? resin, string says) =>
        SheetFigure.Doubt(key, value, resin, "x").ShouldNotBeNull().Message.ShouldContain(says);

    [Fact]
    public void What_no_slip_explains_is_unusual() => SheetFigure.Doubt("densityGPerMl", 4, null, "x").ShouldNotBeNull().Code.ShouldBe("figure-unusual");

    // the same resin at 33 °C is twice as fast: the rate doubles per 10 K (common practice, no source)
    [Fact]
    public void A_time_is_judged_at_its_own_temperature()
    {
        SheetFigure.Doubt("demouldHours", 4, "casting", "x").ShouldNotBeNull();
        SheetFigure.Doubt("demouldHours", 4, "casting", "x", 33).ShouldBeNull();
        SheetFigure.Doubt("demouldHours", 200, "casting", "x", 13).ShouldBeNull();
    }

    [Theory]
    [InlineData(null)]
    [InlineData(double.NaN)]
    public void What_is_not_there_is_not_doubted(double? value) => SheetFigure.Doubt("maxPourMm", value, "casting", "x").ShouldBeNull();

    // (2 · 1.15 + 1 · 1.00) / 3 = 1.10 by volume; 1.5 / (1/1.15 + 0.5/1.00) = 1.095 by weight
    [Theory]
    [InlineData("volume", 1.10, false)]
    [InlineData("volume", 1.13, false)]
    [InlineData("volume", 1.14, true)]
    [InlineData("volume", 1.06, true)]
    [InlineData("weight", 1.10, false)]
    [InlineData("weight", 1.30, true)]
    public void A_mixed_density_is_held_against_its_parts(string by, double mixed, bool doubted)
    {
        var doubts = MixDoubts.Of(new() { PartsA = 2, PartsB = 1, By = by, DensityAGPerMl = 1.15, DensityBGPerMl = 1.00 }, mixed, "r.");
        doubts.Select(d => (d.Code, d.Path)).ShouldBe(doubted ? [("density-does-not-fit", "r.densityGPerMl")] : []);
        doubts.ShouldAllBe(d => d.Message.Contains("1.10 g/ml", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("layers", "resins.clear.densityGPerMl", "0.11", "figure-slipped", "1.1 g/ml was probably meant")]
    [InlineData("layers", "resins.clear.densityGPerMl", "1.24", "density-does-not-fit", "1.12 g/ml")]
    [InlineData("layers", "resins.clear.mix.densityAGPerMl", "12.5", "figure-slipped", "1.25 g/ml was probably meant")]
    [InlineData("layers", "resins.clear.mix.partsB", "6", "figure-slipped", "60 parts")]
    [InlineData("layers", "resins.clear.maxPourMm", "2500", "figure-slipped", "25 mm was probably meant")]
    [InlineData("cure", "resins.white.dataSheet.demouldHours", "240", "figure-slipped", "24 h was probably meant")]
    [InlineData("cure", "resins.clear.dataSheet.gelMinutes", "0.5", "figure-slipped", "if the sheet prints hours")]
    [InlineData("cure", "resins.white.densityKgPerM3", "1.1", "figure-slipped", "1100 kg/m³ was probably meant")]
    [InlineData("heat", "resins.deep.maxPourMm", "5000", "figure-slipped", "50 mm was probably meant")]
    [InlineData("heat", "resins.deep.densityKgPerM3", "11000", "figure-slipped", "1100 kg/m³ was probably meant")]
    public void A_calculation_says_it(string calculation, string path, string value, string code, string says)
    {
        // the last example of layers, the first of the others, each good as it stands
        var example = Inputs.Documented.Where(e => e.Calculation == calculation).Select(e => e.Json).ElementAt(calculation == "layers" ? 2 : 0);
        Doubts(Ask.Result(calculation, example)).ShouldBeEmpty();
        var doubt = Doubts(Ask.Result(calculation, example.With(path, value))).ShouldHaveSingleItem();
        (doubt.Code, doubt.Severity, doubt.Path).ShouldBe((code, Severity.Warn, path));
        doubt.Message.ShouldContain(says);
    }

    private static UsualRange Range(string key, string resin) => SheetFigure.All.Single(f => f.Key == key).Range(resin);

    private static List<Finding> Doubts(System.Text.Json.JsonElement result) => !result.TryGetProperty("findings", out var findings) ? [] :
        [.. findings.EnumerateArray().Where(f => f.Text("code") is "figure-slipped" or "figure-unusual" or "density-does-not-fit")
            .Select(f => new Finding(f.Text("code"), f.Text("severity") == "warn" ? Severity.Warn : Severity.Note, f.Text("path"), f.Text("message"), f.Text("source")))];
}
