namespace Studio.Pieces;

/// <summary>Changes to the stack of layers.</summary>
public sealed partial class DesignSession
{
    /// <summary>The line at a layer's top was moved.</summary>
    public void MoveLine(int index, double toMm, bool last)
    {
        if (Good is { } result && Figures.Result is not null && HeightMm is { } height && index >= Settled && index < Piece.Layers.Count)
        {
            Do($"line{index}", () => Stacking.MoveLine(Piece.Layers, result, height, index, toMm));
        }

        if (last)
        {
            Pause();
        }
    }

    /// <summary>Adds a layer at a place: through the middle of the one there, or up to the rim on top.</summary>
    public void Insert(int index)
    {
        var at = Math.Max(index, Settled);
        Do("", () => Stacking.Insert(Piece.Layers, at, Fresh(at)));
        Open = at;
        Changed?.Invoke();
    }

    public void Remove(int index)
    {
        Do("", () => Stacking.Remove(Piece.Layers, index));
        Open = -1;
        Changed?.Invoke();
    }

    /// <summary>Swaps a layer with the one above it.</summary>
    public void Swap(int lower)
    {
        if (lower < Settled || lower + 1 >= Piece.Layers.Count)
        {
            return;
        }

        Do("", () => Stacking.Swap(Piece.Layers, lower, Figures.Result));
        Open = Open == lower ? lower + 1 : Open == lower + 1 ? lower : Open;
        Changed?.Invoke();
    }

    private PieceLayer Fresh(int at)
    {
        var (from, to) = Gap(at);
        var near = at < Piece.Layers.Count ? Piece.Layers[at] : Piece.Layers.LastOrDefault();
        var resin = near?.Resin ?? (Desk.Resins.FirstOrDefault(r => r.Class == "casting") ?? (Desk.Resins.Count > 0 ? Desk.Resins[0] : null));
        return new PieceLayer { Id = --fresh, Name = $"Layer {Piece.Layers.Count + 1}", ResinId = resin?.Id ?? 0, Resin = resin, Colour = Palette[Piece.Layers.Count % Palette.Length], ToMm = Math.Round(from + ((to - from) / (at < Piece.Layers.Count ? 2 : 1)), 1) };
    }

    // where a new layer would lie: within the layer at its place, or between the last one's top and the rim
    private (double FromMm, double ToMm) Gap(int at)
    {
        var rim = HeightMm ?? 100;
        if (Good is not { } g || g.Layers.Count != Piece.Layers.Count || g.Layers.Count == 0)
        {
            return (0, rim);
        }

        var top = g.Layers[^1].ToMm;
        return at < g.Layers.Count ? (g.Layers[at].FromMm, g.Layers[at].ToMm) : (top, Math.Max(rim, top + Stacking.LeastMm));
    }
}
