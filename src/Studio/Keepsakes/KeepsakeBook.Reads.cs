using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <content>Reads, each shaped for its page.</content>
public sealed partial class KeepsakeBook
{
    /// <summary>The ledger, newest first.</summary>
    /// <param name="search">An entry number (slips allowed), or words of description, customer, commission or place; empty for all.</param>
    /// <param name="custody"><c>here</c>, <c>in-piece</c>, <c>returned</c>; empty for all.</param>
    /// <param name="most">How many lines.</param>
    public async Task<LedgerPage> LedgerAsync(string search, string custody, int most)
    {
        await using var db = await factory.CreateDbContextAsync();
        var asked = custody.Length == 0 ? db.Set<Keepsake>() : db.Set<Keepsake>().Where(k => k.Custody == custody);
        var (found, note) = Search(db.Set<Keepsake>(), asked, search.Trim());
        var lines = await Lines(db, found.OrderByDescending(k => k.Id).Take(most + 1)).ToListAsync();
        return new LedgerPage([.. lines.Take(most)], lines.Count > most, lines.Count > 0 || await db.Set<Keepsake>().AnyAsync(), note);
    }

    /// <summary>A commission's keepsakes in the order they came.</summary>
    public async Task<IReadOnlyList<LedgerLine>> ForCommissionAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await Lines(db, db.Set<Keepsake>().Where(k => k.CommissionId == commissionId).OrderBy(k => k.Id)).ToListAsync();
    }

    /// <summary>A commission's keepsakes for the design of its pieces: what may be cast, and what each needs before resin.</summary>
    public async Task<IReadOnlyList<PieceKeepsake>> ForPieceAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        var keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == commissionId).OrderBy(k => k.Id)
            .Select(k => new { Keepsake = k, Hash = db.Set<Photo>().Where(p => p.KeepsakeId == k.Id).OrderBy(p => p.Id).Select(p => p.Hash).FirstOrDefault() }).ToListAsync();
        var ids = keepsakes.ConvertAll(k => k.Keepsake.Id);
        var events = (await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => ids.Contains(e.KeepsakeId)).ToListAsync()).ToLookup(e => e.KeepsakeId);
        return keepsakes.ConvertAll(row =>
        {
            var k = row.Keepsake;
            var now = CustodyChain.Now(events[k.Id]);
            var act = k.Permits == Permission.CopyReturn ? CustodyLink.CopyCast : CustodyLink.Embedded;
            var refusal = CustodyRules.Refusal(act, k.Kind, k.Permits, now);
            return new PieceKeepsake(k.Id, k.Version, k.EntryNumber, k.Kind, KeepsakeKinds.Label(k.Kind), k.Description, k.Count, k.MassG, k.Permits, k.Place, k.Custody, row.Hash, refusal is null, refusal ?? "", [MaterialRules.For(k.Kind).At("kind")]);
        });
    }

    /// <summary>The page of a keepsake, by its number as typed or scanned; null when there is none.</summary>
    public async Task<KeepsakeView?> ViewAsync(string number)
    {
        if (!EntryNumber.TryParse(number, out var entry))
        {
            return null;
        }

        var text = entry.ToString();
        await using var db = await factory.CreateDbContextAsync();
        var row = await db.Set<Keepsake>().AsNoTracking().Where(k => k.EntryNumber == text)
            .Select(k => new { Keepsake = k, k.Commission!.Number, k.Commission.Remembers, Customer = k.Commission.Customer!.Name }).SingleOrDefaultAsync();
        if (row is null)
        {
            return null;
        }

        var k = row.Keepsake;
        var events = await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => e.KeepsakeId == k.Id).OrderBy(e => e.Id).ToListAsync();
        var photos = await db.Set<Photo>().AsNoTracking().Where(p => p.KeepsakeId == k.Id).OrderBy(p => p.Id)
            .Select(p => new KeepsakePhoto(p.Id, p.Hash, p.FileName, p.WidthPx, p.HeightPx, p.TakenAt)).ToListAsync();
        var now = CustodyChain.Now(events);
        return new KeepsakeView(k, row.Number, row.Remembers, row.Customer, now, Whereabouts(now), CustodyChain.MassStory(events), SpokenAlphabet.Words(entry),
            photos, ChainLines(events, now), KeepsakeKinds.Findings(k.Kind, k.MassG), Offered(k, now));
    }

    private static IQueryable<LedgerLine> Lines(StudioDb db, IQueryable<Keepsake> keepsakes) => keepsakes.AsNoTracking().Select(k => new LedgerLine
    {
        Id = k.Id,
        EntryNumber = k.EntryNumber,
        Kind = k.Kind,
        Description = k.Description,
        Count = k.Count,
        MassG = k.MassG,
        Permits = k.Permits,
        Place = k.Place,
        Custody = k.Custody,
        ReceivedAt = k.ReceivedAt,
        ReturnBy = k.ReturnBy,
        CommissionId = k.CommissionId,
        Commission = k.Commission!.Number,
        Remembers = k.Commission.Remembers,
        Customer = k.Commission.Customer!.Name,
        Hash = db.Set<Photo>().Where(p => p.KeepsakeId == k.Id).OrderBy(p => p.Id).Select(p => p.Hash).FirstOrDefault(),
    });

    // a whole number is looked for whatever the filter says; one with a slip is looked for by its digits, and the slip is said
    private static (IQueryable<Keepsake> Found, string Note) Search(IQueryable<Keepsake> all, IQueryable<Keepsake> asked, string search)
    {
        if (search.Length == 0)
        {
            return (asked, "");
        }

        var parsed = EntryNumber.Parse(search);
        if (parsed.Ok)
        {
            var number = parsed.Value.ToString();
            return (all.Where(k => k.EntryNumber == number), "");
        }

        if (EntrySlip.DigitsOf(search) is { } digits)
        {
            return (all.Where(k => k.EntryNumber.StartsWith(digits)), parsed.Errors[0].Message);
        }

#pragma warning disable CA1304, CA1311, CA1862, MA0011 // lower() of the database, not of a culture
        foreach (var pattern in Matching.Patterns(search))
        {
            asked = asked.Where(k => EF.Functions.Like(
                (k.EntryNumber + " " + k.Description + " " + k.Place + " " + k.Commission!.Number + " " + k.Commission.Remembers + " " + k.Commission.Customer!.Name).ToLower(), pattern, Matching.Escape));
        }
#pragma warning restore CA1304, CA1311, CA1862, MA0011

        return (asked, "");
    }

    private static string Whereabouts(ChainNow now) => (now.Custody, now.LeftOver) switch
    {
        (CustodyChain.InPiece, true) => $"A part of it is cast. The rest is here: {now.Place}",
        (CustodyChain.InPiece, _) => $"Cast. {now.Place}",
        (CustodyChain.Returned, _) => $"Back with the family. {now.Place}",
        _ => $"Here: {now.Place}",
    };

    private static List<ChainLine> ChainLines(List<KeepsakeEvent> events, ChainNow now)
    {
        var undone = events.Select(e => CustodyLink.UndoneBy(e.Kind)).OfType<int>().ToHashSet();
        return events.ConvertAll(e => new ChainLine(e.Id, e.At, e.By, e.Kind, e.Words, undone.Contains(e.Id), e.Id == now.UndoId));
    }

    private static List<OfferedAct> Offered(Keepsake k, ChainNow now)
    {
        var cast = k.Permits == Permission.CopyReturn ? (CustodyLink.CopyCast, "Cast the copy") : (CustodyLink.Embedded, "Cast into a piece");
        (string Act, string Label)[] acts =
        [
            (CustodyLink.Moved, "Move"), (CustodyLink.Weighed, "Weigh"), (CustodyLink.Prepared, "Prepared"), (CustodyLink.Copied, "Copied"),
            cast, (CustodyLink.Returned, "Return to the family"), (CustodyLink.Note, "Add a note"), (CustodyLink.Corrected, "Correct a detail"),
        ];
        return [.. acts.Select(a => new OfferedAct(a.Act, a.Label, CustodyRules.Refusal(a.Act, k.Kind, k.Permits, now)))];
    }
}
