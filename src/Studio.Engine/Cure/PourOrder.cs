namespace Studio.Engine.Cure;

/// <summary>In which order layers are reckoned: one that is poured upon the gel of another comes after it.</summary>
internal sealed class PourOrder
{
    private const int None = -1;

    private readonly Dictionary<string, int> called = new(StringComparer.Ordinal);
    private readonly int[] waitsFor;
    private readonly HashSet<int> circling = [];

    /// <summary>Looks at each layer once, however many there are.</summary>
    internal PourOrder(IReadOnlyList<CureLayer> layers)
    {
        var first = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var (i, layer) in layers.Index())
        {
            first.TryAdd(layer.Name, i);
            called[layer.Name] = called.GetValueOrDefault(layer.Name) + 1;
        }

        waitsFor = [.. layers.Select(l => l.AfterGelOf is { } named && first.TryGetValue(named, out var i) ? i : None)];
        Circles();
    }

    /// <summary>How many layers are called so.</summary>
    internal int Called(string name) => called.GetValueOrDefault(name);

    /// <summary>Index of the first layer of the name that this one waits for; −1 where it waits for none.</summary>
    internal int WaitsFor(int index) => waitsFor[index];

    /// <summary>True when the layer waits, one by one, for itself.</summary>
    internal bool InCircle(int index) => circling.Contains(index);

    // each layer is walked over once: a walk ends where it meets an earlier one, or itself, which is a circle
    private void Circles()
    {
        var walk = new int[waitsFor.Length];
        for (var start = 0; start < waitsFor.Length; start++)
        {
            var at = start;
            for (; at != None && walk[at] == 0; at = waitsFor[at])
            {
                walk[at] = start + 1;
            }

            for (; at != None && walk[at] == start + 1 && circling.Add(at); at = waitsFor[at])
            {
            }
        }
    }
}
