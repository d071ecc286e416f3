using Studio.Engine;
using Studio.Resins;

namespace Studio.Tests.Resins;

public sealed class ResinSheetTests
{
    private readonly ResinForm sheet = Sheets.Casting("Clear");

    [Fact]
    public void A_sound_sheet_passes_without_a_doubt()
    {
        Wrong().ShouldBeEmpty();
        ResinDoubts.Of(sheet).ShouldBeEmpty();
    }

    [Fact]
    public void An_empty_form_says_everything_at_once() =>
        Wrong(new ResinForm()).ShouldBe(["Name", "PartsA", "PartsB", "DensityGPerMl"], ignoreOrder: true);

    [Fact]
    public void By_volume_without_densities_is_refused_because_no_grams_can_be_worked_out()
    {
        (sheet.MixBy, sheet.DensityAGPerMl, sheet.DensityBGPerMl) = ("volume", null, 1.0);
        Wrong().ShouldBe(["DensityAGPerMl"]);
        new ResinValidator().Validate(sheet).Errors.Single().ErrorMessage.ShouldContain("grams");
        ResinBook.Glance(sheet).GramsAOf500.ShouldBeNull();
    }

    [Fact]
    public void No_density_at_all_is_refused()
    {
        sheet.DensityGPerMl = null;
        Wrong().ShouldBe(["DensityGPerMl"]);
    }

    [Theory]
    [InlineData(0, 1)]
    [InlineData(-2, 1)]
    [InlineData(2, double.NaN)]
    [InlineData(double.PositiveInfinity, 1)]
    public void Parts_that_are_no_ratio_are_refused(double a, double b)
    {
        (sheet.PartsA, sheet.PartsB) = (a, b);
        Wrong().ShouldHaveSingleItem().ShouldStartWith("Parts");
    }

    [Fact]
    public void A_window_that_closes_before_it_opens_is_refused_on_its_row()
    {
        sheet.Times.Add(new ResinTimesRow { AtC = 18, NextFromHours = 10, NextUntilHours = 8 });
        Wrong().ShouldBe(["Times[1].NextUntilHours"]);
    }

    [Fact]
    public void Times_without_a_temperature_are_refused()
    {
        sheet.Times[0].AtC = null;
        Wrong().ShouldBe(["Times[0].AtC"]);
    }

    [Fact]
    public void Two_rows_of_one_temperature_are_refused()
    {
        sheet.Times.Add(new ResinTimesRow { AtC = 23, DemouldHours = 30 });
        Wrong().ShouldBe(["TimesAll"]);
    }

    [Fact]
    public void Half_a_pack_is_refused_and_an_empty_one_is_not()
    {
        sheet.Packs.Add(new ResinPackRow());
        sheet.Packs.Add(new ResinPackRow { SizeG = 500 });
        Wrong().ShouldBe(["Packs[2].Price"]);
    }

    [Fact]
    public void A_gel_after_the_next_pour_is_doubted()
    {
        sheet.Times[0].GelHours = 8;
        Codes().ShouldBe(["gel-after-next-pour"]);
    }

    [Fact]
    public void A_demould_after_full_cure_is_doubted_where_days_were_typed_as_hours()
    {
        sheet.Times[0].FullCureHours = 7;
        var doubt = ResinDoubts.Of(sheet).Single();
        (doubt.Code, doubt.Path).ShouldBe(("demould-after-full-cure", "Times[0].FullCureHours"));
        doubt.Message.ShouldContain("7 days");
    }

    [Fact]
    public void A_pot_life_without_its_mass_is_doubted()
    {
        sheet.PotLifeMassG = null;
        Codes().ShouldBe(["pot-life-without-mass"]);
    }

    // 77 °F is 25 °C: (77 − 32) / 1.8
    [Fact]
    public void A_temperature_that_looks_like_Fahrenheit_is_doubted_with_its_Celsius()
    {
        sheet.Times[0].AtC = 77;
        var doubt = ResinDoubts.Of(sheet).Single();
        doubt.Code.ShouldBe("looks-like-fahrenheit");
        doubt.Message.ShouldContain("25 °C");
    }

    [Fact]
    public void A_warmer_row_that_takes_longer_is_doubted()
    {
        sheet.Times.Add(new ResinTimesRow { AtC = 28, DemouldHours = 30 });
        var doubt = ResinDoubts.Of(sheet).Single();
        (doubt.Code, doubt.Path).ShouldBe(("warmer-is-slower", "Times[1].AtC"));
    }

