using static Studio.Bench.Tools.OtherResins.CoverageTable;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>The finer tables of the coverage.</summary>
internal static class CoverageDetail
{
    /// <summary>By class, stage and quantity.</summary>
    public static void Quantities(Action<string> say, List<CoverageTrial> trials)
    {
        say("\n| class | known | quantity | truth, median | error, median | width of 90 %, median | held, % | below, % | above (permissive), % | not told |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var kind in trials.GroupBy(t => t.Truth.Kind))
        {
            for (var stage = 0; stage < ToldStage.Names.Length; stage++)
            {
                foreach (var group in At(kind, stage).GroupBy(q => q.What))
                {
                    List<ToldQuantity> all = [.. group];
                    var peak = all[0].Temperature;
                    var (unit, times) = peak ? ("K", 1) : ("%", 100);
                    say(F($"| {kind.Key} | {ToldStage.Names[stage]} | {group.Key} | {Median(all.Select(q => q.True)):0.0} {(peak ? "°C" : "h")} | {times * Median(all.Select(q => q.Error)):0.0} {unit} | {times * Median(all.Select(q => q.Width)):0.0} {unit} | {Share(all, q => q.Held)} | {Share(all, q => q.Interval is { } i && q.True < i.From)} | {Share(all, q => q.Permissive)} | {all.Count(q => q.Interval is null)} |"));
                }
            }
        }
    }

    /// <summary>What one log gains.</summary>
    public static void Gain(Action<string> say, List<CoverageTrial> trials)
    {
        say("\n| class | layer's peak: error by the sheet alone, median [K] | after one log | it falls (aim: threefold) | width by the sheet [K] | after one log |\n| --- | --- | --- | --- | --- | --- |");
        foreach (var kind in trials.GroupBy(t => t.Truth.Kind))
        {
            var both = kind.Where(t => t.Stages.Count > 1 && t.Truth.PeakAt23C <= ToldQuantity.RunAwayC).ToList();
            double Of(int stage, Func<ToldQuantity, double> of) => Median(both.Select(t => of(t.Stages[stage].Told.First(q => q.What == CoverageTrial.LayerPeak))));
            var (before, after) = (Of(0, q => q.Error), Of(1, q => q.Error));
            say(F($"| {kind.Key} | {before:0.00} | {after:0.00} | {before / after:0.0} times | {Of(0, q => q.Width):0.0} | {Of(1, q => q.Width):0.0} |"));
        }
    }

    /// <summary>Peaks that run away are hit when the upper bound says so; a mild peak whose upper bound says so is a false alarm.</summary>
    public static void RunAways(Action<string> say, List<CoverageTrial> trials)
    {
        say("\n| class | known | peaks truly above 120 °C | said so | missed | false alarms, of milder peaks |\n| --- | --- | --- | --- | --- | --- |");
        foreach (var kind in trials.GroupBy(t => t.Truth.Kind))
        {
            for (var stage = 0; stage < ToldStage.Names.Length; stage++)
            {
                var peaks = kind.Where(t => t.Stages.Count > stage).SelectMany(t => t.Stages[stage].Told).Where(q => q.Temperature).ToList();
                var (away, mild) = (peaks.FindAll(q => q.RunAway), peaks.FindAll(q => !q.RunAway));
                say($"| {kind.Key} | {ToldStage.Names[stage]} | {away.Count} | {away.Count(q => q.SaysRunAway)} | {away.Count(q => !q.SaysRunAway)} | {mild.Count(q => q.SaysRunAway)} of {mild.Count} |");
            }
        }
    }

    /// <summary>What the fits remarked, and their misfit.</summary>
    public static void Remarks(Action<string> say, List<CoverageTrial> trials)
    {
        say("\n| class | known | misfit, median | findings |\n| --- | --- | --- | --- |");
        foreach (var kind in trials.GroupBy(t => t.Truth.Kind))
        {
            for (var stage = 0; stage < ToldStage.Names.Length; stage++)
            {
                var at = kind.Where(t => t.Stages.Count > stage).Select(t => t.Stages[stage]).ToList();
                var codes = at.SelectMany(s => s.Findings).GroupBy(c => c).OrderByDescending(g => g.Count()).Select(g => $"{g.Key} {g.Count()}");
                say(F($"| {kind.Key} | {ToldStage.Names[stage]} | {Median(at.Select(s => s.Misfit)):0.00} | {string.Join(", ", codes)} |"));
            }
        }
    }
}
