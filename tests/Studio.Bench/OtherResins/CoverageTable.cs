using System.Globalization;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>Coverage of the fit's 90 % intervals on resins that another kinetics and another solver made. Figures for docs/measurements.md.</summary>
internal static class CoverageTable
{
    /// <summary>Resins on which constants may be set.</summary>
    public const int TuningSeed = 11;

    /// <summary>Resins to report; no constant is set on them.</summary>
    public const int ReportSeed = 77;

    private const string Aim = "aim 85 to 97";

    /// <summary>Runs and tells.</summary>
    public static int Run(string perClass, string seed, string workers)
    {
        var count = int.Parse(perClass, CultureInfo.InvariantCulture);
        var at = seed switch { "tuning" => TuningSeed, "report" => ReportSeed, _ => int.Parse(seed, CultureInfo.InvariantCulture) };
        var many = Math.Clamp(int.Parse(workers, CultureInfo.InvariantCulture), 1, 2);
        Action<string> say = Console.WriteLine;
        if (!OtherChecks.Run(say))
        {
            say("The generator is not to be trusted: see the rows above that are too far off.");
            return 1;
        }

        var truths = TruthShelf.Take(count, at, many, say);
        var trials = truths.AsParallel().AsOrdered().WithDegreeOfParallelism(many).Select(CoverageTrial.Run).ToList();
        say(F($"\n{trials.Count} resins of seed {at}, {count} of each class; greatest energy missing of any run {truths.Max(t => t.EnergyMiss):0.0e+0} of what was released"));
        foreach (var refused in trials.Where(t => t.Refused is not null))
        {
            say($"refused: {refused.Truth.Kind} {refused.Truth.Number}: {refused.Refused}");
        }

        Held(say, "class", trials, t => t.Truth.Kind);
        Held(say, "form", trials, t => t.Truth.Form);
        CoverageDetail.Quantities(say, trials);
        CoverageDetail.Gain(say, trials);
        CoverageDetail.RunAways(say, trials);
        CoverageDetail.Remarks(say, trials);
        say(F($"\nOne resin: its fits {Median(trials.Select(t => t.FitSeconds)):0.0} s of processor, fits and forecasts {Median(trials.Select(t => t.AllSeconds)):0.0} s by the clock (medians); its making {Median(truths.Select(t => t.Seconds)):0.0} s"));
        return 0;
    }

    /// <summary>A share in per cent; a dash where there is nothing to count.</summary>
    public static string Share(IReadOnlyCollection<ToldQuantity> all, Func<ToldQuantity, bool> of) => all.Count == 0 ? "–" : F($"{100.0 * all.Count(of) / all.Count:0.0}");

    public static double Median(IEnumerable<double> values)
    {
        double[] order = [.. values.Order()];
        return order.Length == 0 ? double.NaN : order.Length % 2 == 1 ? order[order.Length / 2] : (order[(order.Length / 2) - 1] + order[order.Length / 2]) / 2;
    }

    public static string F(FormattableString words) => words.ToString(CultureInfo.InvariantCulture);

    /// <summary>What was told at a stage and can be counted: no run-aways.</summary>
    public static List<ToldQuantity> At(IEnumerable<CoverageTrial> trials, int stage) =>
        [.. trials.Where(t => t.Stages.Count > stage).SelectMany(t => t.Stages[stage].Told).Where(q => !q.RunAway)];

    private static void Held(Action<string> say, string by, List<CoverageTrial> trials, Func<CoverageTrial, string> key)
    {
        say($"\n| {by} | known | resins | quantities | held, % ({Aim}) | permissive, % | peaks above the upper bound, % (aim ≤ 5) | film's gel at 18 °C held, % (after a log: aim ≥ 85) | it came later, % (aim ≤ 5) |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |");
        foreach (var (name, group) in trials.GroupBy(key).Select(g => (g.Key, g.ToList())).Append(("all", trials)))
        {
            for (var stage = 0; stage < ToldStage.Names.Length; stage++)
            {
                var all = At(group, stage);
                var (peaks, films) = (all.FindAll(q => q.Temperature), all.FindAll(q => q.What == CoverageTrial.FilmGel18));
                say($"| {name} | {ToldStage.Names[stage]} | {group.Count(t => t.Stages.Count > stage)} | {all.Count} | {Share(all, q => q.Held)} | {Share(all, q => q.Permissive)} | {Share(peaks, q => q.Permissive)} | {Share(films, q => q.Held)} | {Share(films, q => q.Permissive)} |");
            }
        }
    }
}
