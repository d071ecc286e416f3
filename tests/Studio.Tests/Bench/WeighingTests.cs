using CsCheck;
using Studio.Bench;
using Studio.Clock;

namespace Studio.Tests.Bench;

public sealed class WeighingTests
{
    [Fact]
    public void A_comes_first_and_B_when_A_is_near_enough()
    {
        Of(("A", 60)).Next.ShouldBe("A");
        Of(("A", 60)).LeftAG.ShouldBe(40);
        Of(("A", 60), ("A", 39.2)).Next.ShouldBe("B");
        Of(("A", 100), ("B", 50)).Right.ShouldBeTrue();
    }

    [Fact]
    public void Too_much_A_says_at_once_how_much_B_keeps_the_ratio()
    {
        var cup = Of(("A", 112.4));
        cup.TooMuch.ShouldBe("12.4 g too much A. To keep the ratio this cup needs 56.2 g of B in all.");
        cup.Next.ShouldBe("B");
        cup.LeftBG.ShouldBe(56.2, 1e-9);
        Of(("A", 112.4), ("B", 56.2)).Right.ShouldBeTrue();
        Of(("A", 112.4), ("B", 56.2)).TooMuch.ShouldBeEmpty();
    }

    [Fact]
    public void Too_much_B_sends_back_to_A()
    {
        var cup = Of(("A", 100), ("B", 60));
        cup.TooMuch.ShouldBe("10.0 g too much B. To keep the ratio this cup needs 120.0 g of A in all.");
        cup.Next.ShouldBe("A");
        cup.LeftAG.ShouldBe(20, 1e-9);
    }

    [Fact]
    public void Another_cups_readings_do_not_count() =>
        Weighing.Of(100, 50, [new ScaleReading(1, "A", 100), new ScaleReading(2, "A", 30)], 2).AddedAG.ShouldBe(30);

    [Fact]
    public void A_running_total_is_read_as_what_was_added()
    {
        ScaleReading[] tally = [new(1, "A", 100)];
        Weighing.Read(148.5, ScaleMode.Total, tally, 1).Grams.ShouldBe(48.5);
        Weighing.Read(48.5, ScaleMode.Added, tally, 1).Grams.ShouldBe(48.5);
        Weighing.Read(20, ScaleMode.Total, tally, 1).Wrong.ShouldNotBeNull().ShouldContain("100.0 g before");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-5)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    [InlineData(1e9)]
    public void Figures_that_no_scale_shows_are_refused(double figure) => Weighing.Read(figure, ScaleMode.Added, [], 1).Wrong.ShouldNotBeNull();

    [Fact]
    public void Following_the_cup_always_ends_right_and_within_two_percent()
    {
        Gen.Select(Gen.Double[1, 2000], Gen.Double[0.2, 1.5], Gen.Double[0.1, 1.6], Gen.Double[0.1, 1.6]).Sample((a, ratio, firstA, firstB) =>
        {
            var b = Math.Max(0.5, a * ratio);
            List<ScaleReading> tally = [new(1, "A", a * firstA), new(1, "B", b * firstB)];
            for (var i = 0; i < 10 && Weighing.Of(a, b, tally, 1) is { Right: false } cup; i++)
            {
                tally.Add(new(1, cup.Next, cup.Next == "A" ? cup.LeftAG : cup.LeftBG));
            }

            var end = Weighing.Of(a, b, tally, 1);
            end.Right.ShouldBeTrue();
            if (Math.Min(a, b) > 100)
            {
                // below that the least step of a kitchen scale weighs more than a percent
                Math.Abs(end.OffPercent!.Value).ShouldBeLessThan(2.1);
            }
        });
    }

    private static Weighed Of(params (string Part, double Grams)[] readings) => Weighing.Of(100, 50, readings.Select(r => new ScaleReading(1, r.Part, r.Grams)), 1);
}
