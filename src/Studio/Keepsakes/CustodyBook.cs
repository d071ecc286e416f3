using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>What a look at every keepsake's log found.</summary>
/// <param name="Looked">How many keepsakes.</param>
/// <param name="Faults">What does not add up, a whole sentence each, beginning with the entry number.</param>
/// <param name="Unknown">What the records cannot tell, a whole sentence each; no fault.</param>
public sealed record CustodyFindings(int Looked, IReadOnlyList<string> Faults, IReadOnlyList<string> Unknown)
{
    public bool AddsUp => Faults.Count == 0;
}

/// <summary>Recomputes every keepsake's balance from its log, and names what does not add up.</summary>
public sealed class CustodyBook(IDbContextFactory<StudioDb> factory, IPieceNames pieces, IPourNames pours, News news)
{
    /// <summary>Looks at all of them; nothing is written.</summary>
    public async Task<CustodyFindings> CheckAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var keepsakes = await db.Set<Keepsake>().OrderBy(k => k.Id).ToListAsync();
        var all = await db.Set<KeepsakeEvent>().OrderBy(e => e.Id).ToListAsync();
        var logs = all.ToLookup(e => e.KeepsakeId);
        var named = await pieces.OfAsync(db, all.Select(e => e.PieceId).OfType<int>().ToHashSet());
        var poured = await pours.OfAsync(db, all.Select(e => e.PourId).OfType<int>().ToHashSet());
        var (faults, unknown) = (new List<string>(), new List<string>());
        foreach (var k in keepsakes)
        {
            var log = logs[k.Id].ToList();
            var now = CustodyLog.Read(log);
            faults.AddRange(Faults(k, log, now, named, poured).Select(f => $"{k.EntryNumber}, {k.Description}: {f}"));
            unknown.AddRange(Unknown(now).Select(u => $"{k.EntryNumber}, {k.Description}: {u}"));
        }

        return new(keepsakes.Count, faults, unknown);
    }

    /// <summary>The nightly look: what it found is kept, and the shelf says so.</summary>
    public async Task<CustodyFindings> LookAsync()
    {
        var found = await CheckAsync();
        await using var db = await factory.CreateDbContextAsync();
        db.WriteAs("the nightly check");
        db.Add(new CustodyCheck { At = db.Now, Looked = found.Looked, Faults = [.. found.Faults] });
        await db.SaveChangesAsync();
        news.Tell(News.Keepsake);
        return found;
    }

    /// <summary>The last nightly look; null before the first.</summary>
    public async Task<CustodyCheck?> LastAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<CustodyCheck>().AsNoTracking().OrderByDescending(c => c.Id).FirstOrDefaultAsync();
    }

    private static IEnumerable<string> Faults(Keepsake k, List<KeepsakeEvent> log, CustodyState now, IReadOnlyDictionary<int, string> named, IReadOnlyDictionary<int, PourName> poured)
    {
        var b = now.Balance;
        foreach (var fault in now.Faults)
        {
            yield return fault.Message;
        }

        if (!b.PiecesAddUp)
        {
            yield return $"the pieces do not add up. {CustodyWords.Balance(b)}";
        }

        if (b.GramsAddUp == false)
        {
            yield return $"the grams do not add up. {CustodyWords.Balance(b)}";
        }

        if (log.Exists(e => e.PieceId is { } p && !named.ContainsKey(p)))
        {
            yield return "an entry names a piece that is not in the book.";
        }

        foreach (var set in now.SetIn.Where(s => s.PourId is not null))
        {
            if (!poured.TryGetValue(set.PourId!.Value, out var pour))
            {
                yield return "it is written to lie in a pour that is not in the book.";
            }
            else if (pour.Withdrawn)
            {
                yield return $"it is written to lie in the pour of layer {pour.LayerNumber}, {pour.LayerName}, which was taken back.";
            }
            else if (set.PieceId is { } piece && piece != pour.PieceId)
            {
                yield return "its entry names one piece and a pour of another.";
            }
        }

        if ((k.Custody, k.Place, k.Count, k.HeldCount) != (now.Whereabouts, now.Place, b.CameIn.Count, b.Held.Count) || !Nullable.Equals(k.HeldG, b.Held.MassG) || !Nullable.Equals(k.MassG, b.CameIn.MassG))
        {
            yield return $"its record says {CustodyWords.Label(k.Custody).ToLowerInvariant()}, {k.HeldCount} here, and its log says {CustodyWords.Label(now.Whereabouts).ToLowerInvariant()}, {b.Held.Count} here.";
        }
    }

    private static IEnumerable<string> Unknown(CustodyState now)
    {
        if (now.SetIn.Any(s => s is { Copy: false, PieceId: null }))
        {
            yield return "which piece it went into is not known; it was written down before the studio kept references.";
        }

        if (now.SetIn.Any(s => s is { Copy: false, Amount: { Count: 0, MassG: null } }))
        {
            yield return "how much of it went into a piece is not known.";
        }
    }
}
