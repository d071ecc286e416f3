using System.Text.Json;
using Studio.Tests;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>Truths that were made before, in artifacts/other-resins; a fit is tried on the same resins as often as one likes.</summary>
internal static class TruthShelf
{
    // raise it when the generator changes, so that no stale truth is read
    private const int Edition = 2;

    /// <summary>Reads the truths of a seed and count, or makes and keeps them.</summary>
    public static IReadOnlyList<ResinTruth> Take(int perClass, int seed, int workers, Action<string> say)
    {
        var file = Path.Combine(Sources.Root(), "artifacts", "other-resins", FormattableString.Invariant($"edition{Edition}-seed{seed}-count{perClass}.json"));
        if (File.Exists(file))
        {
            return JsonSerializer.Deserialize<List<ResinTruth>>(File.ReadAllText(file))!;
        }

        var made = DrawnClass.All.SelectMany(k => Enumerable.Range(0, perClass).Select(i => (Kind: k, Number: i)))
            .AsParallel().AsOrdered().WithDegreeOfParallelism(workers).WithMergeOptions(ParallelMergeOptions.NotBuffered)
            .Select(m => TruthMaker.Make(m.Kind, seed, m.Number)).ToList();
        say(FormattableString.Invariant($"Made {made.Count} resins: {made.Average(t => t.Seconds):0.0} s each, most {made.Max(t => t.Seconds):0.0} s; drawn {made.Average(t => t.Drawn):0.0} times each; kept in {Path.GetRelativePath(Sources.Root(), file)}."));
        Directory.CreateDirectory(Path.GetDirectoryName(file)!);
        File.WriteAllText(file, JsonSerializer.Serialize(made));
        return made;
    }
}
