using System.Diagnostics;
using System.Globalization;
using Studio.Engine.Fit;

namespace Studio.Engine.Tests.Fit;

/// <summary>Calibration measured on made-up resins whose truth is known: how often the intervals hold it, and what one log gains. Figures for docs/measurements.md.</summary>
public static class FitTable
{
    private const int Members = 32;

    public static void Run(int resins, Action<string> say, string? only = null)
    {
        foreach (var kind in ResinClass.All.Select(c => c.Key).Where(k => only is null || k == only))
        {
            say($"\n### {kind}");
            var count = (resins + 2) / 3;
            var all = Enumerable.Range(0, count).Select(i => Trial(kind, i)).ToList();
            Table(say, "sheet alone", [.. all.Select(a => a.BySheet)], [.. all.Select(a => a.Other)]);
            Table(say, "and one log", [.. all.Select(a => a.ByLog)], [.. all.Select(a => a.Other)]);
            Gain(say, [.. all.Select(a => a.BySheet)], [.. all.Select(a => a.ByLog)]);
            say(F($"fit: median {Median(all.Select(a => a.Ms)):0} ms, most {all.Max(a => a.Ms):0} ms; misfit median {Median(all.Select(a => a.Misfit)):0.00}"));
        }
    }

    private static (bool Other, double Ms, double Misfit, IReadOnlyList<Foretold> BySheet, IReadOnlyList<Foretold> ByLog) Trial(string kind, int i)
    {
        var made = new MadeResin(kind, (1000 * kind.Length) + i, otherForm: i % 5 == 4);
        var trial = FitTrial.Run(made, Members);
        var clock = Stopwatch.GetTimestamp();
        _ = SheetFit.Run(trial.Sheet);
        return (made.OtherForm, Stopwatch.GetElapsedTime(clock).TotalMilliseconds, trial.Fit.Misfit, trial.BySheet, trial.ByLog);
    }

    private static void Table(Action<string> say, string name, List<IReadOnlyList<Foretold>> all, List<bool> other)
    {
        say($"| {name} | truth, median | error, median | width of 90 %, median | held |\n| --- | --- | --- | --- | --- |");
        for (var q = 0; q < all[0].Count; q++)
        {
            var of = all.ConvertAll(a => a[q]);
            say(F($"| {of[0].What} | {Median(of.Select(f => f.True)):0.0} | {Median(of.Select(f => f.Error)):0.00} | {Median(of.Select(f => f.Width)):0.0} | {of.Count(f => f.Held)}/{of.Count} |"));
        }

        var flat = all.SelectMany((a, i) => a.Select(f => (f.Held, Other: other[i]))).ToList();
        say(F($"held in all: {100.0 * flat.Count(f => f.Held) / flat.Count:0.0} %; of the other form: {100.0 * flat.Count(f => f.Held && f.Other) / Math.Max(1, flat.Count(f => f.Other)):0.0} %"));
    }

    private static void Gain(Action<string> say, List<IReadOnlyList<Foretold>> sheet, List<IReadOnlyList<Foretold>> log)
    {
        double Of(List<IReadOnlyList<Foretold>> all, string what, Func<Foretold, double> pick) => Median(all.Select(a => pick(a.First(f => f.What == what))));
        say(F($"one log: error of the peak falls {Of(sheet, FitTrial.Layer, f => f.Error) / Of(log, FitTrial.Layer, f => f.Error):0.0} times, its width {Of(sheet, FitTrial.Layer, f => f.Width) / Of(log, FitTrial.Layer, f => f.Width):0.0} times; at 28 °C the width {Of(sheet, FitTrial.Warm, f => f.Width) / Of(log, FitTrial.Warm, f => f.Width):0.0} times"));
    }

    private static double Median(IEnumerable<double> values)
    {
        double[] order = [.. values.Order()];
        return order[order.Length / 2];
    }

    private static string F(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);
}
