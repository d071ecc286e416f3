namespace Studio.Pieces;

/// <summary>What is in the mould stays as it was poured.</summary>
public static class PouredRules
{
    /// <summary>Why a design cannot replace the stored one, or null: a poured layer, what lies under it, and the mould around it are settled.</summary>
    public static string? Refusal(Piece stored, Piece edited, IReadOnlyList<MouldLayer> poured)
    {
        if (poured.Count == 0)
        {
            return null;
        }

        if (stored.MouldId != edited.MouldId)
        {
            return "A layer is in the mould already, so the mould cannot be another. Draw the piece once more for another mould.";
        }

        if (stored.Former != edited.Former && Lowest(stored, edited) < poured.Max(p => p.ToMm))
        {
            return "The box for lights reaches into a layer that is poured already, so it stays as it is.";
        }

        var (was, now) = (stored.Layers.OrderBy(l => l.Order).ToList(), edited.Layers.OrderBy(l => l.Order).ToList());
        var settled = was.FindLastIndex(l => poured.Any(p => p.LayerId == l.Id));
        for (var i = 0; i <= settled; i++)
        {
            if (i >= now.Count || !Same(was[i], now[i]))
            {
                return $"Layer {i + 1}, “{was[i].Name}”, is poured already and stays as it was poured. What lies above it can still change.";
            }
        }

        return null;
    }

    private static double Lowest(Piece a, Piece b) => Math.Min(a.Former?.FromMm ?? double.MaxValue, b.Former?.FromMm ?? double.MaxValue);

    private static bool Same(PieceLayer a, PieceLayer b) =>
        a.Id == b.Id && a.ResinId == b.ResinId && a.ToMm == b.ToMm && a.ThicknessMm == b.ThicknessMm && a.ResinMl == b.ResinMl
        && a.Additions.SequenceEqual(b.Additions) && a.Scatter.SequenceEqual(b.Scatter) && a.Placed.SequenceEqual(b.Placed);
}
