using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Resins;

namespace Studio.Stores;

/// <summary>Which prices are still the catalogue's invented ones: what it planted, less what somebody has changed since.</summary>
/// <param name="Materials">Ids.</param>
/// <param name="Resins">Ids of those whose sheet is still the catalogue's and whose packs nobody touched.</param>
public sealed record InventedPrices(IReadOnlySet<int> Materials, IReadOnlySet<int> Resins)
{
    public static async Task<InventedPrices> OfAsync(StudioDb db)
    {
        var history = await db.Set<AuditEntry>().AsNoTracking()
            .Where(a => (a.Entity == nameof(Material) && a.Changes.Contains(nameof(Material.PackPrice))) || (a.Entity == nameof(Resin) && a.Changes.Contains(nameof(Resin.Packs))))
            .Select(a => new { a.Entity, a.EntityId, a.Act }).ToListAsync();
        var planted = Ids(history.Where(a => a.Entity == nameof(Material) && a.Act == CatalogueSeed.Act).Select(a => a.EntityId));
        var own = Ids(history.Where(a => a.Entity == nameof(Material) && a.Act != CatalogueSeed.Act).Select(a => a.EntityId));
        var packed = Ids(history.Where(a => a.Entity == nameof(Resin)).Select(a => a.EntityId));
        var typical = await db.Set<Resin>().Where(r => r.Typical).Select(r => r.Id).ToListAsync();
        return new(planted.Except(own).ToHashSet(), typical.Except(packed).ToHashSet());
    }

    private static HashSet<int> Ids(IEnumerable<string> written) => [.. written.Select(id => int.Parse(id, System.Globalization.CultureInfo.InvariantCulture))];
}
