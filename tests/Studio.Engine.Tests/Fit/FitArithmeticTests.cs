using Studio.Engine.Cure;
using Studio.Engine.Fit;

namespace Studio.Engine.Tests.Fit;

public sealed class FitArithmeticTests
{
    // Hyndman & Fan, The American Statistician 50 (1996) 361, type 6: place p(n + 1); worked by hand
    [Fact]
    public void Quantiles_are_read_at_their_place_in_the_order()
    {
        var interval = FitInterval.Of(Enumerable.Range(1, 19).Select(x => (double)x).Reverse());
        interval.From.ShouldBe(1, 1e-12);
        interval.To.ShouldBe(19, 1e-12);
        FitInterval.Of(Enumerable.Range(1, 39).Select(x => (double)x)).ShouldBe(new FitInterval(2, 38));
        FitInterval.Of([5]).ShouldBe(new FitInterval(5, 5));
    }

    [Fact]
    public void Members_are_the_same_every_time_and_spread_as_the_state_says()
    {
        var state = SheetFit.Run(new DataSheet { Class = "casting" }).Value.State;
        var (once, again) = (state.Members(), state.Members());
        once.ShouldBe(again);
        var logs = once.Select(m => Math.Log(m.Kinetics.Kappa)).ToList();
        logs.Average().ShouldBe(Math.Log(0.04), 1e-6);
        Math.Sqrt(logs.Average(x => Math.Pow(x - logs.Average(), 2))).ShouldBe(Math.Log(2), 1e-6);
    }

    // closed form for m = 1, n = 2 without vitrification: G(0.577) = 4.64 at κ = 0.04 (partial fractions; checked with a computer algebra system beforehand)
    [Fact]
    public void A_film_gels_when_the_closed_form_says()
    {
        var state = SheetFit.Run(new DataSheet { Class = "deepPour" }).Value.State;
        var rate = state.Best().Kinetics.RateAt23CPerS;
        const double a = 0.577, k = 0.04;
        var g = ((Math.Log((k + a) / k) - Math.Log(1 - a)) / ((1 + k) * (1 + k))) + (((1 / (1 - a)) - 1) / (1 + k));
        g.ShouldBe(4.64, 0.01);
        (state with { FullCureHours = g / rate / 3600 }).FullCureConversion()!.Value.ShouldBe(a, 2e-3);
    }
}
