using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Shell;

namespace Studio.Clock;

/// <summary>A place's room for the reckoning: as it was read since the first pour, and as it usually is from now on.</summary>
/// <param name="Readings">Hours from the start; empty where nobody knows how warm it usually is.</param>
/// <param name="RestsOn">A whole sentence.</param>
internal sealed record UsualRoom(IReadOnlyList<RoomReading> Readings, string RestsOn);

/// <summary>How warm each place usually is. What is neither typed nor read is not known; no temperature is guessed.</summary>
internal sealed class UsualRooms
{
    private const int Days = 14;

    private readonly Dictionary<string, UsualRoom> rooms = new(StringComparer.Ordinal);

    /// <summary>Of a place; an empty name is the casting room.</summary>
    internal UsualRoom Of(string place) => rooms[Named(place)];

    /// <summary>Reads the rooms that these pieces stand in.</summary>
    internal static async Task<UsualRooms> OfAsync(StudioDb db, IReadOnlyCollection<TimePiece> pieces, TimeNow now)
    {
        var found = new UsualRooms();
        var first = pieces.SelectMany(p => p.Pours).Min(p => (DateTime?)p.StartedAt);
        var places = pieces.Select(p => Named(p.StandsIn)).Distinct(StringComparer.Ordinal).ToList();
        var means = now.Settings.UsualRoomC is null ? await MeansAsync(db, places, now.Utc) : [];
        foreach (var place in places)
        {
            var (usual, words) = Usual(place, now.Settings.UsualRoomC, means);
            var past = usual is not null && first is not null ? (await RoomReadings.OfAsync(db, place, first)).Readings : [];
            found.rooms[place] = new(usual is { } celsius ? [.. past.Where(r => r.At < now.Utc).Select(r => new RoomReading(Hours(r.At, now), r.Celsius)), new(0, celsius)] : [], words);
        }

        return found;
    }

    private static string Named(string place) => place.Length == 0 ? RoomBook.CastingRoom : place;

    // a reading of this very minute counts as just before it: from the start on the room is as usual
    private static double Hours(DateTime at, TimeNow now) => Math.Min((Say.Local(at, now.Zone) - now.Start).TotalHours, -1.0 / 60);

    private static (double? Celsius, string Words) Usual(string place, double? typed, IReadOnlyDictionary<string, double> means) =>
        typed is { } own ? (own, $"Reckoned with {Say.Celsius(own)}, the room's usual temperature by the settings.")
        : means.TryGetValue(place, out var mean) ? (mean, $"Reckoned with {Say.Celsius(mean)}, the mean of the last {Days} days of readings of {place}.")
        : (null, $"How warm {place} usually is, is not known: it was not read in the last {Days} days. Log its temperature, or type what is usual in the settings.");

    private static async Task<Dictionary<string, double>> MeansAsync(StudioDb db, List<string> places, DateTime now)
    {
        var from = now.AddDays(-Days);
        return await RoomReadings.Counted(db).Where(r => places.Contains(r.Place) && r.At >= from && r.At <= now)
            .GroupBy(r => r.Place).Select(g => new { g.Key, Mean = g.Average(r => r.Celsius) }).ToDictionaryAsync(g => g.Key, g => g.Mean, StringComparer.Ordinal);
    }
}
