using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>What a layer that is to be poured still wants: a keepsake that is drawn in it and is not here, or one that nobody noted as prepared.</summary>
internal static class LayerWants
{
    /// <summary>By piece and layer from 0, a whole sentence each; nothing for a layer that lacks nothing or is poured.</summary>
    internal static async Task<ILookup<(int PieceId, int Order), string>> OfAsync(StudioDb db, IQueryable<Piece> which)
    {
        var layers = await which.Where(p => p.Stage == Making.Drawn || p.Stage == Making.Casting).SelectMany(p => p.Layers)
            .Where(l => !db.Set<Pour>().Any(o => o.PieceId == l.PieceId && o.LayerId == l.Id && !o.Withdrawn)).Select(l => new { l.PieceId, l.Order, l.Placed }).AsNoTracking().ToListAsync();
        var drawn = (from layer in layers from placed in layer.Placed where placed.KeepsakeId is not null select (layer.PieceId, layer.Order, Id: placed.KeepsakeId!.Value)).Distinct().ToList();
        if (drawn.Count == 0)
        {
            return Array.Empty<((int, int) Key, string Words)>().ToLookup(w => w.Key, w => w.Words);
        }

        var ids = drawn.Select(d => d.Id).Distinct().ToList();
        var keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => ids.Contains(k.Id)).ToDictionaryAsync(k => k.Id);
        var logs = (await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => ids.Contains(e.KeepsakeId)).OrderBy(e => e.Id).ToListAsync()).ToLookup(e => e.KeepsakeId);
        var inside = logs.SelectMany(l => l).Select(e => e.PieceId).OfType<int>().Distinct().ToList();
        var names = inside.Count == 0 ? [] : await db.Set<Piece>().Where(p => inside.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Stage == Making.Failed ? $"“{p.Name}”, which failed" : $"“{p.Name}”");
        return (from d in drawn
                let words = keepsakes.TryGetValue(d.Id, out var keepsake) ? Words(keepsake, [.. logs[d.Id]], d.PieceId, names) : null
                where words is not null
                select (Key: (d.PieceId, d.Order), Words: words)).ToLookup(w => w.Key, w => w.Words);
    }

    private static string? Words(Keepsake keepsake, List<KeepsakeEvent> log, int pieceId, Dictionary<int, string> names)
    {
        var (now, rule) = (CustodyLog.Read(log), MaterialRules.For(keepsake.Kind));
        var what = $"{keepsake.Description} ({keepsake.EntryNumber})";
        var lies = now.SetIn.Where(s => !s.Copy).Select(s => s.PieceId).OfType<int>().ToList();
        if (!now.Balance.InHand)
        {
            return lies.Contains(pieceId) ? null
                : lies.Select(p => names.GetValueOrDefault(p)).OfType<string>().FirstOrDefault() is { } piece ? $"{what} is not here: it is in {piece}. Ask the family, or draw the piece without it."
                : $"{what} is not here: {CustodyWords.Label(keepsake.Custody).ToLowerInvariant()}. Ask the family, or draw the piece without it.";
        }

        return rule.DryingDays > 0 && CustodyLog.Standing(log).All(e => e.Kind != CustodyKind.Prepared)
            ? FormattableString.Invariant($"Nobody noted {what} as prepared: it has to dry, {rule.DryingDays:0.#} days as a rule.")
            : null;
    }
}
