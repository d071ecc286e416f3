using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>A keepsake that must dry before resin.</summary>
/// <param name="Name">As it is said.</param>
/// <param name="Rule">What its material needs.</param>
/// <param name="LayerOrder">The lowest layer that waits for it, from 0; null: every layer.</param>
/// <param name="DoneAt">When it was noted as prepared [UTC]; null where it was not.</param>
internal sealed record Drying(string Name, MaterialRule Rule, int? LayerOrder, DateTime? DoneAt);

/// <summary>
/// What must dry for a piece: what is set into its layers, and while it is only drawn also what the commission lent to be cast and is set into no
/// piece yet, or it would be forgotten. What has not come yet has no days of its own: nothing is invented.
/// </summary>
internal static class PieceDrying
{
    private static readonly List<string> Kinds = [.. MaterialRules.All.Where(r => r.DryingDays > 0).Select(r => r.Key)];

    private static readonly string[] Castable = [.. Permissions.All.Where(p => p.ThingMayBeCast).Select(p => p.Key)];

    /// <summary>By piece.</summary>
    internal static async Task<ILookup<int, Drying>> OfAsync(StudioDb db, IReadOnlyCollection<TimePiece> pieces)
    {
        var commissions = pieces.Select(p => p.CommissionId).Distinct().ToList();
        var keepsakes = await db.Set<Keepsake>().Where(k => commissions.Contains(k.CommissionId) && Kinds.Contains(k.Kind) && Castable.Contains(k.Permits)).OrderBy(k => k.Id).ToListAsync();
        var ids = keepsakes.ConvertAll(k => k.Id);
        var chains = (ids.Count == 0 ? [] : await db.Set<KeepsakeEvent>().Where(e => ids.Contains(e.KeepsakeId)).ToListAsync()).ToLookup(e => e.KeepsakeId);
        var set = ids.Count == 0 ? [] : await SetAsync(db, commissions);
        return (from piece in pieces
                from keepsake in keepsakes
                where keepsake.CommissionId == piece.CommissionId
                let drying = Of(piece, keepsake, [.. chains[keepsake.Id]], set.Contains(keepsake.Id))
                where drying is not null
                select (piece.Id, drying)).ToLookup(d => d.Id, d => d.drying);
    }

    /// <summary>What dried for a piece that is finished, as if it had to again.</summary>
    internal static async Task<IReadOnlyList<Drying>> AsItWasAsync(StudioDb db, TimePiece piece)
    {
        var orders = piece.Layers.SelectMany(l => l.Placed.Select(p => (p.KeepsakeId, l.Order))).Where(p => p.KeepsakeId is not null).ToList();
        var ids = orders.ConvertAll(p => p.KeepsakeId!.Value);
        return [.. (await db.Set<Keepsake>().Where(k => ids.Contains(k.Id) && Kinds.Contains(k.Kind)).OrderBy(k => k.Id).ToListAsync())
            .Select(k => new Drying(k.Description, MaterialRules.For(k.Kind), orders.Where(o => o.KeepsakeId == k.Id).Min(o => o.Order), null))];
    }

    private static Drying? Of(TimePiece piece, Keepsake keepsake, IReadOnlyList<KeepsakeEvent> chain, bool setSomewhere)
    {
        var placed = piece.Layers.Where(l => l.Placed.Any(p => p.KeepsakeId == keepsake.Id)).ToList();
        var toPour = placed.Where(l => piece.Pours.All(p => p.LayerOrder != l.Order)).ToList();
        var waits = toPour.Count > 0 || (!setSomewhere && piece.Stage == Making.Drawn);
        if (!waits || !CustodyLog.Read(chain).Balance.InHand)
        {
            return null;
        }

        var prepared = CustodyLog.Standing(chain).LastOrDefault(e => e.Kind == CustodyKind.Prepared);
        return new(keepsake.Description, MaterialRules.For(keepsake.Kind), toPour.Count > 0 ? toPour.Min(l => l.Order) : null, prepared?.At);
    }

    // what any piece of these commissions holds already
    private static async Task<HashSet<int>> SetAsync(StudioDb db, List<int> commissions) =>
        [.. (await db.Set<Piece>().Where(p => commissions.Contains(p.CommissionId) && p.Stage != Making.LetGo).SelectMany(p => p.Layers).Select(l => l.Placed).ToListAsync())
            .SelectMany(p => p).Select(p => p.KeepsakeId).OfType<int>()];
}
