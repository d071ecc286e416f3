using Studio.Engine.Parts;

namespace Studio.Engine.Tests.Parts;

public sealed class LightHoursTests
{
    [Theory]
    [InlineData(250, 10)]
    [InlineData(25, 100)]
    public void Hours_are_capacity_over_current(double currentMa, double hours)
    {
        // webstaurantstore.com, battery guide: 2500 mAh at 250 mA last 10 hours, at 25 mA 100
        var light = Light(new LightSpec { CurrentMa = currentMa, Cell = Cells.Own, Series = 1, CapacityMah = 2500, AtMa = currentMa });
        (light.FromHours, light.ToHours).ShouldBe((hours, hours));
    }

    [Fact]
    public void Cells_in_series_add_volts_and_cells_side_by_side_add_hours()
    {
        var light = Light(new LightSpec { CurrentMa = 50, Cell = "aa", Series = 3, Parallel = 2 });
        (light.Volts, light.CellMa, light.FromHours).ShouldBe((4.5, 25, 116)); // 2900 mAh at 25 mA (lygte-info.dk) / 25 mA
    }

    [Fact]
    public void Between_two_stated_loads_both_are_told()
    {
        var light = Light(new LightSpec { CurrentMa = 100, Cell = "aa" });
        (light.FromHours, light.ToHours).ShouldBe((14, 29)); // 1400 at 500 mA, 2900 at 25 mA (lygte-info.dk), over 100 mA
        light.RestsOn.ShouldBe(["2900 mAh at 25 mA (lygte-info.dk, comparison of chemistries)", "1400 mAh at 500 mA (lygte-info.dk, comparison of chemistries)"]);
    }

    [Theory]
    [InlineData(1, false)]
    [InlineData(1.01, true)]
    public void A_load_more_than_five_times_the_stated_one_is_pointed_at(double currentMa, bool far) =>
        Run(new LightSpec { CurrentMa = currentMa, Cell = "cr2032", Series = 1 }).Codes().Contains("load-far").ShouldBe(far);

    [Fact]
    public void A_capacity_without_its_load_says_so() =>
        Run(new LightSpec { CurrentMa = 20, Cell = "aaa" }).Codes().ShouldBe(["battery-outside", "load-not-stated"]);

    [Fact]
    public void A_coin_cell_brings_its_rule_and_a_round_cell_does_not()
    {
        var finding = Run(new LightSpec { CurrentMa = 0.2, Cell = "cr2032", Series = 1 }).Findings.Single(f => f.Code == "button-cell");
        finding.Severity.ShouldBe(Severity.Warn);
        finding.Source.ShouldContain("UL 4200A-2023");
        finding.Source.ShouldContain("PAS 7055:2021");
        Run(new LightSpec { CurrentMa = 20, Cell = "aa" }).Codes().ShouldBe(["battery-outside"]);
    }

    [Fact]
    public void What_cannot_be_used_is_named()
    {
        Run(new LightSpec { CurrentMa = 0, Cell = Cells.Own, Series = 0 }).Errors.Select(e => e.Path)
            .ShouldBe(["parts.light.currentMa", "parts.light.series", "parts.light.capacityMah"]);
        Run(new LightSpec { CurrentMa = 5, Cell = "d" }).Errors.ShouldHaveSingleItem().Path.ShouldBe("parts.light.cell");
    }

    private static LightPlan Light(LightSpec spec) => Run(spec).Light!;

    private static PartsPlan Run(LightSpec spec) => PartsCalculation.Run(new PartsInput { Light = spec });
}
