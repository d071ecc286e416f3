using Studio.Engine.Cure;

namespace Studio.Bench;

/// <summary>A room temperature [°C] and when it was read [UTC].</summary>
public sealed record ClockReading(DateTime At, double Celsius);

/// <summary>The room's readings made ready once for every piece that stands in it. Safe to share.</summary>
public sealed class ClockRoom
{
    private readonly ClockReading[] readings;
    private RoomLog? whole;

    /// <summary>Takes readings in any order.</summary>
    public ClockRoom(IEnumerable<ClockReading> readings)
    {
        this.readings = [.. readings.OrderBy(r => r.At)];
        Scale = new(this.readings.Length > 0 ? this.readings[0].At : DateTime.UnixEpoch);
    }

    public bool IsEmpty => readings.Length == 0;

    internal HourScale Scale { get; }

    /// <summary>The newest reading at a moment; null before the first.</summary>
    public ClockReading? LastAt(DateTime now) => Array.FindLast(readings, r => r.At <= now);

    /// <summary>What was known of the room at a moment: a reading ahead of it does not count yet.</summary>
    internal RoomLog Log(DateTime now) => readings.Length == 0 || readings[^1].At <= now
        ? whole ??= Make(readings)
        : Make(readings.Where(r => r.At <= now));

    private RoomLog Make(IEnumerable<ClockReading> known) => new([.. known.Select(r => new RoomReading(Scale.Hours(r.At), r.Celsius))]);
}

/// <summary>Instants as hours from a start, and back; back rounds a fraction of a tick towards later.</summary>
internal sealed class HourScale(DateTime start)
{
    // a room near absolute cold may need longer than a calendar holds; ten thousand days is as good as never
    private const double FarTicks = 10_000.0 * TimeSpan.TicksPerDay;

    internal double Hours(DateTime at) => (at - start).Ticks / (double)TimeSpan.TicksPerHour;

    internal DateTime At(double hours) => start.AddTicks((long)Math.Ceiling(Math.Min(hours * TimeSpan.TicksPerHour, FarTicks)));
}
