using System.Diagnostics;
using Studio.Engine.Forecast;

namespace Studio.Engine.Tests.Forecast;

public sealed class HeatAdviceTests
{
    private static readonly CancellationToken Stop = TestContext.Current.CancellationToken;

    private static ForecastResin Resin => new(Pieces.Deep, 70) { NextPourFromHours = 24, NextPourUntilHours = 72, MinRoomC = 15 };

    private static AdviceInput Tray(double deepMm, double roomC, params HeatLimit[] limits)
    {
        var (piece, mould) = Pieces.Tray(deepMm, roomC);
        return new() { Piece = piece, Mould = mould, Resins = [Resin], Limits = [limits] };
    }

    [Fact]
    public void A_cool_layer_gets_no_advice() => HeatAdvice.Of(Tray(30, 21, HeatLimit.Resin), null, Stop).Layers.ShouldBeEmpty();

    // the advice is taken, and the layer is run again in three dimensions with all resins
    [Theory]
    [InlineData(60, 23)]
    [InlineData(45, 28)]
    [Trait("Slow", "solver")]
    public void Advice_that_suffices_passes_when_it_is_taken(double deepMm, double roomC)
    {
        var input = Tray(deepMm, roomC, HeatLimit.PrintedFilm) with { Others = [new("the slow one", new(Pieces.Deep with { Mean = [.. Pieces.Deep.Mean.Select((m, i) => i == 0 ? m - 0.7 : m)] }, 90))] };
        var watch = Stopwatch.StartNew();
        var advice = HeatAdvice.Of(input, null, Stop).Layers.ShouldHaveSingleItem();
        TestContext.Current.TestOutputHelper!.WriteLine($"{watch.ElapsedMilliseconds} ms");
        foreach (var offer in advice.Offers)
        {
            TestContext.Current.TestOutputHelper.WriteLine($"{offer.Kind} {offer.Value} {offer.Unit} {offer.PeakHighC:0.0} {offer.Suffices}: {offer.Words}");
            var taken = HeatForecast.Run(offer.Taken, input.Mould, offer.TakenResins, preview: false, Stop);
            (taken.Layers.Max(l => l.PeakHighC) <= HeatLimit.PrintedFilm.Celsius).ShouldBe(offer.Suffices, offer.Words);
        }

        advice.Offers.Count(o => o.Suffices).ShouldBeGreaterThan(1);
        advice.Offers.Select(o => o.Kind).ShouldContain(AdviceOffer.Thinner);
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void Half_a_millimetre_more_than_the_greatest_depth_is_too_much()
    {
        var input = Tray(60, 23, HeatLimit.PrintedFilm);
        var thinner = HeatAdvice.Of(input, null, Stop).Layers[0].Offers.Single(o => o.Kind == AdviceOffer.Thinner);
        (thinner.Value * 2 % 1).ShouldBe(0);
        var (piece, mould) = Pieces.Tray(thinner.Value + 1, 23);
        HeatForecast.Run(piece, mould, [Resin], preview: false, Stop).Layers[0].PeakHighC.ShouldBeGreaterThan(HeatLimit.PrintedFilm.Celsius - 1);
    }

    [Fact]
    public void No_advice_breaks_the_sheet()
    {
        var input = Tray(60, 24, HeatLimit.PrintedFilm) with { Resins = [Resin with { MaxPourMm = 25, MinRoomC = 22, NextPourUntilHours = 8 }] };
        var advice = HeatAdvice.Of(input, null, Stop).Layers.ShouldHaveSingleItem();
        advice.Offers.Single(o => o.Kind == AdviceOffer.Thinner).Value.ShouldBeLessThanOrEqualTo(25);
        advice.Offers.Select(o => o.Kind).ShouldNotContain(AdviceOffer.TwoPours);
        advice.Offers.Single(o => o.Kind == AdviceOffer.CoolerRoom).Value.ShouldBeLessThanOrEqualTo(2);
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void A_run_away_shows_no_number()
    {
        var outcome = HeatAdvice.Of(Tray(70, 33, HeatLimit.Resin), null, Stop);
        var finding = outcome.Findings.ShouldHaveSingleItem();
        finding.Code.ShouldBe("runaway");
        finding.Severity.ShouldBe(Severity.Stop);
        finding.Message.ShouldStartWith("Layer 1: run-away, do not pour.");
        TestContext.Current.TestOutputHelper!.WriteLine(finding.Message);
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void Waiting_longer_lets_the_layer_below_cool()
    {
        var (piece, mould) = Pieces.Layers(Pieces.Tray(40).Input.Mould, [45, 45], 24, 16, 100);
        var input = new AdviceInput { Piece = piece, Mould = mould, Resins = [Resin, Resin], Limits = [[HeatLimit.Resin], [HeatLimit.PrintedFilm]] };
        var watch = Stopwatch.StartNew();
        var outcome = HeatAdvice.Of(input, null, Stop);
        TestContext.Current.TestOutputHelper!.WriteLine($"{watch.ElapsedMilliseconds} ms " + string.Join('\n', outcome.Findings.Select(f => f.Message)));
        var wait = outcome.Layers.Single(l => l.Layer == 1).Offers.Single(o => o.Kind == AdviceOffer.LongerWait);
        wait.GainK.ShouldBeGreaterThan(0.5);
        (16 + wait.Value).ShouldBeLessThanOrEqualTo(72);
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void Progress_ends_at_one_and_advice_can_be_stopped()
    {
        var seen = new List<double>();
        var input = Tray(60, 23, HeatLimit.PrintedFilm);
        HeatAdvice.Of(input, new Now(seen.Add), Stop);
        seen[^1].ShouldBe(1);
        seen.ShouldBe(seen.Order());
        using var source = new CancellationTokenSource();
        Should.Throw<OperationCanceledException>(() => HeatAdvice.Of(input, new Now(_ => source.Cancel()), source.Token));
    }

    private sealed class Now(Action<double> seen) : IProgress<double>
    {
        public void Report(double value) => seen(value);
    }
}
