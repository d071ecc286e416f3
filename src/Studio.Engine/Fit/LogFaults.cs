namespace Studio.Engine.Fit;

/// <summary>Readings that a thermometer in resin cannot have given, and too many of the good ones.</summary>
internal static class LogFaults
{
    private const int Most = 40;
    private const double SpikeK = 6;
    private const double PowerOnC = 85;

    /// <summary>The readings that are used, in time's order.</summary>
    /// <param name="endH">When the layer is no longer alone [h after its pour].</param>
    public static IReadOnlyList<LogReading> Used(IReadOnlyList<LogReading> readings, double endH, List<Finding> findings)
    {
        var left = readings.Where(r => double.IsFinite(r.AfterHours) && double.IsFinite(r.Celsius)).ToList();
        Drop(r => r.Celsius is < -30 or > 350 or PowerOnC, "log-reading-implausible", "outside −30 to 350 °C, or exactly 85.0 °C, which some sensors report before their first measurement");
        Drop(r => r.AfterHours < 0, "log-reading-before-pour", "taken before the layer was poured");
        Drop(r => r.AfterHours > endH, "log-reading-after-next-pour", "taken after the next layer was poured on it");
        List<LogReading> order = [.. left.GroupBy(r => r.AfterHours).Select(g => g.Last()).OrderBy(r => r.AfterHours)];
        var spikes = order.Where((_, i) => Spike(order, i)).ToHashSet();
        left = [.. order];
        Drop(spikes.Contains, "log-reading-spike", "a single jump that its neighbours do not share");
        return Thin(left);

        void Drop(Predicate<LogReading> faulty, string code, string why)
        {
            var count = left.RemoveAll(faulty);
            if (count > 0)
            {
                findings.Add(new(code, Severity.Warn, "readings", $"{count} of {readings.Count} readings {(count == 1 ? "is" : "are")} left out: {why}. Look at the thermometer and its clock.", "our rule"));
            }
        }
    }

    /// <summary>Whether the log is in °F: it begins far above the pour, but not once it is converted.</summary>
    public static bool Fahrenheit(IReadOnlyList<LogReading> readings, double pouredC) =>
        readings.Count > 0 && readings.MinBy(r => r.AfterHours)!.Celsius is var first && first > pouredC + 20 && Math.Abs(((first - 32) / 1.8) - pouredC) < 8;

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
        var end = order.Find(r => r.AfterHours > top.AfterHours && r.Celsius < floor)?.AfterHours ?? order[^1].AfterHours;
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
