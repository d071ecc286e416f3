using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Cure;

namespace Studio.Resins;

/// <summary>One fit of a resin as its history tells it.</summary>
/// <param name="Lot">Empty for the resin as its sheet describes it.</param>
/// <param name="PourId">The pour whose thermometer it came from; null for the sheet.</param>
/// <param name="EarlierSheet">True when the sheet was changed since.</param>
/// <param name="InUse">True for the one that the next pour of its lot goes by.</param>
public sealed record CureRow(
    int Id, string Lot, DateTime At, string By, string Source, int? PourId, string Standing, DateTime? DecidedAt, string DecidedBy,
    bool EarlierSheet, bool InUse, IReadOnlyList<CureLine> Lines);

/// <summary>Reads what is known of how a resin cures, and writes a maker's word on it.</summary>
public sealed class CureBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, ILogPours logs)
{
    /// <summary>Every fit of a resin that somebody decided on, the newest first.</summary>
    public async Task<IReadOnlyList<CureRow>> HistoryAsync(int resinId)
    {
        await using var db = await factory.CreateDbContextAsync();
        var sheet = (await db.Set<Resin>().AsNoTracking().SingleOrDefaultAsync(r => r.Id == resinId))?.DataSheet;
        var rows = await db.Set<KnownCure>().AsNoTracking().Where(k => k.ResinId == resinId).OrderByDescending(k => k.At).ThenByDescending(k => k.Id).ToListAsync();
        var used = rows.Where(r => r.Standing == KnownCure.Accepted).OrderByDescending(r => r.DecidedAt).ThenByDescending(r => r.Id)
            .GroupBy(r => r.Lot, StringComparer.Ordinal).Select(g => g.First().Id).ToHashSet();

        var pours = await logs.OfAsync(db, rows.ConvertAll(r => r.CuringLogId).OfType<int>().ToHashSet());
        return rows.ConvertAll(r => new CureRow(
            r.Id, r.Lot, r.At, r.By, CureWords.Source(r), r.CuringLogId is { } log && pours.TryGetValue(log, out var pour) ? pour : null, r.Standing, r.DecidedAt, r.DecidedBy,
            r.Sheet is not null && r.Sheet != sheet, used.Contains(r.Id), [.. r.Data.Select(CureWords.Line)]));
    }

    /// <summary>The sheet as it is kept now; null where it says nothing of how fast the resin is.</summary>
    public async Task<DataSheet?> KeptSheetAsync(int resinId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return (await db.Set<Resin>().AsNoTracking().SingleOrDefaultAsync(r => r.Id == resinId))?.DataSheet;
    }

    /// <summary>Takes the fit of a sheet over, or writes down that it was declined. Only of the sheet as it is kept.</summary>
    public Task<Saved> DecideSheetAsync(int resinId, DataSheet sheet, bool accept, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if ((await db.Set<Resin>().AsNoTracking().SingleOrDefaultAsync(r => r.Id == resinId))?.DataSheet != sheet)
        {
            return Saved.Refused("The sheet that is kept says something else than the one that was fitted. Keep this sheet first, then open it again and take the fit over.");
        }

        var fit = await KnownCures.FitAsync(sheet);
        if (!fit.Ok)
        {
            return Saved.Refused(string.Join(" ", fit.Errors.Select(e => e.Message)));
        }

        var now = clock.GetUtcNow().UtcDateTime;
        var row = db.Add(new KnownCure
        {
            ResinId = resinId,
            At = now,
            By = by,
            Sheet = sheet,
            State = fit.Value.State,
            Misfit = fit.Value.Misfit,
            Data = [.. fit.Value.Data],
            Findings = [.. fit.Value.Findings],
            Standing = accept ? KnownCure.Accepted : KnownCure.Declined,
            DecidedAt = now,
            DecidedBy = by,
        }).Entity;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, resinId);
        return Saved.Done(row.Id);
    });

    /// <summary>Takes a kept fit over, or lets go of it; its numbers stay as they were made.</summary>
    public Task<Saved> DecideAsync(int id, bool accept, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<KnownCure>().FindAsync(id) is not { } row)
        {
            return Saved.Refused("This fit is no longer there. Load the page again.");
        }

        (row.Standing, row.DecidedAt, row.DecidedBy) = (accept ? KnownCure.Accepted : KnownCure.Declined, clock.GetUtcNow().UtcDateTime, by);
        await db.SaveChangesAsync();
        news.Tell(News.Stores, row.ResinId);
        return Saved.Done(id);
    });

}
