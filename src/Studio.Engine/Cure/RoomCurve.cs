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

    /// <summary>How far a reading that <see cref="Eased"/> leaves out may lie off the line between those that it keeps [K].</summary>
    internal const double EasedC = 0.05;

    private readonly RoomReading[] readings;
    private RoomCurve? eased;

    /// <summary>Sorts the readings.</summary>
    /// <exception cref="ArgumentException">There is no reading.</exception>
    internal RoomCurve(IReadOnlyList<RoomReading> plausible)
    {
        if (plausible.Count == 0)
        {
            throw new ArgumentException("A room needs at least one reading.", nameof(plausible));
        }

        // two entries for the same moment are a correction: the later entry counts
        readings = Rising(plausible) ? [.. plausible] : [.. plausible.GroupBy(r => r.Hours).Select(g => g.Last()).OrderBy(r => r.Hours)];
    }

    /// <summary>Time of the last reading [h].</summary>
    internal double LastHours => readings[^1].Hours;

    /// <summary>All of them, sorted.</summary>
    internal IReadOnlyList<RoomReading> Readings => readings;

    internal int Count => readings.Length;

    /// <summary>The last reading, held from then on [°C].</summary>
    internal double LastC => readings[^1].Celsius;

    /// <summary>The same room by as few of its readings as tell every other within <see cref="EasedC"/>: a sensor's hundreds become a dozen. For bounds, not for instants.</summary>
    internal RoomCurve Eased => eased ??= new(Few());

    /// <summary>The stretches from <paramref name="hours"/> [h] on; the last one never ends.</summary>
    internal IEnumerable<RoomStretch> From(double hours)
    {
        var (atHours, atC) = (hours, CelsiusAt(hours));
        for (var i = FirstAfter(hours); i < readings.Length; i++)
        {
            yield return new(atHours, readings[i].Hours, atC, readings[i].Celsius);
            (atHours, atC) = (readings[i].Hours, readings[i].Celsius);
        }

        yield return new(atHours, double.PositiveInfinity, atC, atC);
    }

    internal double CelsiusAt(double hours)
    {
        var after = FirstAfter(hours);
        if (after == 0 || after == readings.Length)
        {
            return readings[after == 0 ? 0 : ^1].Celsius;
        }

        var (a, b) = (readings[after - 1], readings[after]);
        var share = (hours - a.Hours) / (b.Hours - a.Hours);
        return a.Celsius + (share * (b.Celsius - a.Celsius));
    }

    /// <summary>Lowest and highest temperature [°C] between two times [h].</summary>
    internal (double MinC, double MaxC) Range(double fromHours, double toHours)
    {
        var between = readings[FirstAfter(fromHours)..Math.Max(FirstAfter(fromHours), FirstAfter(toHours))];
        double[] seen = [CelsiusAt(fromHours), CelsiusAt(toHours), .. between.Select(r => r.Celsius)];
        return (seen.Min(), seen.Max());
    }

    internal RestsOn RestsOn(double hours)
    {
        var after = FirstAfter(hours);
        var basis = readings[Math.Max(0, after - 1)];
        var kind = after == 0 ? RestsOnKind.Assumed : hours > readings[^1].Hours ? RestsOnKind.Held : RestsOnKind.Reading;
        return new(kind, basis.Hours, basis.Celsius);
    }

    // a sensor's log is in order as a rule, and may be long
    private static bool Rising(IReadOnlyList<RoomReading> list)
    {
        for (var i = 1; i < list.Count; i++)
        {
            if (!(list[i].Hours > list[i - 1].Hours))
            {
                return false;
            }
        }

        return true;
    }

    // index of the first reading after the time, by halving; a year of readings is many
    private int FirstAfter(double hours)
    {
        var (low, high) = (0, readings.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = readings[middle].Hours > hours ? (low, middle) : (middle + 1, high);
        }

        return low;
    }

    // from each that is kept the line goes to the last one that lets all between lie close enough
    private List<RoomReading> Few()
    {
        List<RoomReading> kept = [readings[0]];
        var (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
        for (var i = 1; i < readings.Length; i++)
        {
            if (Slope(readings[i].Celsius) is var slope && (slope < low || slope > high))
            {
                kept.Add(readings[i - 1]);
                (low, high) = (double.NegativeInfinity, double.PositiveInfinity);
            }

            (low, high) = (Math.Max(low, Slope(readings[i].Celsius - EasedC)), Math.Min(high, Slope(readings[i].Celsius + EasedC)));

            double Slope(double celsius) => (celsius - kept[^1].Celsius) / (readings[i].Hours - kept[^1].Hours);
        }

        if (readings.Length > 1)
        {
            kept.Add(readings[^1]);
        }

        return kept;
    }
}
