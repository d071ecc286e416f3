using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Shell;

namespace Studio.Climate;

/// <summary>A reading for the ledger and the curve.</summary>
public sealed record RoomPoint(int Id, DateTime At, double Celsius, double? HumidityPercent, string Place, string By, string Doubt, bool Withdrawn)
{
    public bool Counts => !Withdrawn && Doubt.Length == 0;
}

/// <summary>One place of the studio.</summary>
/// <param name="Points">Of the days asked for, oldest first, doubted ones too.</param>
/// <param name="Now">The newest that counts.</param>
/// <param name="DewC">Dew point of the newest with humidity [°C].</param>
public sealed record RoomPlace(string Place, IReadOnlyList<RoomPoint> Points, RoomPoint? Now, double? DewC)
{
    /// <summary>Between two readings further apart than this the curve is broken [h].</summary>
    public const double GapHours = 3;
}

/// <summary>The page of the room.</summary>
public sealed record RoomView(IReadOnlyList<RoomPlace> Places, IReadOnlyList<Finding> Findings, DateTime From, DateTime To);

/// <summary>Reads the room for its page, and lets a person overrule a doubt.</summary>
public sealed class RoomViewBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news)
{
    private const double StuckHours = 6;
    private const int StuckReadings = 20;

    /// <summary>The last days of every place.</summary>
    public async Task<RoomView> ReadAsync(int days)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        var from = now.AddDays(-days);
        await using var db = await factory.CreateDbContextAsync();
        var points = await db.Set<Reading>().AsNoTracking().Where(r => r.At >= from && r.Place != "").OrderBy(r => r.At).ThenBy(r => r.Id)
            .Select(r => new RoomPoint(r.Id, r.At, r.Celsius, r.HumidityPercent, r.Place, r.By, r.Doubt, r.Withdrawn)).ToListAsync();
        var places = points.GroupBy(p => p.Place, StringComparer.Ordinal).Select(g => Of(g.Key, [.. g])).OrderByDescending(p => p.Place == RoomBook.CastingRoom).ThenBy(p => p.Place, StringComparer.Ordinal).ToList();
        return new(places, [.. await SensorsAsync(db, now), .. places.SelectMany(p => Doubts(p, now))], from, now);
    }

    /// <summary>A finding for each sensor that is not heard any more; none where all are well.</summary>
    public async Task<IReadOnlyList<Finding>> SensorsAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        return await SensorsAsync(db, clock.GetUtcNow().UtcDateTime);
    }

    /// <summary>Counts a doubted reading after all, or stops counting one; nothing is deleted.</summary>
    public Task<Saved> CountAsync(int id, bool counts) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<Reading>().SingleOrDefaultAsync(r => r.Id == id) is not { } reading)
        {
            return Saved.Refused("That reading is not here any more. Load the page again.");
        }

        if (counts && (RoomBook.Wrong(reading.Celsius) ?? (reading.At > clock.GetUtcNow().UtcDateTime ? "It lies in the future." : null)) is { } wrong)
        {
            return Saved.Refused(wrong + " It cannot be counted.");
        }

        (reading.Withdrawn, reading.Doubt) = (!counts, counts ? "" : reading.Doubt);
        await db.SaveChangesAsync();
        news.Tell(News.Room, id);
        return Saved.Done(id);
    });

    private static RoomPlace Of(string place, List<RoomPoint> points)
    {
        var humid = points.FindLast(p => p is { Counts: true, HumidityPercent: >= 1 and <= 100 });
        return new(place, points, points.FindLast(p => p.Counts), humid is null ? null : DewPoint.Celsius(humid.Celsius, humid.HumidityPercent!.Value));
    }

    private static async Task<List<Finding>> SensorsAsync(StudioDb db, DateTime now) =>
        [.. (await db.Set<Sensor>().AsNoTracking().Where(s => s.RemovedAt == null).ToListAsync()).Where(s => SensorBook.IsDead(s, now)).Select(s => new Finding(
            "sensor-silent", Severity.Warn, "sensors",
            $"{s.Name} {(s.HeardAt is { } heard ? $"was last heard {Say.Duration(now - heard)} ago" : "has never been heard")}. Look at its battery and its network; until then the times hold only if the room stayed as it was.",
            "our rule: three times as long as it should take"))];

    private static IEnumerable<Finding> Doubts(RoomPlace place, DateTime now)
    {
        var doubted = place.Points.Count(p => p is { Withdrawn: false, Doubt.Length: > 0 });
        if (doubted > 0)
        {
            yield return new("readings-in-doubt", Severity.Note, place.Place, $"{place.Place}: {doubted} {(doubted == 1 ? "reading is" : "readings are")} in doubt and not counted. They are marked below.", "our rules");
        }

        var counted = place.Points.Where(p => p.Counts).ToList();
        var gap = counted.Zip(counted.Skip(1)).Where(p => (p.Second.At - p.First.At).TotalHours > RoomBook.StaleHours).Select(p => p.Second.At - p.First.At).DefaultIfEmpty().Max();
        if (gap > TimeSpan.Zero)
        {
            yield return new("readings-gap", Severity.Note, place.Place, $"{place.Place} was once not read for {Say.Duration(gap)}. In between the clock takes the straight line from one reading to the next.", "our rule");
        }

        var same = counted.AsEnumerable().Reverse().TakeWhile(p => p.Celsius.Equals(counted[^1].Celsius)).ToList();
        if (same.Count >= StuckReadings && (now - same[^1].At).TotalHours > StuckHours)
        {
            yield return new("sensor-stuck", Severity.Note, place.Place, $"{place.Place} has read {Say.Celsius(same[0].Celsius)} for {Say.Duration(now - same[^1].At)} without a tenth more or less. Breathe on the sensor and see whether it moves.", "our rule");
        }
    }
}
