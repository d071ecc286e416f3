using System.Globalization;

namespace Studio.Engine.Time;

/// <summary>How moments, days and times of day are written: ISO 8601 without a zone; in sentences day first.</summary>
internal static class WallText
{
    internal const string MomentMust = "a local time to the minute such as \"2026-03-02T09:00\", without a zone";
    internal const string DayMust = "a day such as \"2026-04-03\"";
    internal const string TimeOfDayMust = "a time of day such as \"09:00\", from \"00:00\" to \"24:00\"";
    internal const string WeekdayMust = "one of \"mon\", \"tue\", \"wed\", \"thu\", \"fri\", \"sat\", \"sun\"";

    private const string MomentForm = "yyyy-MM-dd'T'HH:mm";
    private const string DayForm = "yyyy-MM-dd";
    private const string Midnight = "24:00";

    // in the order of DayOfWeek
    private static readonly string[] Weekdays = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];

    internal static bool Moment(string text, out DateTime moment) =>
        DateTime.TryParseExact(text, MomentForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out moment);

    internal static bool Day(string text, out DateOnly day) => DateOnly.TryParseExact(text, DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out day);

    internal static bool TimeOfDay(string text, out TimeSpan time)
    {
        var read = TimeOnly.TryParseExact(text, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out var clock);
        time = text == Midnight ? TimeSpan.FromDays(1) : clock.ToTimeSpan();
        return read || text == Midnight;
    }

    internal static bool Weekday(string text, out DayOfWeek day)
    {
        var at = Array.IndexOf(Weekdays, text);
        day = (DayOfWeek)Math.Max(0, at);
        return at >= 0;
    }

    internal static string? Write(DateTime? moment) => moment?.ToString(MomentForm, CultureInfo.InvariantCulture);

    internal static string? Write(DateOnly? day) => day?.ToString(DayForm, CultureInfo.InvariantCulture);

    /// <summary>"Thursday 5 March 2026".</summary>
    internal static string Say(DateOnly day) => day.ToString("dddd d MMMM yyyy", CultureInfo.InvariantCulture);

    /// <summary>"Thursday 5 March 2026, 09:00".</summary>
    internal static string Say(DateTime moment) => moment.ToString("dddd d MMMM yyyy, HH:mm", CultureInfo.InvariantCulture);
}
