using Studio.Engine.Layers;

namespace Studio.Pieces;

/// <summary>How a layer says how far it goes.</summary>
public enum LayerMeasure
{
    /// <summary>Up to a height in the mould.</summary>
    To,

    /// <summary>So thick.</summary>
    Thickness,

    /// <summary>Until so much resin is used up.</summary>
    Resin,
}

/// <summary>Changes to a stack of layers, kept in pouring order.</summary>
public static class Stacking
{
    /// <summary>A moved line leaves no layer thinner than this [mm], or than it is already; a thinner one can be typed.</summary>
    public const double LeastMm = 1;

    /// <summary>Which way a layer is measured; up to a height where it does not say yet.</summary>
    public static LayerMeasure Of(PieceLayer layer) =>
        layer.ThicknessMm is not null ? LayerMeasure.Thickness : layer.ResinMl is not null ? LayerMeasure.Resin : LayerMeasure.To;

    /// <summary>
    /// Moves the line at a layer's top. What lies above the next layer stays where it is: a next layer given by thickness takes up the difference.
    /// A layer that used up an amount of resin is measured by its height from then on.
    /// </summary>
    /// <returns>False when there is no room to move it.</returns>
    public static bool MoveLine(IReadOnlyList<PieceLayer> layers, LayersResult result, double heightMm, int index, double toMm)
    {
        var (layer, now) = (layers[index], result.Layers[index]);
        var next = index + 1 < layers.Count ? layers[index + 1] : null;
        var nextTop = next is null ? heightMm : result.Layers[index + 1].ToMm;
        var highest = next is null ? heightMm : Of(next) is LayerMeasure.Resin ? heightMm - (LeastMm * (layers.Count - index - 1)) : nextTop - Math.Min(LeastMm, result.Layers[index + 1].DepthMm);
        var lowest = now.FromMm + Math.Min(LeastMm, now.DepthMm);
        if (highest < lowest || double.IsNaN(toMm))
        {
            return false;
        }

        var to = Math.Clamp(toMm, lowest, highest);
        if (Math.Abs(to - now.ToMm) < 1e-9)
        {
            return false;
        }

        Set(layer, Of(layer) is LayerMeasure.Thickness ? LayerMeasure.Thickness : LayerMeasure.To, Of(layer) is LayerMeasure.Thickness ? to - now.FromMm : to);
        if (next is { ThicknessMm: not null })
        {
            next.ThicknessMm = nextTop - to;
        }

        return true;
    }

    /// <summary>Says how far a layer goes, in one way; the other two are cleared.</summary>
    public static void Set(PieceLayer layer, LayerMeasure how, double? value) =>
        (layer.ToMm, layer.ThicknessMm, layer.ResinMl) = (how is LayerMeasure.To ? value : null, how is LayerMeasure.Thickness ? value : null, how is LayerMeasure.Resin ? value : null);

    /// <summary>The value it is measured by now, in any way, from the figures; for changing the way without changing the layer.</summary>
    public static double? Value(LayerResult? figures, LayerMeasure how) => figures is null ? null : how switch
    {
        LayerMeasure.To => Math.Round(figures.ToMm, 2),
        LayerMeasure.Thickness => Math.Round(figures.DepthMm, 2),
        _ => Math.Round(figures.ResinMl, 1),
    };

    /// <summary>Puts a layer in at a place and counts anew.</summary>
    public static void Insert(List<PieceLayer> layers, int index, PieceLayer layer)
    {
        layers.Insert(Math.Clamp(index, 0, layers.Count), layer);
        Count(layers);
    }

    /// <summary>Takes a layer out and counts anew.</summary>
    public static void Remove(List<PieceLayer> layers, int index)
    {
        layers.RemoveAt(index);
        Count(layers);
    }

    /// <summary>
    /// Swaps a layer with the one above it. Layers given by height keep their thickness, so that the stack above does not move.
    /// </summary>
    public static void Swap(List<PieceLayer> layers, int lower, LayersResult? result)
    {
        var (a, b) = (layers[lower], layers[lower + 1]);
        if (result is not null && a.ToMm is not null && b.ToMm is not null)
        {
            (a.ToMm, b.ToMm) = (b.ToMm, result.Layers[lower].FromMm + result.Layers[lower + 1].DepthMm);
        }
        else if (result is not null && (a.ToMm is not null || b.ToMm is not null))
        {
            Keep(a, result.Layers[lower]);
            Keep(b, result.Layers[lower + 1]);
        }

        (layers[lower], layers[lower + 1]) = (b, a);
        Count(layers);
    }

    private static void Keep(PieceLayer layer, LayerResult figures)
    {
        if (layer.ToMm is not null)
        {
            Set(layer, LayerMeasure.Thickness, figures.DepthMm);
        }
    }

    private static void Count(List<PieceLayer> layers)
    {
        for (var i = 0; i < layers.Count; i++)
        {
            layers[i].Order = i;
        }
    }
}
