namespace Studio.Engine.Fit;

/// <summary>A log whose times begin before or well after the pour: perhaps its clock is off, by an hour at daylight saving.</summary>
internal static class LogClock
{
    private const double OffLeastH = 0.8;
    private const double OffMostH = 1.2;
    private const double OftenH = 0.5;
    private const double WarmK = 5;

    /// <summary>What to add about readings before the pour; empty where they may just be of an empty mould.</summary>
    public static string Early(List<LogReading> readings, double pouredC)
    {
        var before = readings.Where(r => r.AfterHours < 0).ToList();
        if (before.Count == 0)
        {
            return "";
        }

        var firstH = before.Min(r => r.AfterHours);
        return before.Max(r => r.Celsius) > pouredC + WarmK ? ", and already warmer than the mix: its clock, or the time of the pour, is wrong"
            : -firstH is >= OffLeastH and <= OffMostH ? ", from about an hour before. If the log began with the pour, its clock is an hour slow (daylight saving): correct it, then fit again"
            : "";
    }

    /// <summary>Tells of a log that begins about an hour after the pour, though it is read often.</summary>
    public static void Late(List<LogReading> order, List<Finding> findings)
    {
        if (order.Count >= 4 && order[0].AfterHours is >= OffLeastH and <= OffMostH && (order[^1].AfterHours - order[0].AfterHours) / order.Count < OftenH)
        {
            findings.Add(new("log-begins-late", Severity.Note, "readings", FormattableString.Invariant(
                $"The log begins {order[0].AfterHours * 60:0} min after the pour. If it began with the pour, its clock is an hour fast (daylight saving): correct it, then fit again."), "our rule"));
        }
    }
}
