using System.Diagnostics;
using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Fit;
using Studio.Resins;

namespace Studio.Calibration;

/// <summary>Refits a lot to its log, and writes a maker's word on it.</summary>
public sealed partial class CuringBook
{
    private static readonly SemaphoreSlim Gate = new(1);

    /// <summary>Refits the lot of a pour to the log that is kept of it. Changes nothing; one at a time.</summary>
    /// <exception cref="OperationCanceledException">It was given up before it began, or nobody wants it any more.</exception>
    public async Task<LogRefitted> RefitAsync(int pourId, CancellationToken stop)
    {
        await using var db = await factory.CreateDbContextAsync(stop);
        var pour = await db.Set<Pour>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == pourId, stop);
        var log = await LogAsync(db, pourId);
        if (pour is null || log is null)
        {
            return Refused("There is no log of this pour yet. Keep its readings first.");
        }

        var (before, from) = await BeforeAsync(db, pour, log.Id);
        if (before is null)
        {
            return Refused(from, "A refit starts from the data sheet: enter what is missing with the resin, then come back.");
        }

        var piece = await PouredPiece.OfAsync(db, pour, before);
        if (piece.Input is null)
        {
            return Refused(piece.Why);
        }

        await Gate.WaitAsync(stop);
        try
        {
            return await Task.Run(() => Run(before, pour, log, piece), stop) with { StartedFrom = from };
        }
        finally
        {
            Gate.Release();
        }
    }

    /// <summary>Takes a refit over for its lot, or writes down that it was declined; refused where the log was changed since.</summary>
    public Task<Saved> DecideAsync(LogRefitted refitted, bool accept, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var log = await db.Set<CuringLog>().AsNoTracking().SingleOrDefaultAsync(l => l.Id == refitted.LogId);
        if (refitted.Refit is not { } refit || log is null || log.Version != refitted.LogVersion)
        {
            return Saved.Refused("The log was changed since this was worked out. Work it out again, then decide.");
        }

        var pour = await db.Set<Pour>().AsNoTracking().SingleAsync(p => p.Id == log.PourId);
        var resin = await db.Set<Resin>().AsNoTracking().SingleAsync(r => r.Id == pour.ResinId);
        var row = db.Add(new KnownCure
        {
            ResinId = pour.ResinId,
            Lot = pour.ResinLot.Trim(),
            At = Now,
            By = by,
            CuringLogId = log.Id,
            Sheet = resin.DataSheet,
            State = refit.Fit.State,
            Misfit = refit.Fit.Misfit,
            Data = [.. refit.Fit.Data],
            Findings = [.. refitted.Findings],
            Standing = accept ? KnownCure.Accepted : KnownCure.Declined,
            DecidedAt = Now,
            DecidedBy = by,
        }).Entity;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, pour.ResinId);
        return Saved.Done(row.Id);
    });

    private static LogRefitted Refused(params string[] why) => new() { Refused = why };

    // a log that was taken over already must not be counted twice: what it starts from is what was known before it
    private static async Task<(FitState? State, string From)> BeforeAsync(StudioDb db, Pour pour, int logId)
    {
        var lot = pour.ResinLot.Trim();
        var rows = await db.Set<KnownCure>().AsNoTracking().Where(k => k.ResinId == pour.ResinId && k.Standing == KnownCure.Accepted && (k.Lot == lot || k.Lot == ""))
            .OrderByDescending(k => k.DecidedAt).ThenByDescending(k => k.Id).ToListAsync();
        var own = await db.Set<KnownCure>().AsNoTracking().Where(k => k.CuringLogId == logId && k.Standing == KnownCure.Accepted).OrderBy(k => k.Id).FirstOrDefaultAsync();
        if (own is not null)
        {
            rows.RemoveAll(k => k.Id >= own.Id && k.CuringLogId is not null);
        }

        if ((rows.Find(k => k.Lot == lot && lot.Length > 0) ?? rows.Find(k => k.Lot.Length == 0)) is { } row)
        {
            return (row.State, $"Started from: {CureWords.Source(row).ToLowerInvariant()}, taken over by {row.DecidedBy}.{(own is null ? "" : " This log itself, and what was taken over after it, was left out, so that nothing counts twice.")}");
        }

        var known = await KnownCures.OfSheetAsync(await db.Set<Resin>().AsNoTracking().SingleAsync(r => r.Id == pour.ResinId));
        return (known.State, known.State is null ? known.RestsOn : "Started from: " + known.RestsOn);
    }

    private static LogRefitted Run(FitState before, Pour pour, CuringLog log, PouredPiece piece)
    {
        var started = Stopwatch.GetTimestamp();
        var outcome = LogFit.Run(before, new LayerLog
        {
            Piece = piece.Input!,
            Layer = piece.Layer,
            SameLot = piece.SameLot,
            Readings = log.Readings,
            Place = log.Place,
            HeightMm = log.HeightMm,
            GelAfterHours = log.GelAt is { } gel ? (gel - pour.StartedAt).TotalHours : null,
            DemouldAfterHours = log.FirmAt is { } firm ? (firm - pour.StartedAt).TotalHours : null,
        });
        return outcome.Ok
            ? new LogRefitted
            {
                LogId = log.Id,
                LogVersion = log.Version,
                Refit = outcome.Value,
                RestsOn = piece.RestsOn,
                Lines = [.. outcome.Value.Fit.Data.Select(CureWords.Line)],
                Narrowed = LogWords.Narrowed(outcome.Value),
                Findings = outcome.Value.Fit.Findings,
                Took = Stopwatch.GetElapsedTime(started),
            }
            : new LogRefitted { Refused = [.. outcome.Errors.Select(LogWords.Said)] };
    }
}
