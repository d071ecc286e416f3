using System.Globalization;

namespace Studio.Shell;

/// <summary>How numbers, money and times are said everywhere: with a unit, in the studio's zone, as a person would.</summary>
public static class Say
{
    private const double MmPerInch = 25.4;

    // of a common bench scale
    private const double ScaleStepG = 0.1;

    private static readonly CultureInfo English = CultureInfo.GetCultureInfo("en-GB");

    private static readonly Dictionary<string, (string Sign, int Digits)> Signs = new(StringComparer.Ordinal)
    {
        ["GBP"] = ("£", 2),
        ["EUR"] = ("€", 2),
        ["USD"] = ("$", 2),
        ["JPY"] = ("¥", 0),
        ["KWD"] = ("KWD ", 3),
    };

    /// <summary>"150 mm" or "5.91 in".</summary>
    public static string Length(double mm, string units = "metric") => units == "inch"
        ? string.Create(English, $"{mm / MmPerInch:0.##} in")
        : string.Create(English, $"{mm:0.#} mm");

    /// <summary>"41.2 g": what a bench scale shows. "less than 0.1 g" for something that such a scale shows as nothing.</summary>
    public static string Grams(double grams) => grams is > 0 and < ScaleStepG / 2 ? string.Create(English, $"less than {ScaleStepG:0.0} g") : string.Create(English, $"{grams:0.0} g");

    /// <summary>"375 ml".</summary>
    public static string Millilitres(double ml) => string.Create(English, $"{ml:0.#} ml");

    /// <summary>"19.5 °C".</summary>
    public static string Celsius(double celsius) => string.Create(English, $"{celsius:0.#} °C");

    /// <summary>"£1,250.00"; currencies without a sign of their own say their code.</summary>
    public static string Money(decimal amount, string currency)
    {
        var (sign, digits) = Signs.TryGetValue(currency, out var known) ? known : (currency + " ", 2);
        return (amount < 0 ? "−" : "") + sign + Math.Abs(amount).ToString("N" + digits.ToString(English), English);
    }

    /// <summary>"40 minutes", "6 hours", "2 days 4 hours".</summary>
    public static string Duration(TimeSpan span)
    {
        var minutes = (long)Math.Ceiling(span.Duration().TotalMinutes);
        return minutes switch
        {
            < 1 => "under a minute",
            < 120 => minutes == 1 ? "1 minute" : $"{minutes} minutes",
            < 48 * 60 => Part(minutes / 60, "hour") + (minutes % 60 >= 5 && minutes < 600 ? " " + Part(minutes % 60, "minute") : ""),
            _ => Part(minutes / 1440, "day") + (minutes % 1440 >= 60 && minutes < 7 * 1440 ? " " + Part(minutes % 1440 / 60, "hour") : ""),
        };
    }

    /// <summary>"today 14:10", "tomorrow 09:05", "Thursday 09:05", "3 March 09:05", in the studio's zone.</summary>
    public static string When(DateTime utc, TimeZoneInfo zone, DateTime nowUtc)
    {
        var at = Local(utc, zone);
        return Day(DateOnly.FromDateTime(at), DateOnly.FromDateTime(Local(nowUtc, zone))) + at.ToString(" HH:mm", English);
    }

    /// <summary>"today", "tomorrow", "Thursday" within the week, else "3 March" (with the year when it is another).</summary>
    public static string Day(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        -1 => "yesterday",
        > 1 and < 7 => day.ToString("dddd", English),
        _ => day.ToString(day.Year == today.Year ? "d MMMM" : "d MMMM yyyy", English),
    };

    /// <summary>The wall clock of the studio.</summary>
    public static DateTime Local(DateTime utc, TimeZoneInfo zone) =>
        TimeZoneInfo.ConvertTimeFromUtc(DateTime.SpecifyKind(utc, DateTimeKind.Utc), zone);

    /// <summary>"12 days left", "today", "3 days late".</summary>
    public static string DaysLeft(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "due today",
        1 => "1 day left",
        > 1 and var left => $"{left} days left",
        -1 => "1 day late",
        var late => $"{-late} days late",
    };

    /// <summary>Words that somebody typed, as a sentence of their own; empty stays empty.</summary>
    public static string Sentence(string words)
    {
        ArgumentNullException.ThrowIfNull(words);
        var trimmed = words.Trim();
        return trimmed.Length == 0 || trimmed[^1] is '.' or '?' or '!' ? trimmed : trimmed + ".";
    }

    private static string Part(long count, string word) => count == 1 ? $"1 {word}" : $"{count} {word}s";
}
