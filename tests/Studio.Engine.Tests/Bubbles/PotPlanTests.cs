using Studio.Engine.Bubbles;

namespace Studio.Engine.Tests.Bubbles;

public sealed class PotPlanTests
{
    private static readonly DateOnly Today = new(2026, 11, 25);
    private static readonly PressurePot Pot = new(4, new(2026, 3, 1), new(2027, 3, 1), 38);

    [Fact]
    public void Pressure_within_the_rating_is_planned_and_says_what_it_does()
    {
        var plan = PotPlan.Of(Pot, 50 * Squeeze.BarPerPsi, Today);
        plan.Planned.ShouldBeTrue();
        plan.DiameterRatio!.Value.ShouldBe(0.6101556, 1e-5);
        plan.Findings.Select(f => f.Code).ShouldBe(["pot-keep-pressure", "pot-pressure-system"]);
    }

    public static TheoryData<PressurePot, double, string> Refused => new()
    {
        { Pot, 4.01, "pot-over-rating" },
        { Pot with { RatedGaugeBar = null }, 1, "pot-without-rating" },
        { Pot with { RatedGaugeBar = double.NaN }, 1, "pot-without-rating" },
        { Pot with { TestedOn = null }, 1, "pot-without-test" },
        { Pot with { TestedOn = new(2026, 11, 26) }, 1, "pot-without-test" },
        { Pot with { NextTestBy = new(2026, 11, 24) }, 1, "pot-test-due" },
        { Pot, double.NaN, "pot-pressure-missing" },
        { Pot, 0, "pot-pressure-missing" },
    };

    [Theory]
    [MemberData(nameof(Refused))]
    public void Pot_is_not_planned(PressurePot pot, double gaugeBar, string code)
    {
        var plan = PotPlan.Of(pot, gaugeBar, Today);
        plan.Planned.ShouldBeFalse();
        plan.DiameterRatio.ShouldBeNull();
        plan.Findings.ShouldContain(f => f.Code == code && f.Severity == Severity.Stop);
    }

    [Fact]
    public void Exactly_its_rating_is_allowed_and_every_stop_comes_at_once()
    {
        PotPlan.Of(Pot, 4, Today).Planned.ShouldBeTrue();
        PotPlan.Of(new(null, null), 1, Today).Findings.Count.ShouldBe(2);
    }

    // mhstatutoryinspections.co.uk/pssr: 10 bar × 50 l = 500 bar litres, above the line of 250; 50 psi × 38 l = 131.0 is below it
    [Fact]
    public void Bar_litres_decide_whether_a_written_scheme_is_needed()
    {
        PotPlan.Of(new(10, Today, null, 50), 10, Today).Findings[1].Message.ShouldStartWith("500 bar litres");
        (50 * Squeeze.BarPerPsi * 38).ShouldBe(131.0, 0.1);
        PotPlan.Of(Pot, 50 * Squeeze.BarPerPsi, Today).Findings[1].Message.ShouldNotContain("bar litres");
    }
}
