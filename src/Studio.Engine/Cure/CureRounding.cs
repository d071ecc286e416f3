namespace Studio.Engine.Cure;

/// <summary>Rounds milestones to whole minutes for reading: a ready time later, a closing time earlier.</summary>
public static class CureRounding
{
    // double arithmetic on hours can miss a whole minute by a fraction of this; without it 24 h after 09:05 would read 09:06
    private const long SlackTicks = TimeSpan.TicksPerMicrosecond;

    internal const double SlackHours = SlackTicks / (double)TimeSpan.TicksPerHour;

    /// <summary>The first whole minute at or after the instant; for 'next pour from', 'demould', 'full cure'.</summary>
    public static DateTime UpToMinute(DateTime instant) =>
        Floor(instant.AddTicks(TimeSpan.TicksPerMinute - SlackTicks - 1));

    /// <summary>The last whole minute at or before the instant; for the window's end.</summary>
    public static DateTime DownToMinute(DateTime instant) => Floor(instant.AddTicks(SlackTicks));

    private static DateTime Floor(DateTime instant) => instant.AddTicks(-(instant.Ticks % TimeSpan.TicksPerMinute));
}
