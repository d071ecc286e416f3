using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Accounts;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Quotes;

namespace Studio.Story;

/// <summary>One commission's whole story.</summary>
public sealed partial class StoryBook
{
    private static readonly string[] Quiet = ["moved", "photographed"];

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
            .Select(p => new StoryPiece(p.Id, p.Name, p.Stage, p.Layers.Count, db.Set<Pour>().Where(x => x.PieceId == p.Id && !x.Withdrawn).Select(x => x.LayerId).Distinct().Count()))
            .ToListAsync();
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
            await MoneyAsync(db, id, quotes),
            await DaysAsync(db, id, zone),
            await TodayAsync(),
            zone);
    }

    private async Task<StoryMoney> MoneyAsync(StudioDb db, int id, List<Quote> quotes)
    {
        var payments = await db.Set<Payment>().AsNoTracking().Where(p => p.CommissionId == id).OrderBy(p => p.PaidAt)
            .Select(p => new StoryPayment(p.PaidAt, p.Kind, p.Amount, p.Currency, p.How, p.By, p.Withdrawn))
            .ToListAsync();
        var accepted = quotes.Where(q => q is { State: "accepted", Result: not null }).ToList();
        var currency = accepted.FirstOrDefault()?.Currency ?? payments.FirstOrDefault()?.Currency ?? (await settings.ReadAsync()).Currency;
        var paid = payments.Where(p => !p.Withdrawn && p.Currency == currency).Sum(p => p.Amount);
        var agreed = accepted.Where(q => q.Currency == currency).Sum(q => q.Result!.Total);
        return accepted.Count == 0
            ? new StoryMoney(currency, null, 0, paid, 0, 0, payments)
            : new StoryMoney(currency, agreed, accepted.Where(q => q.Currency == currency).Sum(q => q.Result!.Deposit), paid, Math.Max(0, agreed - paid), Math.Max(0, paid - agreed), payments);
    }

    // a keepsake's or a pour's own record is told only where the commission's story does not tell of it already; drawers and photographs have their own page
    private static async Task<IReadOnlyList<StoryDay>> DaysAsync(StudioDb db, int id, TimeZoneInfo zone)
    {
        var told = await db.Set<CommissionEvent>().AsNoTracking().Where(e => e.CommissionId == id).ToListAsync();
        var keepsakes = await db.Set<KeepsakeEvent>().AsNoTracking()
            .Where(e => !Quiet.Contains(e.Kind)).Join(db.Set<Keepsake>().Where(k => k.CommissionId == id), e => e.KeepsakeId, k => k.Id, (e, k) => new { e.Id, e.At, e.By, e.Kind, e.Words, k.EntryNumber, k.Description })
            .ToListAsync();
        var pours = await db.Set<Pour>().AsNoTracking()
            .Join(db.Set<Piece>().Where(p => p.CommissionId == id), x => x.PieceId, p => p.Id, (x, p) => new { x.Id, At = x.StartedAt, x.By, x.LayerOrder, x.LayerName, x.ResinName, x.Withdrawn, Grams = x.ActualAG + x.ActualBG, Piece = p.Name })
            .ToListAsync();
        var lines = told.Select(e => new Told(e.At, e.Id, e.By, e.Kind, e.Words))
            .Concat(keepsakes.Where(k => !told.Exists(t => t.Kind == "keepsake" && t.At == k.At)).Select(k => new Told(k.At, k.Id, k.By, "keepsake", $"{k.EntryNumber}, {k.Description}: {Sentence(k.Words, k.Kind)}")))
            .Concat(pours.Where(p => !told.Exists(t => t.Kind == "piece" && t.Words.Contains(PouredInStory(p.LayerOrder, p.LayerName), StringComparison.Ordinal))).Select(p => new Told(p.At, p.Id, p.By, "pour", Poured(p.Piece, p.LayerName, p.ResinName, p.Grams, p.Withdrawn))));
        return
        [
            .. lines.OrderByDescending(l => l.At).ThenByDescending(l => l.Order)
                .Select(l => (Local: TimeZoneInfo.ConvertTimeFromUtc(DateTime.SpecifyKind(l.At, DateTimeKind.Utc), zone), Line: l))
                .GroupBy(l => DateOnly.FromDateTime(l.Local))
                .Select(day => new StoryDay(day.Key, [.. day.Select(l => new StoryLine(l.Line.At, TimeOnly.FromDateTime(l.Local), l.Line.By, l.Line.Kind, l.Line.Words))])),
        ];
    }

    private static string PouredInStory(int order, string layer) => string.Create(CultureInfo.InvariantCulture, $"layer {order + 1}, {layer}, poured");

    private static string Sentence(string words, string kind) => words.Length > 0 ? words : kind + ".";

    private static string Poured(string piece, string layer, string resin, double grams, bool withdrawn) =>
        $"Poured the layer “{layer}” of {piece}: {Shell.Say.Grams(grams)} of {resin}." + (withdrawn ? " Taken back later." : "");

    private sealed record Told(DateTime At, int Order, string By, string Kind, string Words);
}
