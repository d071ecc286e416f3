using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>Where a layer starts and ends, and how much of what was asked for stays out.</summary>
/// <param name="FromMm">Bottom [mm].</param>
/// <param name="ToMm">Top, at most the rim [mm].</param>
/// <param name="AboveRimMm">Depth asked for above the rim [mm].</param>
/// <param name="LeftOverMl">Resin asked for that finds no room [ml].</param>
internal sealed record LayerLevel(double FromMm, double ToMm, double AboveRimMm, double LeftOverMl);

/// <summary>Finds every layer's heights, from the bottom up.</summary>
internal sealed class LayerLevels(MouldBody? mould, Former? former, IReadOnlyDictionary<string, MixedResin> resins, InputErrors errors)
{
    // a sum of thicknesses may miss the rim by rounding
    private const double TieMm = 1e-9;

    /// <summary>
    /// Heights of all layers. Goes on past a layer that cannot be placed, so that the errors of those above it are found as well; only
    /// complete when there is no error.
    /// </summary>
    public IReadOnlyList<LayerLevel> Find(IReadOnlyList<LayerSpec> layers)
    {
        var levels = new List<LayerLevel>();
        double? top = 0;
        for (var i = 0; i < layers.Count; i++)
        {
            if (Place(layers[i], $"layers[{i}]", top) is { } level)
            {
                levels.Add(level);
                top = level.ToMm;
            }
            else if (layers[i].ToMm is not { } to)
            {
                top = null;
            }
            else if (top is null && errors.Clean($"layers[{i}]"))
            {
                top = Math.Min(to, mould?.HeightMm ?? to);
            }
        }

        return levels;
    }

    private LayerLevel? Place(LayerSpec layer, string path, double? fromMm)
    {
        if (fromMm is not { } from || !errors.Clean(path))
        {
            return null;
        }

        if (layer.ToMm <= from)
        {
            errors.Add(path + ".toMm", FormattableString.Invariant($"The layer would end at {layer.ToMm} mm, not above the {from} mm where it starts. Give a height above that."));
            return null;
        }

        return (layer.ToMm ?? (from + layer.ThicknessMm)) is { } to ? UpTo(from, to)
            : CanSolve(layer) ? Holding(layer, from, layer.ResinMl!.Value) : null;
    }

    private bool CanSolve(LayerSpec layer) =>
        mould is not null && errors.Clean("former") && layer.ResinMl is not null && resins.ContainsKey(layer.Resin);

    private LayerLevel UpTo(double fromMm, double toMm)
    {
        var rim = mould?.HeightMm ?? double.MaxValue;
        return toMm > rim + TieMm ? new LayerLevel(fromMm, rim, toMm - rim, 0) : new LayerLevel(fromMm, Math.Min(toMm, rim), 0, 0);
    }

    // the level at which the room left between the solids holds the resin and its additions
    private LayerLevel Holding(LayerSpec layer, double fromMm, double resinMl)
    {
        var swelling = Solids.MixedMlPerResinMl(layer, resins[layer.Resin].DensityGPerMl);
        var wanted = (resinMl * swelling) + Solids.VolumeMl(layer);
        var rim = mould!.HeightMm;
        var room = Room(fromMm, rim);
        if (wanted > room * (1 + 1e-12))
        {
            var fits = Math.Max(0, room - Solids.VolumeMl(layer)) / swelling;
            return new LayerLevel(fromMm, rim, 0, resinMl - fits);
        }

        return new LayerLevel(fromMm, Bisect(z => Room(fromMm, z) < wanted, fromMm, rim), 0, 0);
    }

    private double Room(double fromMm, double toMm) =>
        mould!.VolumeMl(toMm) - mould.VolumeMl(fromMm) - (former?.VolumeMl(fromMm, toMm) ?? 0);

    // the room only grows with height, so halving goes on until the two heights are neighbours
    private static double Bisect(Func<double, bool> tooLow, double low, double high)
    {
        for (var middle = low + ((high - low) / 2); middle > low && middle < high; middle = low + ((high - low) / 2))
        {
            (low, high) = tooLow(middle) ? (middle, high) : (low, middle);
        }

        return high;
    }
}
