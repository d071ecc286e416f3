using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Steps;

/// <summary>Reads what is written down of one commission, in the caller's context, so that an act and what it rests on are of one moment.</summary>
internal static class StepReader
{
    /// <summary>The facts; null when there is no such commission. What the caller has not saved yet is not among them.</summary>
    internal static async Task<StepFacts?> ReadAsync(StudioDb db, int commissionId, DateTime now)
    {
        if (await db.Set<Commission>().AsNoTracking().Where(c => c.Id == commissionId).Select(c => new { c.Stands, c.EndedWhy }).SingleOrDefaultAsync() is not { } commission)
        {
            return null;
        }

        var settings = await db.Set<StudioSettings>().AsNoTracking().Select(s => new { s.TimeZone, s.Currency }).SingleOrDefaultAsync();
        var zone = TimeZoneInfo.TryFindSystemTimeZoneById(settings?.TimeZone ?? "UTC", out var found) ? found : TimeZoneInfo.Utc;
        var keepsakes = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == commissionId && k.Custody != CustodyWhereabouts.Withdrawn).OrderBy(k => k.Id).ToListAsync();
        return new StepFacts
        {
            CommissionId = commissionId,
            Stands = commission.Stands,
            EndedWhy = commission.EndedWhy,
            Pieces = await PiecesAsync(db, commissionId, now, zone),
            CameIn = keepsakes.Count,
            Here = [.. keepsakes.Where(k => k.Custody == CustodyWhereabouts.Here).Select(k => new StepThing(k.Id, k.EntryNumber, k.Description, new CustodyAmount(k.HeldCount, k.HeldG), k.Place))],
            Staying = await KeepsakeBook.StayingAsync(db, (await PieceNames.Staying(db, commissionId).ToListAsync()).ToHashSet()),
            Owed = await db.Set<Piece>().Where(p => p.CommissionId == commissionId && p.Stage == Making.Failed && !db.Set<Piece>().Any(x => x.InPlaceOf == p.Id && x.Stage != Making.LetGo)).OrderBy(p => p.Id).Select(p => p.Name).ToListAsync(),
            Money = await MoneyBook.OfAsync(db, commissionId, settings?.Currency ?? new StudioSettings().Currency),
            Prices = await PricesAsync(db, commissionId, DateOnly.FromDateTime(Say.Local(now, zone))),
            Now = now,
            Zone = zone,
        };
    }

    private static async Task<IReadOnlyList<StepPiece>> PiecesAsync(StudioDb db, int commissionId, DateTime now, TimeZoneInfo zone)
    {
        var which = db.Set<Piece>().Where(p => p.CommissionId == commissionId && p.Stage != Making.LetGo && p.Stage != Making.Failed);
        var pieces = await which.AsNoTracking().Include(p => p.Layers.OrderBy(l => l.Order)).OrderBy(p => p.Id).ToListAsync();
        var poured = (await db.Set<Pour>().AsNoTracking().Where(p => !p.Withdrawn && which.Any(w => w.Id == p.PieceId)).Select(p => new { p.PieceId, p.LayerId }).ToListAsync())
            .Select(p => (p.PieceId, p.LayerId)).ToHashSet();
        var times = await ClockBook.TimesAsync(db, which, now, zone);
        return pieces.ConvertAll(p => new StepPiece(
            p.Id,
            p.Name,
            p.Stage,
            [.. p.Layers.Where(l => !poured.Contains((p.Id, l.Id))).Select(l => (l.Order + 1, l.Name))],
            p.Layers.Count(l => poured.Contains((p.Id, l.Id))),
            times[p.Id].Next,
            times[p.Id].FullCure,
            [.. p.Tasks.Select(t => t.Name)]));
    }

    private static async Task<StepPrices> PricesAsync(StudioDb db, int commissionId, DateOnly today)
    {
        var quotes = await db.Set<Quote>().AsNoTracking().Where(q => q.CommissionId == commissionId).OrderByDescending(q => q.Id).Select(q => new { q.Id, q.State, q.ValidUntil }).ToListAsync();
        var sent = quotes.Find(q => q.State == QuoteState.Sent);
        return new(
            quotes.Find(q => q.State == QuoteState.Draft)?.Id,
            sent?.Id,
            quotes.Find(q => q.State == QuoteState.Accepted)?.Id,
            sent is not null && sent.ValidUntil < today);
    }
}
