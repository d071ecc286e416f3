using Studio.Climate;
using Studio.Engine.Cure;

namespace Studio.Clock;

/// <summary>The room's readings made ready once for every piece that stands in it. Safe to share.</summary>
public sealed class ClockRoom
{
    private readonly PlaceReading[] readings;
    private RoomLog? whole;

    /// <summary>Takes what was read for a place.</summary>
    internal ClockRoom(PlaceReadings found, string place)
        : this(found.Readings)
    {
        var asked = place.Length == 0 ? RoomBook.CastingRoom : place;
        StandsInFor = found.Readings.Count > 0 && found.Place != asked ? $"{asked} was never read, so the times go by {(found.Place.Length > 0 ? found.Place : "every reading there is")}. Log the temperature where the piece stands." : "";
    }

    /// <summary>Takes readings in any order.</summary>
    public ClockRoom(IEnumerable<PlaceReading> readings)
    {
        this.readings = [.. readings.OrderBy(r => r.At)];
        Scale = new(this.readings.Length > 0 ? this.readings[0].At : DateTime.UnixEpoch);
    }

    /// <summary>A whole sentence where another place's readings stand in; empty otherwise.</summary>
    public string StandsInFor { get; } = "";

    public bool IsEmpty => readings.Length == 0;

    internal HourScale Scale { get; }

    /// <summary>The newest reading at a moment; null before the first.</summary>
    public PlaceReading? LastAt(DateTime now) => Array.FindLast(readings, r => r.At <= now);

    /// <summary>What was known of the room at a moment: a reading ahead of it does not count yet.</summary>
    internal RoomLog Log(DateTime now) => readings.Length == 0 || readings[^1].At <= now
        ? whole ??= Make(readings)
        : Make(readings.Where(r => r.At <= now));

    private RoomLog Make(IEnumerable<PlaceReading> known) => new([.. known.Select(r => new RoomReading(Scale.Hours(r.At), r.Celsius))]);
}

/// <summary>Instants as hours from a start, and back; back rounds a fraction of a tick towards later.</summary>
internal sealed class HourScale(DateTime start)
{
    // a room near absolute cold may need longer than a calendar holds; ten thousand days is as good as never
    private const double FarTicks = 10_000.0 * TimeSpan.TicksPerDay;

    internal double Hours(DateTime at) => (at - start).Ticks / (double)TimeSpan.TicksPerHour;

    internal DateTime At(double hours) => start.AddTicks((long)Math.Ceiling(Math.Min(hours * TimeSpan.TicksPerHour, FarTicks)));
}
