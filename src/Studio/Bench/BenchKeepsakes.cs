using Studio.Engine.Custody;

namespace Studio.Bench;

/// <summary>The keepsakes that a layer takes, each once, with what may go in; and how a form of what went in is read.</summary>
internal static class BenchKeepsakes
{
    internal static IReadOnlyList<BenchKeepsake> Of(LayerAsk ask, IReadOnlyList<BenchThing> things, IReadOnlyDictionary<string, int> pictured)
    {
        var placed = things.Where(t => t.KeepsakeId is not null).Select(t => (Id: t.KeepsakeId!.Value, t.Copy, t.Grams));
        var onFilm = things.Where(t => t is { Begins: true, PictureHash: not null } && pictured.ContainsKey(t.PictureHash)).Select(t => (Id: pictured[t.PictureHash!], Copy: true, Grams: (double?)null));
        return
        [
            .. placed.Concat(onFilm).GroupBy(p => (p.Id, p.Copy)).Where(g => ask.Keepsakes.ContainsKey(g.Key.Id)).Select(g =>
            {
                var (k, now) = ask.Keepsakes[g.Key.Id];
                var permission = Permissions.For(k.Permits);
                var planned = g.All(p => p.Grams is not null) ? g.Sum(p => p.Grams) : null;
                return new BenchKeepsake(k.Id, g.Key.Copy, k.EntryNumber, k.Description, now.Balance.Held, CustodyRules.Offer(k.Subject, now), permission.MayCast == CastShare.All, permission.OnForm, now.Place, planned);
            }),
        ];
    }

    /// <summary>The rows that a form begins with: the permitted part is offered, nothing is taken that nobody typed or tapped.</summary>
    internal static List<SetRow> Begin(BenchLayer layer) => [.. layer.Keepsakes.Select(k => new SetRow
    {
        KeepsakeId = k.KeepsakeId,
        Copy = k.Copy,
        Count = k is { Copy: false, Offer.Count: > 0 } ? k.Offer.Count : null,
        MassG = k.Copy ? null : k.MayBeAll ? k.Held.MassG : k.Offer.MassG ?? k.Planned,
        RestPlace = k.Place,
    })];
}
