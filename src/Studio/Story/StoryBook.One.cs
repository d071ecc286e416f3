using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Pieces;
using Studio.Quotes;

namespace Studio.Story;

/// <summary>One commission's whole story.</summary>
public sealed partial class StoryBook
{
    private static readonly string[] Quiet = [CustodyKind.Moved, CustodyKind.Photographed];

    /// <summary>Old lines about a keepsake's entry: the entry itself is told.</summary>
    private const string KeepsakeAbout = "keepsake/";

    /// <summary>The story; null when there is no such commission.</summary>
    public async Task<CommissionStory?> ReadAsync(int id)
    {
        var zone = await settings.ZoneAsync();
        await using var db = await factory.CreateDbContextAsync();
        var commission = await db.Set<Commission>().AsNoTracking().Include(c => c.Customer).SingleOrDefaultAsync(c => c.Id == id);
        if (commission is null)
        {
            return null;
        }

        var pieces = await db.Set<Piece>().AsNoTracking().Where(p => p.CommissionId == id).OrderBy(p => p.Id)
            .Select(p => new StoryPiece(p.Id, p.Name, p.Stage, p.Layers.Count, db.Set<Pour>().Where(x => x.PieceId == p.Id && !x.Withdrawn).Select(x => x.LayerId).Distinct().Count(), p.FailedAs, null))
            .ToListAsync();
        var reckoned = await times.OfPiecesAsync(Standing.Ends(commission.Stands) ? [] : pieces.ConvertAll(p => p.Id));
        pieces = pieces.ConvertAll(p => p with { Time = reckoned.GetValueOrDefault(p.Id) });
        var keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == id).OrderBy(k => k.Id)
            .Select(k => new StoryKeepsake(k.EntryNumber, k.Description, k.Count, k.Permits, k.Custody, k.Place, k.ReturnBy))
            .ToListAsync();
        var quotes = await db.Set<Quote>().AsNoTracking().Where(q => q.CommissionId == id).OrderByDescending(q => q.Id).ToListAsync();
        return new CommissionStory(
            commission,
            commission.Customer!,
            pieces,
            keepsakes,
            quotes.ConvertAll(q => new StoryQuote(q.Id, q.PieceId, pieces.Find(p => p.Id == q.PieceId)?.Name ?? "", q.VersionNo, q.State, q.Result?.Total, q.Currency, q.ValidUntil)),
            await MoneyBook.OfAsync(db, id, (await settings.ReadAsync()).Currency),
            await DaysAsync(db, id, zone),
            await TodayAsync(),
            zone);
    }

    // keepsakes and pours are told from their own records; what the commission's story says of the same record is found by its reference, and told once.
    // Drawers and photographs have their own page
    private async Task<IReadOnlyList<StoryDay>> DaysAsync(StudioDb db, int id, TimeZoneInfo zone)
    {
        var told = await db.Set<CommissionEvent>().AsNoTracking().Where(e => e.CommissionId == id && !e.About.StartsWith(KeepsakeAbout)).ToListAsync();
        var abouts = told.Select(e => e.About).ToHashSet(StringComparer.Ordinal);
        var held = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == id).ToDictionaryAsync(k => k.Id);
        var log = await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => held.Keys.Contains(e.KeepsakeId)).OrderBy(e => e.Id).ToListAsync();
        var names = await keepsakeBook.NamesAsync(db, log);
        var logs = log.ToLookup(e => e.KeepsakeId);
        var poured = await db.Set<Pour>().AsNoTracking()
            .Join(db.Set<Piece>().Where(p => p.CommissionId == id), x => x.PieceId, p => p.Id, (x, p) => new { Pour = x, Piece = p.Name })
            .ToListAsync();
        var lines = told.Select(e => new Told(e.At, e.Id, e.By, e.Kind, e.Words))
            .Concat(log.Where(e => !Quiet.Contains(e.Kind)).Select(e => new Told(e.At, e.Id, e.By, "keepsake", $"{held[e.KeepsakeId].EntryNumber}, {held[e.KeepsakeId].Description}: {CustodyWords.Of(e, [.. logs[e.KeepsakeId]], names)}")))
            .Concat(poured.Where(p => !abouts.Contains(p.Pour.About)).Select(p => new Told(p.Pour.StartedAt, p.Pour.Id, p.Pour.By, "pour", Poured(p.Piece, p.Pour.LayerName, p.Pour.ResinName, p.Pour.ActualAG + p.Pour.ActualBG, p.Pour.Withdrawn))));
        return
        [
            .. lines.OrderByDescending(l => l.At).ThenByDescending(l => l.Order)
                .Select(l => (Local: TimeZoneInfo.ConvertTimeFromUtc(DateTime.SpecifyKind(l.At, DateTimeKind.Utc), zone), Line: l))
                .GroupBy(l => DateOnly.FromDateTime(l.Local))
                .Select(day => new StoryDay(day.Key, [.. day.Select(l => new StoryLine(l.Line.At, TimeOnly.FromDateTime(l.Local), l.Line.By, l.Line.Kind, l.Line.Words))])),
        ];
    }

    private static string Poured(string piece, string layer, string resin, double grams, bool withdrawn) =>
        $"Poured the layer “{layer}” of {piece}: {Shell.Say.Grams(grams)} of {resin}." + (withdrawn ? " Taken back later." : "");

    private sealed record Told(DateTime At, int Order, string By, string Kind, string Words);
}
