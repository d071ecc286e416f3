using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Fit;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;

namespace Studio.Calibration;

/// <summary>Reads and writes what a thermometer in a layer showed.</summary>
public sealed partial class CuringBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, SettingsBook settings)
{
    /// <summary>Readings that a log keeps at most.</summary>
    public const int MostReadings = 20_000;

    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    /// <summary>A pour with its log, or an empty form for one; null when there is no such pour.</summary>
    public async Task<LogView?> ReadAsync(int pourId)
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<Pour>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == pourId) is not { } pour)
        {
            return null;
        }

        var log = await LogAsync(db, pourId);
        return new()
        {
            PourId = pour.Id,
            PieceId = pour.PieceId,
            PieceName = await db.Set<Piece>().Where(p => p.Id == pour.PieceId).Select(p => p.Name).SingleAsync(),
            LayerNumber = pour.LayerOrder + 1,
            LayerName = pour.LayerName,
            FromMm = pour.FromMm,
            ToMm = pour.ToMm,
            ResinId = pour.ResinId,
            ResinName = pour.ResinName,
            Lot = pour.ResinLot,
            PouredAt = pour.StartedAt,
            RoomC = pour.RoomC,
            Withdrawn = pour.Withdrawn,
            Foretold = pour.Foretold,
            Form = log is null ? new LogForm { PourId = pourId } : LogForm.Of(log),
            Sensors = await db.Set<Sensor>().AsNoTracking().OrderBy(s => s.Place != "").ThenBy(s => s.Name).Select(s => new LogSensor(s.Id, s.Name, s.Place == "")).ToListAsync(),
            Rows = log is null ? [] : [.. (await new CureBook(factory, clock, news, new LogPours()).HistoryAsync(pour.ResinId)).Where(r => r.PourId == pourId)],
            Zone = await settings.ZoneAsync(),
            Now = Now,
            Units = (await settings.ReadAsync()).Units,
        };
    }

    /// <summary>Keeps a log that the validator has passed; a pour has one.</summary>
    public Task<Saved> SaveAsync(LogForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (!await db.Set<Pour>().AnyAsync(p => p.Id == form.PourId))
        {
            return Saved.Refused("This pour is no longer there.");
        }

        if (form.Readings.Count > MostReadings)
        {
            return Saved.Refused($"A log keeps {MostReadings:0} readings at most. Paste the hours of the pour alone.");
        }

        if (form.Id == 0 && await LogAsync(db, form.PourId) is not null)
        {
            return Saved.Stale();
        }

        var log = form.Id == 0 ? db.Add(new CuringLog { PourId = form.PourId, At = Now, By = by }).Entity : await db.Set<CuringLog>().FindAsync(form.Id);
        if (log is null)
        {
            return Saved.Refused("This log is no longer there. Load the page again; copy first what you need.");
        }

        if (form.Id > 0)
        {
            db.Entry(log).Property(l => l.Version).OriginalValue = form.Version;
        }

        (log.Place, log.HeightMm) = (form.Place, form.Place is LogPlace.Height ? form.HeightMm : null);
        (log.Readings, log.SensorId, log.GelAt, log.FirmAt, log.Notes) = ([.. form.Readings], form.SensorId, form.GelAt, form.FirmAt, form.Notes.Trim());
        await db.SaveChangesAsync();
        news.Tell(News.Pour, form.PourId);
        return Saved.Done(log.Id);
    });

    /// <summary>What a sensor sent between two moments, as readings after the pour; doubted ones are left out and counted.</summary>
    public async Task<LogTaken> TakeAsync(int pourId, int sensorId, DateTime from, DateTime to)
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<Pour>().AsNoTracking().Where(p => p.Id == pourId).Select(p => (DateTime?)p.StartedAt).SingleOrDefaultAsync() is not { } poured)
        {
            return new([], "This pour is no longer there.");
        }

        if (to <= from)
        {
            return new([], "The end must come after the beginning.");
        }

        var all = await db.Set<Reading>().AsNoTracking().Where(r => r.SensorId == sensorId && r.At >= from && r.At <= to).OrderBy(r => r.At).Take(1_000_000)
            .Select(r => new { r.At, r.Celsius, Counts = !r.Withdrawn && r.Doubt == "" }).ToListAsync();
        var good = all.Where(r => r.Counts).ToList();
        var step = Math.Max(1, (int)Math.Ceiling(good.Count / 4000.0));
        List<LogReading> taken = [.. good.Chunk(step).Select(c => c.MaxBy(r => r.Celsius)!).Select(r => new LogReading(Math.Round((r.At - poured).TotalHours, 5), r.Celsius))];
        return new(taken, all.Count == 0 ? "The sensor sent nothing in that time. Look at its page under Room, and at the times."
            : $"{good.Count} readings taken{(all.Count > good.Count ? $"; {all.Count - good.Count} in doubt or taken back were left out" : "")}.");
    }

    /// <summary>Every pour of a resin, the newest first; null when there is no such resin.</summary>
    public async Task<LoggedPours?> OfResinAsync(int resinId)
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<Resin>().AsNoTracking().Where(r => r.Id == resinId).Select(r => r.Name).SingleOrDefaultAsync() is not { } name)
        {
            return null;
        }

        var pours = await db.Set<Pour>().AsNoTracking().Where(p => p.ResinId == resinId && !p.Withdrawn).OrderByDescending(p => p.StartedAt)
            .Join(db.Set<Piece>(), p => p.PieceId, p => p.Id, (p, piece) => new { Pour = p, piece.Name }).ToListAsync();
        var ids = pours.ConvertAll(p => p.Pour.Id);
        var logs = await db.Set<CuringLog>().AsNoTracking().Where(l => ids.Contains(l.PourId)).ToDictionaryAsync(l => l.PourId);
        var fits = (await db.Set<KnownCure>().AsNoTracking().Where(k => k.ResinId == resinId && k.CuringLogId != null).OrderBy(k => k.Id).Select(k => new { k.CuringLogId, k.Standing }).ToListAsync())
            .GroupBy(k => k.CuringLogId!.Value).ToDictionary(g => g.Key, g => g.Last().Standing);
        return new(resinId, name, [.. pours.Select(p => Logged(p.Pour, p.Name, logs.GetValueOrDefault(p.Pour.Id), fits))], await settings.ZoneAsync(), Now);
    }

    private static LoggedPour Logged(Pour p, string piece, CuringLog? log, Dictionary<int, string> fits)
    {
        var top = log?.Readings.MaxBy(r => r.Celsius);
        return new(
            p.Id, p.PieceId, piece, p.LayerOrder + 1, p.LayerName, p.ResinLot, p.StartedAt, p.ToMm - p.FromMm, p.RoomC, p.Foretold, top?.Celsius, top?.AfterHours,
            log?.GelAt is { } gel ? (gel - p.StartedAt).TotalHours : null,
            log is null ? "" : fits.TryGetValue(log.Id, out var standing) ? CureWords.Standing(standing) : "not refitted yet");
    }

    private static Task<CuringLog?> LogAsync(StudioDb db, int pourId) => db.Set<CuringLog>().AsNoTracking().OrderByDescending(l => l.Id).FirstOrDefaultAsync(l => l.PourId == pourId);
}