    // ideal mixing of 2 : 1 by volume at 1.15 and 1.00 g/ml gives 1.10
    [Fact]
    public void A_mixed_density_that_its_parts_cannot_give_is_doubted()
    {
        (sheet.MixBy, sheet.PartsA, sheet.PartsB, sheet.DensityAGPerMl, sheet.DensityBGPerMl, sheet.DensityGPerMl) = ("volume", 2, 1, 1.15, 1.00, 1.20);
        var doubt = ResinDoubts.Of(sheet).Single();
        doubt.Code.ShouldBe("density-does-not-fit");
        doubt.Message.ShouldContain("1.10");
    }

    [Fact]
    public void A_depth_unlike_the_class_is_doubted()
    {
        sheet.MaxPourMm = 0.75;
        Codes().ShouldBe(["figure-slipped"]);
        ResinDoubts.Of(sheet).Single().Message.ShouldContain("7.5 mm was probably meant, or 19.05 mm if the sheet prints inches");
    }

    // common practice, no source: ranges by class; each figure stands beside its own field
    [Theory]
    [InlineData("DensityGPerMl", 0.11, "1.1 g/ml was probably meant")]
    [InlineData("DensityAGPerMl", 11.5, "1.15 g/ml was probably meant")]
    [InlineData("PartsB", 4.4, "44 parts of B")]
    [InlineData("ViscosityMPas", 0.7, "if the sheet prints Pa·s")]
    [InlineData("PotLifeMinutes", 4.5, "45 min was probably meant")]
    [InlineData("PotLifeMassG", 0.1, "if the sheet prints kilograms")]
    [InlineData("CupGelMinutes", 1, "60 min was probably meant, if the sheet prints hours")]
    [InlineData("CupPeakC", 311, "155 °C")]
    [InlineData("MaxPourMm", 200, "20 mm was probably meant")]
    [InlineData("MaxBatchG", 2, "if the sheet prints kilograms")]
    [InlineData("HeatDeflectionC", 5, "50 °C was probably meant")]
    [InlineData("Times[0].DemouldHours", 240, "24 h was probably meant")]
    public void A_figure_that_slipped_is_doubted_beside_its_field(string path, double value, string says)
    {
        var (holder, name) = path.StartsWith("Times", StringComparison.Ordinal) ? ((object)sheet.Times[0], path.Split('.')[1]) : (sheet, path);
        holder.GetType().GetProperty(name)!.SetValue(holder, value);
        var doubt = ResinDoubts.Of(sheet).Where(d => d.Code == "figure-slipped").ShouldHaveSingleItem();
        (doubt.Path, doubt.Severity).ShouldBe((path, Severity.Warn));
        doubt.Message.ShouldContain(says);
    }

    [Fact]
    public void The_resins_that_a_studio_begins_with_are_not_doubted() =>
        Studio.Stores.CatalogueSeed.Read<Resin>("resins").Rows.ShouldAllBe(r => !ResinDoubts.Of(ResinForm.Of(r)).Any(d => d.Code.StartsWith("figure-", StringComparison.Ordinal) || d.Code.StartsWith("density-", StringComparison.Ordinal)));

    [Fact]
    public void A_silent_sheet_says_what_the_clock_will_miss()
    {
        sheet.Times[0] = new ResinTimesRow { AtC = 23, FullCureHours = 168 };
        sheet.MaxPourMm = null;
        Codes().ShouldBe(["no-times", "no-depth"]);
    }

    [Fact]
    public void Every_doubt_names_a_field_and_where_the_rule_is_from()
    {
        sheet.Times[0] = new ResinTimesRow { AtC = 77, GelHours = 30, NextFromHours = 20, DemouldHours = 10, FullCureHours = 5 };
        (sheet.PotLifeMassG, sheet.PotLifeAtC, sheet.MaxPourMm, sheet.DensityGPerMl) = (null, null, 500, 11);
        var doubts = ResinDoubts.Of(sheet);
        doubts.Count.ShouldBeGreaterThan(7);
        doubts.ShouldAllBe(f => f.Path.Length > 0 && f.Source.Length > 0 && f.Message.EndsWith('.') && f.Severity != Severity.Stop);
    }

    private List<string> Wrong(ResinForm? form = null) => [.. new ResinValidator().Validate(form ?? sheet).Errors.Select(e => e.PropertyName).Distinct(StringComparer.Ordinal)];

    private List<string> Codes() => [.. ResinDoubts.Of(sheet).Select(f => f.Code)];
}
