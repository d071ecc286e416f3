namespace Studio.Engine.Cure;

/// <summary>A stretch of time in which the room's temperature is linear.</summary>
/// <param name="FromHours">Start [h].</param>
/// <param name="ToHours">End [h]; infinite for the stretch after the last reading.</param>
/// <param name="FromC">Temperature at the start [°C].</param>
/// <param name="ToC">Temperature at the end [°C].</param>
internal sealed record RoomStretch(double FromHours, double ToHours, double FromC, double ToC);

/// <summary>The room's temperature over time: linear between readings, the last one held, the first one held backwards.</summary>
internal sealed class RoomCurve
{
    /// <summary>Outside these a reading is taken for a fault of the sensor or of the entry [°C]; our rule.</summary>
    internal const double LowestC = -30;

    internal const double HighestC = 60;

    private readonly RoomReading[] readings;

    /// <summary>Sorts the readings.</summary>
    /// <exception cref="ArgumentException">There is no reading.</exception>
    internal RoomCurve(IReadOnlyList<RoomReading> plausible)
    {
        if (plausible.Count == 0)
        {
            throw new ArgumentException("A room needs at least one reading.", nameof(plausible));
        }

        // two entries for the same moment are a correction: the later entry counts
        readings = [.. plausible.GroupBy(r => r.Hours).Select(g => g.Last()).OrderBy(r => r.Hours)];
    }

    /// <summary>The stretches from <paramref name="hours"/> [h] on; the last one never ends.</summary>
    internal IEnumerable<RoomStretch> From(double hours)
    {
        var (atHours, atC) = (hours, CelsiusAt(hours));
        foreach (var next in readings.Where(r => r.Hours > hours))
        {
            yield return new(atHours, next.Hours, atC, next.Celsius);
            (atHours, atC) = (next.Hours, next.Celsius);
        }

        yield return new(atHours, double.PositiveInfinity, atC, atC);
    }

    internal double CelsiusAt(double hours)
    {
        var after = Array.FindIndex(readings, r => r.Hours >= hours);
        if (after <= 0)
        {
            return after == 0 ? readings[0].Celsius : readings[^1].Celsius;
        }

        var (a, b) = (readings[after - 1], readings[after]);
        var share = (hours - a.Hours) / (b.Hours - a.Hours);
        return a.Celsius + (share * (b.Celsius - a.Celsius));
    }

    /// <summary>Lowest and highest temperature [°C] between two times [h].</summary>
    internal (double MinC, double MaxC) Range(double fromHours, double toHours)
    {
        double[] seen =
        [
            CelsiusAt(fromHours), CelsiusAt(toHours),
            .. readings.Where(r => r.Hours > fromHours && r.Hours < toHours).Select(r => r.Celsius),
        ];
        return (seen.Min(), seen.Max());
    }

    internal RestsOn RestsOn(double hours)
    {
        var last = Array.FindLast(readings, r => r.Hours <= hours);
        if (last is null)
        {
            return new(RestsOnKind.Assumed, readings[0].Hours, readings[0].Celsius);
        }

        var held = hours > readings[^1].Hours;
        return new(held ? RestsOnKind.Held : RestsOnKind.Reading, last.Hours, last.Celsius);
    }
}
