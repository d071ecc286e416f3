using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>Volumes and grams of a piece, layer by layer: the contract's <c>calc layers</c>.</summary>
public static class LayersCalculation
{
    /// <summary>Works out every layer.</summary>
    /// <returns>The result with its warnings, or every input error at once.</returns>
    public static Outcome<LayersResult> Run(LayersInput input) => Run(input, new InputErrors());

    /// <summary>As <see cref="Run(LayersInput)"/>, after reading found errors of its own.</summary>
    internal static Outcome<LayersResult> Run(LayersInput input, InputErrors errors)
    {
        errors.Settle();
        var mould = MouldShapes.Make(input.Mould, "mould", errors);
        var resins = Resins(input, errors);
        LayersCheck.Fields(input, errors);
        var former = input.Former is { } box ? Former.Make(box, mould, errors) : null;
        var levels = new LayerLevels(mould, former, resins, errors).Find(input.Layers);
        var waste = input.Waste ?? new WasteSpec();
        if (errors.None)
        {
            var piece = new PieceSum(mould!, former, waste, input.Mould.VolumeSpreadPercent / 100);
            var results = input.Layers.Select((layer, i) => piece.Add(layer, resins[layer.Resin], levels[i], $"layers[{i}]", $"resins.{layer.Resin}", errors)).ToList();
            if (errors.None)
            {
                return Outcome<LayersResult>.Of(piece.Whole(results) with { Findings = Doubts(input) });
            }
        }

        return Outcome<LayersResult>.Refused(errors.All);
    }

    private static List<Finding>? Doubts(LayersInput input) =>
        input.Resins.SelectMany(r => ResinSpecDoubts.Of(r.Value, "resins." + r.Key)).ToList() is { Count: > 0 } doubts ? doubts : null;

    private static Dictionary<string, MixedResin> Resins(LayersInput input, InputErrors errors)
    {
        var resins = new Dictionary<string, MixedResin>(StringComparer.Ordinal);
        foreach (var (id, spec) in input.Resins)
        {
            if (MixedResin.Make(spec, "resins." + id, errors) is { } resin)
            {
                resins[id] = resin;
            }
        }

        return resins;
    }
}
