namespace Studio.Engine.Cure;

/// <summary>In which order layers are reckoned: one that is poured upon the gel of another comes after it.</summary>
internal static class PourOrder
{
    /// <summary>True when the layer waits, one by one, for itself.</summary>
    internal static bool InCircle(IReadOnlyList<CureLayer> layers, int index)
    {
        var at = index;
        for (var i = 0; i < layers.Count; i++)
        {
            at = WaitsFor(layers, at);
            if (at < 0 || at == index)
            {
                return at == index;
            }
        }

        return false; // runs into another's circle, which is said there
    }

    /// <summary>Index of the layer that this one waits for; −1 where it waits for none.</summary>
    internal static int WaitsFor(IReadOnlyList<CureLayer> layers, int index)
    {
        for (var i = 0; layers[index].AfterGelOf is { } named && i < layers.Count; i++)
        {
            if (string.Equals(layers[i].Name, named, StringComparison.Ordinal))
            {
                return i;
            }
        }

        return -1;
    }
}
