using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Settings;

namespace Studio.Climate;

/// <summary>What became of a sensor's readings.</summary>
/// <param name="Kept">Stored, doubted ones too.</param>
/// <param name="Folded">Told nothing new within a minute of one that is stored, and were not stored again.</param>
/// <param name="Doubts">Stored and not counted, by their place in what was sent.</param>
public sealed record IntakeAnswer(int Kept, int Folded, IReadOnlyList<IntakeDoubt> Doubts);

/// <summary>A doubted reading of what was sent.</summary>
public sealed record IntakeDoubt(int Index, string Code, string Message);

/// <summary>Takes what sensors send, whichever way it comes: checks it, keeps it, tells the shelf.</summary>
public sealed class IntakeBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, SettingsBook settings)
{
    /// <summary>A reading that differs by less from one stored within a minute tells nothing new [K]; our rule.</summary>
    public const double NewsK = 0.3;

    private const double NewsHumidity = 3;
    private static readonly TimeSpan Fold = TimeSpan.FromMinutes(1);

    // two messages of one sensor at once would each miss what the other stores
    private static readonly ConcurrentDictionary<int, SemaphoreSlim> Turns = new();

    /// <summary>The sensor that a token belongs to, removed ones too; null where there is none.</summary>
    public async Task<Sensor?> SensorAsync(string token)
    {
        await using var db = await factory.CreateDbContextAsync();
        var hash = SensorToken.Hash(token);
        return await db.Set<Sensor>().AsNoTracking().SingleOrDefaultAsync(s => s.TokenHash == hash);
    }

    /// <summary>Keeps a sensor's readings.</summary>
    public async Task<IntakeAnswer> TakeAsync(Sensor sensor, IReadOnlyList<SensorMessage> messages)
    {
        var turn = Turns.GetOrAdd(sensor.Id, _ => new(1));
        await turn.WaitAsync();
        try
        {
            return await KeepAsync(sensor, messages);
        }
        finally
        {
            turn.Release();
        }
    }

    /// <summary>Notes that a sensor was heard and could not be understood.</summary>
    public async Task RefuseAsync(Sensor sensor, string words)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.WriteAs(sensor.Name);
        await HeardAsync(db, sensor.Id, clock.GetUtcNow().UtcDateTime, words);
        news.Tell(News.Room);
    }

    private async Task<IntakeAnswer> KeepAsync(Sensor sensor, IReadOnlyList<SensorMessage> messages)
    {
        var received = clock.GetUtcNow().UtcDateTime;
        var zone = await settings.ZoneAsync();
        var told = messages.Select(m => (Message: m, At: LocalClock.Measured(m, received, zone))).OrderBy(m => m.At).ToList();
        await using var db = await factory.CreateDbContextAsync();
        // known by its token or by the broker, not by a sign-in
        db.WriteAs(sensor.Name);
        var heard = await db.Set<Sensor>().Where(s => s.Id == sensor.Id).Select(s => s.HeardAt).SingleAsync();
        var day = new SensorDay(sensor, await NearAsync(db, sensor.Id, [.. told.Select(t => t.At)], received));
        List<IntakeDoubt> doubts = [];
        int kept = 0, folded = 0;
        foreach (var (message, at) in told)
        {
            var celsius = message.Celsius + sensor.CorrectionK;
            var off = ReadingDoubts.OfClock(at, received, messages.Count == 1, heard, sensor.EveryMinutes);
            if (day.Has(at) || (off is null && day.TellsNothingNew(celsius, message.HumidityPercent, at, Fold, NewsK, NewsHumidity)))
            {
                folded++;
                continue;
            }

            // error values are the sensor's own words, before any correction
            var doubt = off ?? ReadingDoubts.OfFigure(message.Celsius, day.Probe, day.Before(at)?.Celsius) ?? day.Jump(celsius, at);
            db.Add(day.Add(celsius, message.HumidityPercent, at, received, doubt?.Code ?? ""));
            kept++;
            if (doubt is not null)
            {
                doubts.Add(new(message.Index, doubt.Code, doubt.Words));
            }
        }

        await db.SaveChangesAsync();
        await HeardAsync(db, sensor.Id, received, doubts.Count > 0 ? doubts[^1].Message : "");
        if (kept > 0 || sensor.LastRefusal.Length > 0)
        {
            news.Tell(News.Room);
        }

        return new(kept, folded, doubts);
    }

    // one message from a clock that stands in another year must not fetch all the years between
    private static async Task<List<Reading>> NearAsync(StudioDb db, int sensorId, List<DateTime> at, DateTime received)
    {
        var all = db.Set<Reading>().Where(r => r.SensorId == sensorId);
        var (oldest, newest) = (received.AddDays(-ReadingDoubts.OldestDays), received.AddMinutes(ReadingDoubts.AheadMinutes));
        var far = at.Where(t => t < oldest || t > newest).ToList();
        var found = far.Count == 0 ? [] : await all.Where(r => far.Contains(r.At)).ToListAsync();
        var close = at.Where(t => t >= oldest && t <= newest).ToList();
        if (close.Count > 0)
        {
            var (from, to) = (close[0].AddMinutes(-ReadingDoubts.SpikeMinutes * 2), close[^1].AddMinutes(1));
            found.AddRange(await all.Where(r => r.At >= from && r.At <= to).ToListAsync());
        }

        return [.. found.DistinctBy(r => r.Id).OrderBy(r => r.At)];
    }

    // past the audit on purpose: a sensor is heard every minute and nobody edited it
    private static Task HeardAsync(StudioDb db, int sensorId, DateTime at, string refusal) => db.Set<Sensor>().Where(s => s.Id == sensorId)
        .ExecuteUpdateAsync(s => s.SetProperty(x => x.HeardAt, at).SetProperty(x => x.LastRefusal, refusal));
}
