using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>Checks every field of the layers' input for itself; what hangs together by heights is checked where levels are found.</summary>
internal static class LayersCheck
{
    private const double MostG = 1e9;
    private const double MostMl = 1e9;
    private const double MostPercent = 1000;

    /// <summary>Everything that takes no geometry: names, ranges, one of three ways to say how much.</summary>
    public static void Fields(LayersInput input, InputErrors errors)
    {
        Waste(input, errors);
        if (input.Resins.Count == 0)
        {
            errors.Add("resins", "There is no resin. Give at least one, by an id that the layers name.");
        }

        if (input.Layers.Count == 0)
        {
            errors.Add("layers", "There is no layer. Give at least one.");
        }

        for (var i = 0; i < input.Layers.Count; i++)
        {
            Layer(input.Layers[i], $"layers[{i}]", input.Resins, errors);
        }
    }

    private static void Waste(LayersInput input, InputErrors errors)
    {
        var waste = input.Waste ?? new WasteSpec();
        errors.Within("waste.percent", waste.Percent, 0, MostPercent, "%");
        errors.Within("waste.perBatchG", waste.PerBatchG, 0, MostG, "g");
        foreach (var (id, resin) in input.Resins.Where(r => r.Value.MaxBatchG <= waste.PerBatchG))
        {
            errors.Add($"resins.{id}.maxBatchG", FormattableString.Invariant($"A batch of at most {resin.MaxBatchG} g is used up by the {waste.PerBatchG} g that stay in each cup. Allow a larger batch or lower 'waste.perBatchG'."), "batch-used-up");
        }
    }

    private static void Layer(LayerSpec layer, string path, IReadOnlyDictionary<string, ResinSpec> resins, InputErrors errors)
    {
        errors.Named(path + ".name", layer.Name);
        if (resins.Count > 0 && !resins.ContainsKey(layer.Resin))
        {
            errors.Add(path + ".resin", $"There is no resin '{layer.Resin}'. There are: {Choices.Few(resins.Keys)}.", "resin-unknown");
        }

        errors.Positive(path + ".toMm", layer.ToMm, Dimension.LongestMm, "mm");
        errors.Positive(path + ".thicknessMm", layer.ThicknessMm, Dimension.LongestMm, "mm");
        errors.Positive(path + ".resinMl", layer.ResinMl, MostMl, "ml");
        if (new[] { layer.ToMm, layer.ThicknessMm, layer.ResinMl }.Count(v => v is not null) != 1)
        {
            errors.Add(path, "A layer needs exactly one of 'toMm', 'thicknessMm' and 'resinMl', to say how far it goes.", "height-choice");
        }

        Each(layer.Additions, path + ".additions", (a, p) => Addition(a, p, errors));
        Each(layer.Scatter, path + ".scatter", (s, p) => Scatter(s, p, errors));
        Each(layer.Placed, path + ".placed", (s, p) => Placed(s, p, errors));
    }

    private static void Each<T>(IReadOnlyList<T> list, string path, Action<T, string> check)
    {
        for (var i = 0; i < list.Count; i++)
        {
            check(list[i], $"{path}[{i}]");
        }
    }

    private static void Addition(AdditionSpec addition, string path, InputErrors errors)
    {
        errors.Named(path + ".name", addition.Name);
        errors.Within(path + ".percentOfResin", addition.PercentOfResin, 0, MostPercent, "%");
        errors.Positive(path + ".densityGPerMl", addition.DensityGPerMl, MixedResin.DensestGPerMl, "g/ml");
    }

    private static void Scatter(ScatterSpec scatter, string path, InputErrors errors)
    {
        errors.Named(path + ".name", scatter.Name);
        errors.Positive(path + ".packingFraction", scatter.PackingFraction, 1, "");
        OneWay(path, scatter.MassG, scatter.DensityGPerMl, scatter.BulkMl, "bulkMl", errors);
    }

    private static void Placed(PlacedSpec placed, string path, InputErrors errors)
    {
        errors.Named(path + ".name", placed.Name);
        OneWay(path, placed.MassG, placed.DensityGPerMl, placed.DisplacedMl, "displacedMl", errors);
    }

    // either weighed, with a density, or measured by volume: both would leave open which one counts
    private static void OneWay(string path, double? massG, double? densityGPerMl, double? volumeMl, string volumeName, InputErrors errors)
    {
        errors.Within(path + ".massG", massG, 0, MostG, "g");
        errors.Positive(path + ".densityGPerMl", densityGPerMl, MixedResin.DensestGPerMl, "g/ml");
        errors.Within($"{path}.{volumeName}", volumeMl, 0, MostMl, "ml");
        if (volumeMl is not null && (massG is not null || densityGPerMl is not null))
        {
            errors.Add(path, $"Give either 'massG' with 'densityGPerMl', or '{volumeName}', not both.", "amount-twice");
        }
        else if (volumeMl is null && massG is null && densityGPerMl is null)
        {
            errors.Add(path, $"Give either 'massG' with 'densityGPerMl', or '{volumeName}'.", "amount-missing");
        }
        else if (volumeMl is null && massG is null)
        {
            errors.Add(path + ".massG", "The mass is missing; it goes with 'densityGPerMl'.", "mass-missing");
        }
        else if (volumeMl is null && densityGPerMl is null)
        {
            errors.Add(path + ".densityGPerMl", "The density is missing; it turns 'massG' into a volume.", "density-missing");
        }
    }
}
