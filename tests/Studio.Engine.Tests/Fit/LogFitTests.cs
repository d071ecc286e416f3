using Studio.Engine.Fit;
using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Fit;

/// <summary>Refits to a thermometer's log of a made-up layer whose truth is known.</summary>
public sealed class LogFitTests
{
    private const double Deep = 10;
    private static readonly MadeResin Made = new("casting", 7, otherForm: false);
    private static readonly double Until = MadeResin.FilmHours(Made.Truth.Kinetics, 23, 0.72) + 1;
    private static readonly ResinFit Before = SheetFit.Run(Made.Sheet()).Value;
    private static readonly LayerLog Log = new()
    {
        Piece = MadeResin.Tray(Before.Best with { FilmFactor = 1 }, Deep, 23, Until),
        Layer = 0,
        SameLot = [0],
        Readings = Made.Log(Deep, 23, Until),
    };

    [Fact]
    public void A_log_tightens_every_number_and_the_peak_most()
    {
        var refit = LogFit.Run(Before.State, Log).Value;
        foreach (var (was, becomes) in Before.Known.Zip(refit.Fit.Known))
        {
            becomes.Share.ShouldBeLessThan(was.Share * 1.001);
        }

        var truth = Made.True(Deep, 23, Until).PeakCelsius;
        var (wide, narrow) = (Width(Before.State, 23), Width(refit.Fit.State, 23));
        (wide.To - wide.From).ShouldBeGreaterThan(2 * (narrow.To - narrow.From)); // 3 until the gel, the orders and a path's own energy were uncertain too: what the model may be wrong by stays
        Peak(refit.Fit.Best, 23).ShouldBe(truth, 1);
        narrow.Holds(truth).ShouldBeTrue();
        refit.Fit.Misfit.ShouldBeLessThan(1.5);
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void A_warmer_room_stays_uncertain_until_one_is_logged()
    {
        var once = LogFit.Run(Before.State, Log).Value.Fit;
        once.Known.Single(k => k.Name == "activationJPerMol").RestsOn.ShouldNotBe("data");
        var (here, warm) = (Width(once.State, 23), Width(once.State, 28));
        (warm.To - warm.From).ShouldBeGreaterThan(2 * (here.To - here.From));

        var warmLog = Log with { Piece = MadeResin.Tray(Before.Best with { FilmFactor = 1 }, Deep, 28, Until), Readings = Made.Log(Deep, 28, Until) };
        var second = LogFit.Run(once.State, warmLog).Value.Fit;
        var truth = Made.True(Deep, 28, Until).PeakCelsius;
        Peak(second.Best, 28).ShouldBe(truth, Math.Max(2, 0.5 * Math.Abs(Peak(once.Best, 28) - truth)));
        var twice = Width(second.State, 28);
        twice.Holds(truth).ShouldBeTrue();
        (twice.To - twice.From).ShouldBeLessThan(0.75 * (warm.To - warm.From)); // 0.5 before: likewise
    }

    [Fact]
    public void Foretold_and_measured_are_given_for_drawing_and_nothing_is_changed()
    {
        var kept = Before.State.Mean.ToList();
        var refit = LogFit.Run(Before.State, Log).Value;
        Before.State.Mean.ShouldBe(kept);
        refit.Series.Count.ShouldBeInRange(30, 41);
        refit.Series.Select(s => s.AfterHours).ShouldBeInOrder();
        refit.Series.Average(s => Math.Abs(s.AfterC - s.MeasuredC)).ShouldBeLessThan(1);
        refit.Series.ShouldAllBe(s => s.After.From <= s.After.To && s.Before.From <= s.Before.To);
        LogFit.Run(Before.State, Log).Value.Fit.State.Mean.ShouldBe(refit.Fit.State.Mean);
    }

    [Fact]
    public void Out_of_order_twice_and_faulty_readings_change_nothing_but_are_told()
    {
        var clean = LogFit.Run(Before.State, Log).Value;
        List<LogReading> dirty = [.. Log.Readings.Reverse(), Log.Readings[5], new(1.01, 85), new(1.02, -273), new(-1, 21), new(0.511, double.NaN)];
        var refit = LogFit.Run(Before.State, Log with { Readings = dirty }).Value;
        refit.Fit.State.Mean.ShouldBe(clean.Fit.State.Mean);
        refit.Fit.Findings.Select(f => f.Code).ShouldBe(["log-reading-implausible", "log-reading-before-pour"], ignoreOrder: true);
    }

    [Fact]
    public void A_spike_is_left_out_and_told()
    {
        var at = Log.Readings[20];
        List<LogReading> spiked = [.. Log.Readings.Take(20), at with { Celsius = at.Celsius + 15 }, .. Log.Readings.Skip(21)];
        LogFit.Run(Before.State, Log with { Readings = spiked }).Value.Fit.Findings.ShouldContain(f => f.Code == "log-reading-spike");
    }

    [Fact]
    public void A_log_in_fahrenheit_is_refused()
    {
        var log = Log with { Readings = [.. Log.Readings.Select(r => r with { Celsius = (r.Celsius * 1.8) + 32 })] };
        LogFit.Run(Before.State, log).Errors.Single().Message.ShouldContain("°F");
    }

    [Fact]
    [Trait("Slow", "solver")]
    public void A_log_of_another_resin_is_told()
    {
        var cold = Log with { Readings = [.. Log.Readings.Select(r => r with { Celsius = 23 + (4 * (r.Celsius - 23)) })] };
        LogFit.Run(Before.State, cold).Value.Fit.Findings.ShouldContain(f => f.Code == "log-does-not-fit");
    }

    [Fact]
    public void Observed_times_alone_move_the_rate()
    {
        var gel = Made.True(Deep, 23, Until).LastGelAfterHours!.Value;
        var demould = MadeResin.FilmHours(Made.Truth.Kinetics, 23, Made.Truth.DemouldConversion);
        var refit = LogFit.Run(Before.State, Log with { Readings = [], GelAfterHours = gel, DemouldAfterHours = demould }).Value.Fit;
        refit.Data.Select(d => d.Name).ShouldBe(["gelAfterHours", "demouldAfterHours"]);
        refit.Known[0].Share.ShouldBeLessThan(Before.Known[0].Share);
        refit.Data.ShouldAllBe(d => Math.Abs(d.OffSd) < 1);
    }

    [Fact]
    public void A_thermometer_at_a_height_is_compared_with_that_height()
    {
        var (onFloor, hot) = (Foretold(LogPlace.Height, 0.1), Foretold(LogPlace.Hottest, null));
        onFloor.ShouldBeLessThan(hot - 0.5);
        Foretold(LogPlace.Height, 6).ShouldBe(hot, 0.6);

        double Foretold(LogPlace place, double? mm) => LogFit.Run(Before.State, Log with { Place = place, HeightMm = mm }).Value.Series.Max(s => s.BeforeC);
    }

    [Fact]
    public void What_cannot_be_a_log_is_refused_with_its_field()
    {
        LogFit.Run(Before.State, Log with { Layer = 3 }).Errors.Single().Path.ShouldBe("layer");
        LogFit.Run(Before.State, Log with { SameLot = [1], Place = LogPlace.Height, HeightMm = 99, GelAfterHours = -1 }).Errors.Select(e => e.Path)
            .ShouldBe(["sameLot", "heightMm", "gelAfterHours"]);
        LogFit.Run(Before.State, Log with { Readings = [] }).Errors.Single().Path.ShouldBe("readings");
    }

    private static double Peak(FitResin resin, double roomC) => MadeResin.Run(MadeResin.Tray(resin, Deep, roomC, Until), new HeatFineness(5, 6, 2)).PeakCelsius;

    private static FitInterval Width(FitState state, double roomC) =>
        FitInterval.Of(state.Members(24).Select(m => MadeResin.Run(MadeResin.Tray(m, Deep, roomC, Until), new HeatFineness(5, 6, 2)).PeakCelsius));
}
