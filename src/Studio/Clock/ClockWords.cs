using Studio.Shell;

namespace Studio.Clock;

/// <summary>How the clock says times: today without the day, else with it.</summary>
internal sealed class ClockWords(DateTime now, TimeZoneInfo zone)
{
    internal DateTime Now => now;

    /// <summary>"today 14:10", "tomorrow 09:05".</summary>
    internal string When(DateTime utc) => Say.When(utc, zone, now);

    /// <summary>"14:10", "tomorrow 09:05".</summary>
    internal string Clock(DateTime utc) => When(utc) is var said && said.StartsWith("today ", StringComparison.Ordinal) ? said["today ".Length..] : said;

    /// <summary>"at 14:10", "tomorrow 09:05".</summary>
    internal string At(DateTime utc) => IsToday(utc) ? "at " + Clock(utc) : Clock(utc);

    internal bool IsToday(DateTime utc) => Say.Local(utc, zone).Date == Say.Local(now, zone).Date;

    internal string Ago(DateTime utc) => Say.Duration(now - utc);

    internal string Celsius(double celsius) => Say.Celsius(celsius);
}
