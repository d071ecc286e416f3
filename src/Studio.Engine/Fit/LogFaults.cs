namespace Studio.Engine.Fit;

/// <summary>Readings that a thermometer in resin cannot have given, and too many of the good ones.</summary>
internal static class LogFaults
{
    private const int Most = 40;
    private const double SpikeK = 6;
    private const double PowerOnC = 85;
    private const string Rule = "our rule";

    /// <summary>The readings that are used, in time's order.</summary>
    /// <param name="endH">When the layer is no longer alone [h after its pour].</param>
    public static IReadOnlyList<LogReading> Used(LayerLog log, double endH, List<Finding> findings)
    {
        var readings = log.Readings;
        var left = readings.Where(r => double.IsFinite(r.AfterHours) && double.IsFinite(r.Celsius)).ToList();
        var clock = LogClock.Early(left, log.Piece.Layers[log.Layer].PouredCelsius);
        Drop(r => r.Celsius is < -30 or > 350 or PowerOnC, "log-reading-implausible", "outside −30 to 350 °C, or exactly 85.0 °C, which some sensors report before their first measurement");
        Drop(r => r.AfterHours < 0, "log-reading-before-pour", "taken before the layer was poured" + clock);
        Drop(r => r.AfterHours > endH, "log-reading-after-next-pour", "taken after the next layer was poured on it");
        var order = InOrder(left, findings);
        var spikes = order.Where((_, i) => Spike(order, i)).ToHashSet();
        left = [.. order];
        Drop(spikes.Contains, "log-reading-spike", "a single jump that its neighbours do not share");
        LogClock.Late(left, findings);
        var pulledH = LogProbe.PulledOutH(left, log, findings);
        left.RemoveAll(r => r.AfterHours > pulledH);
        return Thin(left);

        void Drop(Predicate<LogReading> faulty, string code, string why)
        {
            var count = left.RemoveAll(faulty);
            if (count > 0)
            {
                findings.Add(new(code, Severity.Warn, "readings", $"{count} of {readings.Count} readings {(count == 1 ? "is" : "are")} left out: {why}. Look at the thermometer and its clock.", Rule));
            }
        }
    }

    /// <summary>Whether the log is in °F: it begins far above the pour and never comes near it, but would begin there once it is converted.</summary>
    public static bool Fahrenheit(IReadOnlyList<LogReading> readings, double pouredC)
    {
        var real = readings.Where(r => r.AfterHours >= 0 && r.Celsius is > -30 and < 350).ToList();
        return real.Count > 0 && real.Min(r => r.Celsius) > pouredC + 20 && Math.Abs(((real.MinBy(r => r.AfterHours)!.Celsius - 32) / 1.8) - pouredC) < 8;
    }

    // of two at one time the later in the list counts, as with a room's readings
    private static List<LogReading> InOrder(List<LogReading> readings, List<Finding> findings)
    {
        var order = new List<LogReading>(readings.Count);
        var differ = 0;
        foreach (var r in readings.OrderBy(r => r.AfterHours))
        {
            if (order.Count > 0 && order[^1].AfterHours == r.AfterHours)
            {
                differ += Math.Abs(order[^1].Celsius - r.Celsius) > 0.5 ? 1 : 0;
                order[^1] = r;
            }
            else
            {
                order.Add(r);
            }
        }

        if (differ > 0)
        {
            findings.Add(new("log-reading-twice", Severity.Warn, "readings", $"{differ} {(differ == 1 ? "reading shares its time" : "readings share their times")} with another that differs; the later in the list counts. Perhaps two logs were mixed, or a clock was set back while it ran.", Rule));
        }

        return order;
    }

    private static bool Spike(List<LogReading> order, int i) =>
        i > 0 && i < order.Count - 1
        && Math.Abs(order[i].Celsius - ((order[i - 1].Celsius + order[i + 1].Celsius) / 2)) > Math.Max(SpikeK, 1.5 * Math.Abs(order[i - 1].Celsius - order[i + 1].Celsius));

    // evenly in time, up to where it has cooled by four fifths; the long tail tells of the room alone
    private static IReadOnlyList<LogReading> Thin(List<LogReading> order)
    {
        if (order.Count <= Most)
        {
            return order;
        }

        var top = order.MaxBy(r => r.Celsius)!;
        var floor = order[0].Celsius + (0.2 * (top.Celsius - order[0].Celsius));
        var cooled = top.Celsius - order[0].Celsius > SpikeK ? order.Find(r => r.AfterHours > top.AfterHours && r.Celsius < floor) : null;
        var end = (cooled ?? order[^1]).AfterHours;
        var start = order[0].AfterHours;
        return [.. Enumerable.Range(0, Most).Select(i => start + ((end - start) * i / (Most - 1))).Select(t => Nearest(order, t)).Append(top).Distinct().OrderBy(r => r.AfterHours)];
    }

    private static LogReading Nearest(List<LogReading> order, double hours)
    {
        var at = order.BinarySearch(new LogReading(hours, 0), Comparer<LogReading>.Create((a, b) => a.AfterHours.CompareTo(b.AfterHours)));
        var above = Math.Min(at < 0 ? ~at : at, order.Count - 1);
        var below = Math.Max(0, above - 1);
        return hours - order[below].AfterHours < order[above].AfterHours - hours ? order[below] : order[above];
    }
}
