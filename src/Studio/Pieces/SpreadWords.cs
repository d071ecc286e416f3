using System.Globalization;
using Studio.Engine.Layers;
using Studio.Shell;

namespace Studio.Pieces;

/// <summary>How sure a layer's grams are, where the mould was filled with water.</summary>
public static class SpreadWords
{
    /// <summary>"412.0 g", or "412.0 g ± 6.0 g" where a water check says how sure that is.</summary>
    public static string Mix(LayerResult layer) => Say.Grams(layer.MixG) + (layer.MixSpreadG is { } spread ? " ± " + Say.Grams(spread) : "");

    /// <summary>What the spread rests on, as a sentence; empty where there is none.</summary>
    /// <param name="layer">The layer.</param>
    /// <param name="spreadPercent">The mould's, by its water check [%].</param>
    /// <param name="units"><c>metric</c> or <c>inch</c>.</param>
    public static string RestsOn(LayerResult layer, double? spreadPercent, string units) => spreadPercent is not { } percent ? ""
        : layer.LevelSpreadMm is { } level ? $"By the mould’s water check, ± {Percent(percent)}, its level may stand {Say.Length(level, units)} higher or lower."
        : layer.MixSpreadG is not null ? $"± rests on the mould’s water check: its volumes are sure to ± {Percent(percent)}."
        : "";

    private static string Percent(double percent) => percent.ToString("0.#", CultureInfo.InvariantCulture) + "\u00a0%";
}
