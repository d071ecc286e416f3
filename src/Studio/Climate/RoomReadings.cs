using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Climate;

/// <summary>A temperature of a place [°C] and when it was measured [UTC].</summary>
public sealed record PlaceReading(DateTime At, double Celsius);

/// <summary>The readings that count for a place, oldest first.</summary>
/// <param name="Place">Where they were taken: the place asked for, or the one that stands in for it.</param>
/// <param name="Readings">Neither withdrawn nor doubted.</param>
public sealed record PlaceReadings(string Place, IReadOnlyList<PlaceReading> Readings);

/// <summary>Which readings a clock may rest on.</summary>
public static class RoomReadings
{
    /// <summary>Readings that count: not taken back as a slip, and not in doubt.</summary>
    public static IQueryable<Reading> Counted(StudioDb db) => db.Set<Reading>().AsNoTracking().Where(r => !r.Withdrawn && r.Doubt == "");

    /// <summary>
    /// Those of a place since a moment and the last one before it; without a moment the newest. Where the place was never read, the casting room
    /// stands in for it, and where that was not either, all that was ever read.
    /// </summary>
    /// <param name="place">Empty for the casting room.</param>
    /// <param name="from">The earliest pour [UTC].</param>
    public static async Task<PlaceReadings> OfAsync(StudioDb db, string place, DateTime? from)
    {
        string[] places = place.Length == 0 || place == RoomBook.CastingRoom ? [RoomBook.CastingRoom] : [place, RoomBook.CastingRoom];
        foreach (var name in places)
        {
            if (await SinceAsync(Counted(db).Where(r => r.Place == name), from) is { Count: > 0 } found)
            {
                return new(name, found);
            }
        }

        return new("", await SinceAsync(Counted(db).Where(r => r.Place != ""), from)); // a probe's readings are a layer's, not a room's
    }

    private static Task<List<PlaceReading>> SinceAsync(IQueryable<Reading> counted, DateTime? from) =>
        (from is { } start
            ? counted.Where(r => r.At >= (counted.Where(b => b.At <= start).Max(b => (DateTime?)b.At) ?? start))
            : counted.OrderByDescending(r => r.At).Take(1))
        .OrderBy(r => r.At).ThenBy(r => r.Id).Select(r => new PlaceReading(r.At, r.Celsius)).ToListAsync();
}
