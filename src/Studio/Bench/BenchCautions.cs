using System.Globalization;
using Studio.Engine;
using Studio.Engine.Layers;

namespace Studio.Bench;

/// <summary>What to heed before a layer is weighed.</summary>
internal static class BenchCautions
{
    private const string CommonPractice = "common practice, no source";

    // below this a hand tells more than a figure [°C]
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

    /// <summary>What to do when a layer grows hotter than was foretold; common practice, no source.</summary>
    internal static string Hotter(double highC) => string.Create(CultureInfo.InvariantCulture,
        $"If it grows hotter than {(highC < HandC ? "the hand" : $"{highC:0} °C")}, or smokes: do not move it, and never put a lid on it. Open the windows, keep out of the fumes, and let it cool by itself. The resin’s data sheet goes before this.");

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
