using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Shell;

namespace Studio.Climate;

/// <summary>The room's temperature as it is to be logged.</summary>
/// <param name="Celsius">What the thermometer says [°C].</param>
/// <param name="HumidityPercent">Relative humidity [%], where somebody read it.</param>
/// <param name="Place">Where in the studio; empty for the casting room.</param>
/// <param name="Sure">True when the person was asked about an unusual figure and stood by it.</param>
public sealed record RoomEntry(double? Celsius, double? HumidityPercent = null, string Place = "", bool Sure = false);

/// <summary>How logging ended; <see cref="Ask"/> is true when the figure can be right and only wants a second look.</summary>
public sealed record RoomSaved(bool Ok, string Words, bool Ask = false, int Id = 0);

/// <summary>A reading as a page shows it.</summary>
public sealed record RoomNow(int Id, DateTime At, double Celsius, double? HumidityPercent, string Place, string By);

/// <summary>Reads and writes the room's temperature.</summary>
public sealed class RoomBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news)
{
    /// <summary>Where pieces stand when nobody says otherwise.</summary>
    public const string CastingRoom = "Casting room";

    /// <summary>After this long a reading no longer says how warm the room is [h]; our rule.</summary>
    public const double StaleHours = 12;

    private const double LowestC = -30;
    private const double HighestC = 60;
    private const double ColdC = 5;
    private const double HotC = 40;

    /// <summary>The newest reading of the casting room that counts, or where it was never read of any place; null before the first.</summary>
    public async Task<RoomNow?> NowAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        return await NowAsync(db, "");
    }

    /// <summary>The newest reading that counts for what stands in a place; chosen as <see cref="RoomReadings"/> does.</summary>
    /// <param name="place">Empty for the casting room.</param>
    public static async Task<RoomNow?> NowAsync(StudioDb db, string place)
    {
        var counted = RoomReadings.Counted(db);
        return await NewestAsync(counted.Where(r => r.Place == (place.Length == 0 ? CastingRoom : place)))
            ?? (place.Length > 0 ? await NewestAsync(counted.Where(r => r.Place == CastingRoom)) : null)
            ?? await NewestAsync(counted.Where(r => r.Place != ""));
    }

    /// <summary>The newest reading that counts and says how damp the air is, not older than <see cref="StaleHours"/>; of the place, else of the casting room.</summary>
    /// <param name="place">Empty for the casting room.</param>
    /// <param name="now">[UTC].</param>
    public static async Task<RoomNow?> DampAsync(StudioDb db, string place, DateTime now)
    {
        var since = now.AddHours(-StaleHours);
        var damp = RoomReadings.Counted(db).Where(r => r.HumidityPercent != null && r.At >= since && r.At <= now);
        return (place.Length > 0 ? await NewestAsync(damp.Where(r => r.Place == place)) : null) ?? await NewestAsync(damp.Where(r => r.Place == CastingRoom));
    }

    /// <summary>Names of the sensors that have fallen silent.</summary>
    public async Task<IReadOnlyList<string>> SilentAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        var now = clock.GetUtcNow().UtcDateTime;
        return [.. (await db.Set<Sensor>().AsNoTracking().Where(s => s.RemovedAt == null).OrderBy(s => s.Name).ToListAsync()).Where(s => SensorBook.IsDead(s, now)).Select(s => s.Name)];
    }

    /// <summary>The newest readings that count, newest first.</summary>
    public async Task<IReadOnlyList<RoomNow>> RecentAsync(int count)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await RoomReadings.Counted(db).OrderByDescending(r => r.At).ThenByDescending(r => r.Id).Take(count)
            .Select(r => new RoomNow(r.Id, r.At, r.Celsius, r.HumidityPercent, r.Place, r.By)).ToListAsync();
    }

    /// <summary>Logs a reading taken now.</summary>
    public async Task<RoomSaved> LogAsync(RoomEntry entry, string by)
    {
        if (Wrong(entry.Celsius, entry.HumidityPercent) is { } wrong)
        {
            return new(false, wrong);
        }

        if (!entry.Sure && Unusual(entry.Celsius!.Value) is { } ask)
        {
            return new(false, ask, Ask: true);
        }

        var saved = await Saved.TryAsync(async () =>
        {
            await using var db = await factory.CreateDbContextAsync();
            db.By = by;
            var reading = new Reading
            {
                At = clock.GetUtcNow().UtcDateTime,
                Celsius = entry.Celsius!.Value,
                HumidityPercent = entry.HumidityPercent,
                Place = string.IsNullOrWhiteSpace(entry.Place) ? CastingRoom : entry.Place.Trim(),
                By = by,
            };
            db.Add(reading);
            await db.SaveChangesAsync();
            news.Tell(News.Room, reading.Id);
            return Saved.Done(reading.Id);
        });
        return new(saved.Ok, saved.Words, false, saved.Id);
    }

    /// <summary>Takes a reading back as a slip, or puts it back; it is kept either way.</summary>
    public Task<Saved> WithdrawAsync(int id, bool withdrawn = true) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<Reading>().SingleOrDefaultAsync(r => r.Id == id) is not { } reading)
        {
            return Saved.Refused("That reading is not here any more. Load the page again.");
        }

        reading.Withdrawn = withdrawn;
        await db.SaveChangesAsync();
        news.Tell(News.Room, id);
        return Saved.Done(id);
    });

    /// <summary>The next half degree up or down from a figure; from 20 °C, a usual workroom, where there is none yet.</summary>
    public static double Step(double? celsius, double by) => Math.Round(((celsius ?? 20) + by) * 2, MidpointRounding.AwayFromZero) / 2;

    /// <summary>Why a figure cannot be a workroom's temperature; null when it can.</summary>
    public static string? Wrong(double? celsius, double? humidityPercent = null) => (celsius, humidityPercent) switch
    {
        (null, _) => "Type the room's temperature in °C, such as 19.5.",
        ({ } c, _) when !double.IsFinite(c) => "That is not a temperature. Type what the thermometer says, such as 19.5.",

        // both from memory: the power-on value of a common digital thermometer chip, and absolute zero from a sensor without its probe
        (85, _) => "85 °C is what some sensors say before their first measurement. Look at the thermometer again.",
        ( <= -127, _) => "That is what a sensor says when its probe is loose. Look at the thermometer again.",
        ({ } c, _) when c is < LowestC or > HighestC => $"{Say.Celsius(c)} cannot be a workroom: it must lie between −30 and 60 °C. If the thermometer shows Fahrenheit, type the figure with °F.",
        (_, { } h) when !(h is >= 0 and <= 100) => "Relative humidity lies between 0 and 100 %.",
        _ => null,
    };

    private static Task<RoomNow?> NewestAsync(IQueryable<Reading> readings) => readings.OrderByDescending(r => r.At).ThenByDescending(r => r.Id)
        .Select(r => new RoomNow(r.Id, r.At, r.Celsius, r.HumidityPercent, r.Place, r.By)).FirstOrDefaultAsync();

    private static string? Unusual(double celsius) => celsius is < ColdC or > HotC
        ? $"{Say.Celsius(celsius)} is unusual for a workroom. Log it if that is what the thermometer says; the clock will go by it."
        : null;
}
