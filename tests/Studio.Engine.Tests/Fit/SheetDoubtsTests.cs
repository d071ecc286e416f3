using Studio.Engine.Cure;
using Studio.Engine.Fit;

namespace Studio.Engine.Tests.Fit;

/// <summary>Sheets that contradict themselves, leave out what matters, or mistake a unit; all invented.</summary>
public sealed class SheetDoubtsTests
{
    private static readonly DataSheet Good = new() { Class = "casting", CupMassG = 100, GelMinutes = 240, PeakCelsius = 155, DemouldHours = 18, MaxPourMm = 12 };

    [Fact]
    public void A_cup_that_gels_at_once_and_a_piece_that_takes_a_week_contradict_each_other()
    {
        var fit = SheetFit.Run(Good with { GelMinutes = 12, DemouldHours = 120 }).Value;
        var codes = fit.Findings.Where(f => f.Code == "sheet-contradicts-itself").Select(f => f.Path).ToList();
        codes.ShouldContain("demouldHours", string.Join(' ', fit.Data) + string.Join(' ', fit.Known));
    }

    [Fact]
    public void Contradicting_numbers_make_the_interval_wider_not_narrower()
    {
        double Width(DataSheet sheet) => SheetFit.Run(sheet).Value.Known[0].Share;
        Width(Good with { GelMinutes = 40, DemouldHours = 72 }).ShouldBeGreaterThan(1.5 * Width(Good));
    }

    [Fact]
    public void A_pot_life_without_a_mass_is_told_and_counts_for_less()
    {
        var with = SheetFit.Run(new DataSheet { Class = "casting", PotLifeMinutes = 60, CupMassG = 100 }).Value;
        var without = SheetFit.Run(new DataSheet { Class = "casting", PotLifeMinutes = 60 }).Value;
        with.Findings.ShouldBeEmpty();
        without.Findings.Single().Path.ShouldBe("cupMassG");
        without.Known[0].Share.ShouldBeGreaterThan(1.1 * with.Known[0].Share);
    }

    [Fact]
    public void A_peak_in_fahrenheit_is_recognised()
    {
        SheetFit.Run(Good).Value.Findings.ShouldBeEmpty();
        var found = SheetFit.Run(Good with { PeakCelsius = 311 }).Value.Findings;
        found.Select(f => f.Code + f.Message).ShouldContain(f => f.StartsWith("peak-looks-like-fahrenheit", StringComparison.Ordinal) && f.Contains("155 °C", StringComparison.Ordinal), string.Join(' ', found));
    }

    [Fact]
    public void A_depth_that_would_run_away_is_told()
    {
        var found = SheetFit.Run(Good with { MaxPourMm = 100 }).Value.Findings;
        found.ShouldContain(f => f.Path == "maxPourMm" && f.Severity == Severity.Warn);
    }

    [Fact]
    public void A_pot_life_beyond_the_gel_and_a_demould_beyond_full_cure_are_told()
    {
        var found = SheetFit.Run(Good with { PotLifeMinutes = 300, FullCureHours = 12 }).Value.Findings.Select(f => f.Path).ToList();
        found.ShouldContain("potLifeMinutes");
        found.ShouldContain("demouldHours");
    }

    [Fact]
    public void A_sheet_that_says_nothing_leaves_the_class_alone()
    {
        var fit = SheetFit.Run(new DataSheet { Class = "deepPour" }).Value;
        fit.Identifiable.ShouldBeEmpty();
        fit.Misfit.ShouldBe(0);
        fit.Known.ShouldAllBe(k => k.RestsOn == "prior");
        fit.Findings.Single().Code.ShouldBe("sheet-says-nothing");
    }

    [Fact]
    public void Everything_unusable_is_refused_at_once_with_its_field()
    {
        var errors = SheetFit.Run(new DataSheet { Class = "syrup", AtCelsius = 73.4, GelMinutes = -5, CupMassG = 0, DemouldHours = double.NaN, MaxPourMm = 1e9 }).Errors;
        errors.Select(e => e.Path).ShouldBe(["class", "atCelsius", "gelMinutes", "cupMassG", "maxPourMm", "demouldHours"]);
        errors.Single(e => e.Path == "atCelsius").Message.ShouldContain("give 23");
    }

    [Theory]
    [InlineData(2)]
    [InlineData(20_000)]
    [Trait("Slow", "draws")]
    public void Whatever_a_sheet_prints_a_fit_comes_out_finite(double gelMinutes)
    {
        foreach (var kind in ResinClass.All)
        {
            var fit = SheetFit.Run(Good with { Class = kind.Key, GelMinutes = gelMinutes, PeakCelsius = 40, MaxPourMm = 200 }).Value;
            double.IsFinite(fit.Misfit).ShouldBeTrue();
            fit.State.Members().ShouldAllBe(m => double.IsFinite(m.Kinetics.RateAt23CPerS) && m.DemouldConversion > 0.4 && m.DemouldConversion < 1);
        }
    }
}
