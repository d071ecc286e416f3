using System.Diagnostics;
using System.Text.Json;
using Studio.Engine.Fit;

namespace Studio.Engine.Tests.Fit;

/// <summary>Logs as a workroom gives them: a probe pulled out, a sensor that lags, a clock that is off, a reading every second. Each is told, none breaks anything.</summary>
public sealed class RealLogTests(ITestOutputHelper output)
{
    private const double Deep = 10;
    private static readonly MadeResin Made = new("casting", 7, otherForm: false);
    private static readonly double Until = MadeResin.FilmHours(Made.Truth.Kinetics, 23, 0.72) + 1;
    private static readonly ResinFit Before = SheetFit.Run(Made.Sheet()).Value;
    private static readonly IReadOnlyList<LogReading> Good = Made.Log(Deep, 23, Until);
    private static readonly LayerLog Log = new()
    {
        Piece = MadeResin.Tray(Before.Best with { FilmFactor = 1 }, Deep, 23, Until),
        Layer = 0,
        SameLot = [0],
        Readings = Good,
    };

    private static double PeakAt => Good.MaxBy(r => r.Celsius)!.AfterHours;

    [Fact]
    public void A_good_log_is_not_doubted() => Findings(Good).ShouldBeEmpty();

    [Theory]
    [InlineData(-0.5)]
    [InlineData(1.5)]
    public void A_probe_that_was_pulled_out_is_told_and_what_it_read_then_is_left_out(double afterPeakH)
    {
        var at = PeakAt + afterPeakH;
        var pulled = Good.Select(r => r.AfterHours < at ? r : r with { Celsius = 23.2 }).ToList();
        var refit = LogFit.Run(Before.State, Log with { Readings = pulled }).Value;
        Say(refit.Fit.Findings);
        refit.Fit.Findings.Select(f => f.Code).ShouldBe(["log-probe-pulled-out"]);
        refit.Series.ShouldAllBe(m => m.AfterHours < at);
        refit.Fit.Best.Kinetics.RateAt23CPerS.ShouldBe(Made.Truth.Kinetics.RateAt23CPerS, 0.3 * Made.Truth.Kinetics.RateAt23CPerS);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    public void A_clock_an_hour_off_is_told(double hours)
    {
        var found = Findings([.. Good.Select(r => r with { AfterHours = r.AfterHours + hours })]);
        found.ShouldContain(hours > 0 ? "log-begins-late" : "log-reading-before-pour");
        LogFit.Run(Before.State, Log with { Readings = [.. Good.Select(r => r with { AfterHours = r.AfterHours + hours })] }).Value
            .Fit.Findings.ShouldContain(f => f.Message.Contains("daylight saving", StringComparison.Ordinal));
    }

    // once the resin is known, the curve itself gives the clock away, however the log begins
    [Theory]
    [InlineData(1)]
    [InlineData(-1)]
    [Trait("Slow", "draws")]
    public void A_known_resin_gives_a_clock_away_by_its_curve(double hours)
    {
        var known = LogFit.Run(Before.State, Log).Value.Fit.State;
        List<LogReading> off = [.. Good.Select(r => r with { AfterHours = r.AfterHours + hours }).Where(r => r.AfterHours >= 1.3)];
        var findings = LogFit.Run(known, Log with { Readings = off }).Value.Fit.Findings;
        Say(findings);
        findings.Single(f => f.Code == "log-clock-off").Message.ShouldContain(hours > 0 ? "hour back" : "hour ahead");
    }

    [Fact]
    public void A_thermometer_that_lags_is_told_of_a_known_resin()
    {
        var known = LogFit.Run(Before.State, Log).Value.Fit.State;
        var lagging = new List<LogReading> { Good[0] };
        foreach (var (a, b) in Good.Zip(Good.Skip(1)))
        {
            var share = 1 - Math.Exp(-(b.AfterHours - a.AfterHours) / 0.4);
            lagging.Add(b with { Celsius = lagging[^1].Celsius + (share * (((a.Celsius + b.Celsius) / 2) - lagging[^1].Celsius)) });
        }

        var findings = LogFit.Run(known, Log with { Readings = lagging }).Value.Fit.Findings;
        Say(findings);
        findings.ShouldContain(f => f.Code == "log-thermometer-lags" || f.Code == "log-does-not-fit");
    }

    [Fact]
    public void A_thermometer_that_never_was_in_the_resin_is_told() =>
        Findings([.. Good.Select((r, i) => r with { Celsius = 23 + (0.1 * (i % 3)) })]).ShouldContain("log-shows-no-cure");

    [Fact]
    [Trait("Slow", "draws")]
    public void A_million_readings_in_disorder_and_twice_are_read_in_bounded_time()
    {
        var random = new Random(3);
        var second = Enumerable.Range(0, 500_000).Select(i => i * Good[^1].AfterHours / 500_000).Select(t => new LogReading(t, Math.Round(At(t) + (0.2 * random.NextDouble()), 1))).ToArray();
        random.Shuffle(second);
        LogReading[] all = [.. second, .. second];
        var clock = Stopwatch.GetTimestamp();
        var refit = LogFit.Run(Before.State, Log with { Readings = all }).Value;
        var s = Stopwatch.GetElapsedTime(clock).TotalSeconds;
        output.WriteLine(FormattableString.Invariant($"{s:0.00} s"));
        refit.Fit.Findings.ShouldBeEmpty();
        refit.Series.Count.ShouldBeLessThan(50);
        s.ShouldBeLessThan(20); // about two on a quiet machine; the suite runs in parallel
    }

    [Fact]
    public void Two_different_logs_in_one_are_told() =>
        Findings([.. Good, .. Good.Select(r => r with { Celsius = 23 })]).ShouldContain("log-reading-twice");

    // a log that was begun late, at 70 °C, and cooled to the room is no log in °F
    [Fact]
    public void A_log_that_begins_when_the_layer_is_hot_is_not_taken_for_fahrenheit()
    {
        LogReading[] late = [.. Enumerable.Range(0, 30).Select(i => new LogReading(3 + (0.1 * i), 23 + (47 * Math.Exp(-0.15 * i))))];
        LogFit.Run(Before.State, Log with { Readings = late }).Errors.ShouldBeEmpty();
    }

    [Fact]
    [Trait("Slow", "draws")]
    public void What_is_known_of_a_resin_survives_being_kept_as_JSON()
    {
        foreach (var state in (FitState[])[Before.State, LogFit.Run(Before.State, Log).Value.Fit.State])
        {
            var back = JsonSerializer.Deserialize<FitState>(JsonSerializer.Serialize(state))!;
            back.Mean.ShouldBe(state.Mean);
            back.PriorSd.ShouldBe(state.PriorSd);
            back.Spread.SelectMany(r => r).ShouldBe(state.Spread.SelectMany(r => r));
            back.SeenCelsius.ShouldBe(state.SeenCelsius);
            (back with { Mean = state.Mean, Spread = state.Spread, PriorSd = state.PriorSd, SeenCelsius = state.SeenCelsius, Kept = state.Kept }).ShouldBe(state);
            back.Members().ShouldBe(state.Members());
            LogFit.Run(back, Log).Value.Fit.State.Mean.ShouldBe(LogFit.Run(state, Log).Value.Fit.State.Mean);
        }

        var log = JsonSerializer.Deserialize<LayerLog>(JsonSerializer.Serialize(Log))!;
        LogFit.Run(Before.State, log).Value.Fit.State.Mean.ShouldBe(LogFit.Run(Before.State, Log).Value.Fit.State.Mean);
    }

    private static double At(double hours)
    {
        for (var i = 1; i < Good.Count; i++)
        {
            if (Good[i].AfterHours >= hours)
            {
                var (a, b) = (Good[i - 1], Good[i]);
                return a.Celsius + ((hours - a.AfterHours) / (b.AfterHours - a.AfterHours) * (b.Celsius - a.Celsius));
            }
        }

        return Good[^1].Celsius;
    }

    private List<string> Findings(IReadOnlyList<LogReading> readings)
    {
        var findings = LogFit.Run(Before.State, Log with { Readings = readings }).Value.Fit.Findings;
        Say(findings);
        return [.. findings.Select(f => f.Code)];
    }

    private void Say(IReadOnlyList<Finding> findings)
    {
        foreach (var f in findings)
        {
            output.WriteLine($"{f.Code}: {f.Message}");
        }
    }
}
