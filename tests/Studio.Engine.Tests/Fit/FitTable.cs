using System.Diagnostics;
using System.Globalization;
using Studio.Engine.Fit;

namespace Studio.Engine.Tests.Fit;

/// <summary>Calibration measured on made-up resins whose truth is known: how often the intervals hold it, and what logs gain. Figures for docs/measurements.md.</summary>
public static class FitTable
{
    private const int Members = 32;

    /// <summary>Runs and tells.</summary>
    /// <param name="resins">How many, of all classes together.</param>
    /// <param name="seed">Which; those that a tuning looked at are not those to report.</param>
    /// <param name="workers">How many are worked on at once; the time of a fit is taken afterwards, one at a time.</param>
    /// <param name="say">Where lines go.</param>
    public static void Run(int resins, int seed, int workers, Action<string> say)
    {
        var kinds = ResinClass.All.Select(c => c.Key).ToList();
        var count = (resins + kinds.Count - 1) / kinds.Count;
        var trials = kinds.SelectMany((kind, k) => Enumerable.Range(0, count).Select(i => (kind, Number: seed + (10_000 * k) + i, Other: i % 5 == 4)))
            .AsParallel().AsOrdered().WithDegreeOfParallelism(workers)
            .Select(m => FitTrial.Run(new MadeResin(m.kind, m.Number, m.Other), Members)).ToList();
        say(F($"{trials.Count} resins of seed {seed}"));
        foreach (var kind in kinds)
        {
            say($"\n### {kind}");
            List<FitTrial> all = [.. trials.Where(t => t.Made.Kind == kind)];
            Table(say, "sheet alone", all, t => t.BySheet);
            Table(say, "and one log", all, t => t.ByLog);
            Table(say, "and a second at 28 °C", all, t => t.BySecond);
            Gain(say, all);
            Time(say, all);
        }
    }

    private static void Table(Action<string> say, string name, List<FitTrial> all, Func<FitTrial, IReadOnlyList<Foretold>> pick)
    {
        say($"| {name} | truth, median | error, median | width of 90 %, median | held | of the other form |\n| --- | --- | --- | --- | --- | --- |");
        for (var q = 0; q < pick(all[0]).Count; q++)
        {
            var of = all.ConvertAll(t => (t.Made.OtherForm, F: pick(t)[q]));
            say(F($"| {of[0].F.What} | {Median(of.Select(f => f.F.True)):0.0} | {Median(of.Select(f => f.F.Error)):0.00} | {Median(of.Select(f => f.F.Width)):0.0} | {of.Count(f => f.F.Held)}/{of.Count} | {of.Count(f => f.F.Held && f.OtherForm)}/{of.Count(f => f.OtherForm)} |"));
        }

        var flat = all.SelectMany(t => pick(t).Select(f => (f.Held, t.Made.OtherForm))).ToList();
        say(F($"held in all: {100.0 * flat.Count(f => f.Held) / flat.Count:0.0} %; of the other form: {100.0 * flat.Count(f => f.Held && f.OtherForm) / Math.Max(1, flat.Count(f => f.OtherForm)):0.0} %"));
    }

    private static void Gain(Action<string> say, List<FitTrial> all)
    {
        double Of(Func<FitTrial, IReadOnlyList<Foretold>> by, string what, Func<Foretold, double> pick) => Median(all.Select(t => pick(by(t).First(f => f.What == what))));
        say(F($"one log: error of the peak falls {Of(t => t.BySheet, FitTrial.Layer, f => f.Error) / Of(t => t.ByLog, FitTrial.Layer, f => f.Error):0.0} times, its width {Of(t => t.BySheet, FitTrial.Layer, f => f.Width) / Of(t => t.ByLog, FitTrial.Layer, f => f.Width):0.0} times; at 28 °C the width {Of(t => t.BySheet, FitTrial.Warm, f => f.Width) / Of(t => t.ByLog, FitTrial.Warm, f => f.Width):0.0} times, and by the second log {Of(t => t.ByLog, FitTrial.Warm, f => f.Width) / Of(t => t.BySecond, FitTrial.Warm, f => f.Width):0.0} times more"));
    }

    // one after the other, by the clock and by the process's own time on the processor
    private static void Time(Action<string> say, List<FitTrial> all)
    {
        var times = all.ConvertAll(t =>
        {
            var (clock, cpu) = (Stopwatch.GetTimestamp(), Environment.CpuUsage.TotalTime);
            _ = SheetFit.Run(t.Sheet);
            return (Ms: Stopwatch.GetElapsedTime(clock).TotalMilliseconds, Cpu: (Environment.CpuUsage.TotalTime - cpu).TotalMilliseconds);
        });
        say(F($"fit: median {Median(times.Select(t => t.Ms)):0} ms, most {times.Max(t => t.Ms):0} ms; on the processor median {Median(times.Select(t => t.Cpu)):0} ms, most {times.Max(t => t.Cpu):0} ms; misfit median {Median(all.Select(t => t.Fit.Misfit)):0.00}"));
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] order = [.. values.Order()];
        return order[order.Length / 2];
    }

    private static string F(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
