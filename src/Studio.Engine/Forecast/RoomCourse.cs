using Studio.Engine.Cure;

namespace Studio.Engine.Forecast;

/// <summary>A room's readings made ready for the heat equation: faults left out, and no more of them than the equation can see.</summary>
internal sealed class RoomCourse
{
    private const int Most = 4000;

    private RoomCourse(IReadOnlyList<RoomReading> readings, IReadOnlyList<Finding> findings) => (Readings, Findings) = (readings, findings);

    /// <summary>At least one; sorted.</summary>
    public IReadOnlyList<RoomReading> Readings { get; }

    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Checks the readings; null where none can be used, with the error added.</summary>
    public static RoomCourse? Of(IReadOnlyList<RoomReading> room, double fromHours, double untilHours, InputErrors errors)
    {
        if (room.Count == 0)
        {
            errors.Add("room", "There is no reading of the room. Give at least one; nothing is guessed.");
        }

        if (room.Count == 0 || !errors.Clean("room"))
        {
            return null;
        }

        var log = new RoomLog(room);
        if (log.Curve is not { } curve)
        {
            var first = room[0].Celsius;
            errors.Add("room", FormattableString.Invariant($"No reading of the room can be believed; the first is {first:0.##} °C, and a workroom is between {RoomCurve.LowestC:0} and {RoomCurve.HighestC:0} °C. A temperature in °F must be turned into °C first."));
            return null;
        }

        return curve.Count <= Most ? new(curve.Readings, log.Findings) : Thinned(curve, fromHours, untilHours, log.Findings);
    }

    // the mean of each stretch keeps the heat; a cup of resin does not feel a shorter one
    private static RoomCourse Thinned(RoomCurve curve, double from, double until, IReadOnlyList<Finding> findings)
    {
        var width = Math.Max(1e-9, (until - from) / Most);
        var inside = curve.Readings.Where(r => r.Hours >= from - width && r.Hours <= until + width).ToList();
        if (inside.Count <= Most)
        {
            return new([new(from, curve.CelsiusAt(from)), .. inside, new(until, curve.CelsiusAt(until))], findings);
        }

        var means = inside.GroupBy(r => Math.Floor((r.Hours - from) / width)).Select(g => new RoomReading(g.Average(r => r.Hours), g.Average(r => r.Celsius))).ToList();
        var note = new Finding(
            "room-averaged", Severity.Note, "room",
            FormattableString.Invariant($"{inside.Count} readings of the room are more than the heat needs; each {width * 3600:0} s of them are taken together by their mean."), "our rule");
        return new(means, [.. findings, note]);
    }
}
