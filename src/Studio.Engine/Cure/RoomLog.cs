namespace Studio.Engine.Cure;

/// <summary>
/// A room's readings made ready for the clock: checked, sorted, faults left out. Make it once and run many pieces against it.
/// </summary>
/// <remarks>Linear between readings; the last one is held, the first one held backwards. Immutable, safe to share between threads.</remarks>
public sealed class RoomLog
{
    /// <summary>Checks and sorts the readings.</summary>
    /// <param name="readings">In any order; of two at one time the one later in the list counts. May be empty: then nothing is guessed.</param>
    /// <exception cref="ArgumentException">A reading is not a finite number.</exception>
    public RoomLog(IReadOnlyList<RoomReading> readings)
    {
        CureCheck.Readings(readings);
        Findings = CureCheck.RoomFindings(readings);
        var plausible = readings.Where(r => CureCheck.Plausible(r.Celsius)).ToList();
        Curve = plausible.Count > 0 ? new(plausible) : null;
    }

    /// <summary>Readings that were left out, and why.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    internal RoomCurve? Curve { get; }
}
