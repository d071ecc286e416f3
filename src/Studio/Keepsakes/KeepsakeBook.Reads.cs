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
    public async Task<LedgerView> LedgerAsync(string search, string custody, int most)
    {
        await using var db = await factory.CreateDbContextAsync();
        var asked = custody.Length == 0 ? db.Set<Keepsake>() : db.Set<Keepsake>().Where(k => k.Custody == custody);
        var (found, note) = Search(db.Set<Keepsake>(), asked, search.Trim());
        var lines = await Lines(db, found.OrderByDescending(k => k.Id).Take(most + 1)).ToListAsync();
        return new LedgerView([.. lines.Take(most)], lines.Count > most, lines.Count > 0 || await db.Set<Keepsake>().AnyAsync(), note);
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
            var refusal = CustodyRules.Refusal(CastAct(k), k.Subject, CustodyLog.Read(events[k.Id]));
            return new PieceKeepsake(k.Id, k.Version, k.EntryNumber, k.Kind, KeepsakeKinds.Label(k.Kind), k.Description, k.Count, k.MassG, k.Permits, k.Place, k.Custody, row.Hash, refusal is null, refusal?.Message ?? "", [MaterialRules.For(k.Kind).At("kind")]);
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
        var now = CustodyLog.Read(events);
        var names = await NamesAsync(db, events);
        return new KeepsakeView(k, row.Number, row.Remembers, row.Customer, now, Whereabouts(now, names), CustodyWords.Balance(now.Balance), SpokenAlphabet.Words(entry),
            photos, ChainLines(events, now, names), KeepsakeKinds.Findings(k.Kind, k.MassG), Offered(k, now), await pieces.OfCommissionAsync(db, k.CommissionId));
    }

    /// <summary>What the references of these entries are called now.</summary>
    public async Task<CustodyNames> NamesAsync(StudioDb db, IReadOnlyCollection<KeepsakeEvent> log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var poured = await pours.OfAsync(db, log.Select(e => e.PourId).OfType<int>().ToHashSet());
        return new(await pieces.OfAsync(db, log.Select(e => e.PieceId).OfType<int>().Concat(poured.Values.Select(p => p.PieceId)).ToHashSet()), poured);
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
        HeldCount = k.HeldCount,
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

    private static string Whereabouts(CustodyState now, CustodyNames names)
    {
        var into = now.SetIn.Where(s => !s.Copy).Select(s => s.PieceId is { } id ? names.Pieces.GetValueOrDefault(id, "a piece") : "a piece that is not known").Distinct(StringComparer.Ordinal).ToList();
        var cast = into.Count > 0 ? $"In {string.Join(" and ", into)}." : "";
        return now.Whereabouts switch
        {
            CustodyWhereabouts.Withdrawn => "Crossed out: it was logged by mistake.",
            CustodyWhereabouts.Here when cast.Length > 0 => $"{cast} The rest is here: {now.Place}",
            CustodyWhereabouts.Here => $"Here: {now.Place}",
            CustodyWhereabouts.InPiece => cast,
            CustodyWhereabouts.Returned => "Back with the family.",
            CustodyWhereabouts.Lost => "Declared lost.",
            CustodyWhereabouts.Used => "Used up in a test.",
            var unknown => throw new InvalidOperationException($"There is no whereabouts '{unknown}'."),
        };
    }

    private static List<ChainLine> ChainLines(List<KeepsakeEvent> log, CustodyState now, CustodyNames names)
    {
        var undone = log.Where(e => e.Kind == CustodyKind.Undone).Select(e => e.RefId).OfType<int>().ToHashSet();
        return log.ConvertAll(e => new ChainLine(e.Id, e.At, e.By, e.Kind, CustodyWords.Of(e, log, names), undone.Contains(e.Id), e.Id == now.UndoId && e.PourId is null,
            now.SetIn.FirstOrDefault(s => s.EntryId == e.Id && !s.Copy)?.Amount));
    }

    private static string CastAct(Keepsake k) => Permissions.For(k.Permits).ThingMayBeCast ? CustodyKind.SetIn : CustodyKind.CopySetIn;

    private static List<OfferedAct> Offered(Keepsake k, CustodyState now)
    {
        var cast = CastAct(k);
        (string Act, string Label)[] acts =
        [
            (CustodyKind.Moved, "Move"), (CustodyKind.Weighed, "Weigh"), (CustodyKind.Prepared, "Prepared"), (CustodyKind.Divided, "Divided"), (CustodyKind.Copied, "Copied"),
            (cast, cast == CustodyKind.SetIn ? "Set into a piece" : "Set the copy into a piece"), (CustodyKind.Returned, "Return to the family"), (CustodyKind.Used, "Used in a test"), (CustodyKind.Lost, "It is lost"),
            (CustodyKind.Note, "Add a note"), (CustodyKind.Corrected, "Correct a detail"),
        ];
        return [.. acts.Select(a => new OfferedAct(a.Act, a.Label, CustodyRules.Refusal(a.Act, k.Subject, now)?.Message))];
    }
}
