using System.Globalization;
using Studio.Engine;
using Studio.Engine.Forecast;
using Studio.Engine.Layers;

namespace Studio.Bench;

/// <summary>What to heed before a layer is weighed.</summary>
internal static class BenchCautions
{
    private const string CommonPractice = "common practice, no source";

    // what is warmer than this feels warm to a hand; common practice, no source [°C]
    private const double HandC = 37;

    /// <summary>Always said, whatever the layer.</summary>
    internal static IReadOnlyList<string> Standing { get; } =
    [
        "Nitrile gloves, changed often; eye protection; sleeves down. Latex does not protect.",
        "Windows open or extraction on before the first cup.",
        "Resin on the skin: off with soap and water, never solvent.",
        "A torch or a heat gun only on a fresh surface, kept moving: never near solvent or alcohol vapour, over film, dried flowers or wax; what is warmed cures faster and hotter.",
        "Where the resin's data sheet or safety data sheet says otherwise, it is right.",
    ];

    /// <summary>
    /// What to do when a layer grows hotter than it should: than the most that was foretold, or than what it may reach, whichever is lower. Common practice, no source.
    /// </summary>
    /// <param name="highC">The most that was foretold [°C].</param>
    /// <param name="limit">What the layer must not reach; null where that is not known.</param>
    internal static string Hotter(double highC, HeatLimit? limit)
    {
        // as printed: two figures that read alike are one
        var (most, bound) = (Math.Round(highC), limit is { } l && Math.Round(l.Celsius) < Math.Round(highC) ? l : null);
        var (celsius, which) = bound is null ? (most, "the most that was foretold") : (Math.Round(bound.Celsius), $"the limit for {bound.Of}");
        var hand = celsius < HandC ? ", less than a hand feels as warm" : "";
        return string.Create(CultureInfo.InvariantCulture,
            $"If it grows hotter than {celsius:0} °C ({which}{hand}), or smokes: do not move it, and never put a lid on it. Open the windows, keep out of the fumes, and let it cool by itself. The resin’s data sheet goes before this.");
    }

    /// <summary>This layer's own, the gravest first.</summary>
    internal static IReadOnlyList<Finding> Of(LayerResult? plan, BenchResin resin) =>
        [.. (plan is null ? [] : Mass(plan, resin).Concat(plan.Warnings)).Concat(Typical(resin))];

    private static IEnumerable<Finding> Mass(LayerResult plan, BenchResin resin)
    {
        var cupG = plan.Batches.Count > 0 ? plan.Batches[0].PartAG + plan.Batches[0].PartBG : 0;
        if (resin.PotLifeMassG is { } stated && cupG > stated)
        {
            yield return new("mass-shortens-pot-life", Severity.Warn, "layer", string.Create(CultureInfo.InvariantCulture,
                $"This cup holds {cupG:0} g; the data sheet states the pot life{Minutes(resin)} for {stated:0} g. More at once heats itself and sets sooner: pour it out of the cup as soon as it is stirred, and never leave it standing."), CommonPractice);
        }
        else if (cupG > 100)
        {
            yield return new("exotherm", Severity.Note, "layer", string.Create(CultureInfo.InvariantCulture,
                $"{cupG:0} g in one cup heat themselves. If the cup grows hot or smokes, take it outside if you safely can, and keep away from the fumes."), CommonPractice);
        }
    }

    private static string Minutes(BenchResin resin) => resin.PotLifeMinutes is { } m ? string.Create(CultureInfo.InvariantCulture, $" of {m:0} minutes") : "";

    private static IEnumerable<Finding> Typical(BenchResin resin)
    {
        if (resin.Typical)
        {
            yield return new("typical-sheet", Severity.Warn, "resin", $"{resin.Name} still has a typical data sheet from the seed. Enter your own resin's sheet under Stores: the times and grams here hold for the typical one only.", "our rule");
        }
    }
}
