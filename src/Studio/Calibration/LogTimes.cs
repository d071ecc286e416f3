using System.Globalization;
using System.Text.RegularExpressions;
using Studio.Climate;
using Studio.Shell;

namespace Studio.Calibration;

/// <summary>Turns a log's times into hours after the pour, line by line in the order they stand.</summary>
internal sealed partial class LogTimes(LogFrame frame, LogColumns columns)
{
    // a thermometer may have been switched on before the pour, not half a day before
    private const double EarlyHours = 6;

    private static readonly string[] Dates =
    [
        "yyyy-M-d", "yyyy/M/d", "yyyy.M.d", "d.M.yyyy", "d.M.yy", "d/M/yyyy", "d-M-yyyy", "M/d/yyyy", "M/d/yy", "d/M/yy", "d MMM yyyy", "d MMMM yyyy", "MMM d, yyyy",
    ];

    private DateTime? last;
    private double? lastElapsed;
    private bool? elapsed;
    private string kind = "";

    /// <summary>How the times were taken.</summary>
    internal string Words => kind switch
    {
        "clock" => "Times were taken as times of day on the studio’s clock.",
        "date" => "Times were taken as dates and times.",
        "elapsed" => "Times were taken as hours and minutes since the pour.",
        "h" => "Bare numbers were taken as hours since the pour.",
        "s" => "Bare numbers were taken as seconds since the pour.",
        "min" => "Bare numbers were taken as minutes since the pour.",
        _ => "",
    };

    /// <summary>True when a cell could be some time.</summary>
    internal static bool CouldBe(string cell) => LogNumbers.Plain(cell) is not null || Clock().IsMatch(cell) || WithDate().IsMatch(cell) || WithUnit().IsMatch(cell);

    /// <summary>Hours after the pour; null where no time can be read.</summary>
    internal double? Hours(IReadOnlyList<string> cells)
    {
        var cell = cells[columns.Time];
        var date = columns.Date >= 0 && columns.Date < cells.Count ? cells[columns.Date] : "";
        return date.Length > 0 ? Dated(date + " " + cell)
            : Clock().Match(cell) is { Success: true } clock ? OfClock(clock)
            : LogNumbers.Plain(cell) is { } bare ? OfBare(bare)
            : WithUnit().Match(cell) is { Success: true } unit && LogNumbers.Plain(unit.Groups["n"].Value) is { } number ? OfUnit(number, unit.Groups["u"].Value)
            : Dated(cell);
    }

    private double OfUnit(double number, string unit)
    {
        kind = unit.StartsWith('h') ? "h" : unit.StartsWith('s') ? "s" : "min";
        return kind == "h" ? number : kind == "s" ? number / 3600 : number / 60;
    }

    private double? OfBare(double bare)
    {
        // seconds or milliseconds since 1970
        if (bare is > 1e9 and < 1e13)
        {
            kind = "date";
            return After(DateTimeOffset.FromUnixTimeMilliseconds((long)(bare > 1e11 ? bare : bare * 1000)).UtcDateTime);
        }

        var per = columns.HoursPerUnit ?? (frame.BareHours ? 1 : 1 / 60.0);
        kind = per == 1 ? "h" : per < 0.01 ? "s" : "min";
        return bare * per;
    }

    private double? OfClock(Match clock)
    {
        var (hour, minute) = (int.Parse(clock.Groups["h"].ValueSpan, CultureInfo.InvariantCulture), int.Parse(clock.Groups["m"].ValueSpan, CultureInfo.InvariantCulture));
        var second = clock.Groups["s"].Success ? double.Parse(clock.Groups["s"].Value.Replace(',', '.'), CultureInfo.InvariantCulture) : 0;
        var half = clock.Groups["p"].Value.ToLowerInvariant();
        elapsed ??= hour == 0 && minute < 2 && half.Length == 0 && Say.Local(frame.PouredAt, frame.Zone).TimeOfDay.TotalHours is > 1 and < 23;
        if (minute > 59 || second >= 60)
        {
            return null;
        }

        if (elapsed.Value || hour > 24)
        {
            kind = "elapsed";
            var since = hour + (minute / 60.0) + (second / 3600);
            since += lastElapsed is { } before && before - since > 12 ? 24 * Math.Round((before - since) / 24) : 0; // a stopwatch that goes round
            lastElapsed = since;
            return since;
        }

        if (half.Length > 0)
        {
            hour = hour is < 1 or > 12 ? 99 : (hour % 12) + (half[0] == 'p' ? 12 : 0);
        }

        kind = "clock";
        return hour > 24 ? null : Placed(new TimeSpan(hour, minute, 0) + TimeSpan.FromSeconds(second));
    }

    // the day that follows the line before, or the pour
    private double Placed(TimeSpan ofDay)
    {
        var anchor = last ?? Say.Local(frame.PouredAt, frame.Zone).AddHours(-EarlyHours);
        var at = anchor.Date + ofDay;
        var slack = last is null ? 0 : -EarlyHours; // lines may stand a little out of order, not by half a day
        while (at < anchor.AddHours(slack))
        {
            at = at.AddDays(1);
        }

        if (last is not null && at - anchor > TimeSpan.FromHours(18))
        {
            at = at.AddDays(-1);
        }

        last = last is { } newest && newest > at ? newest : at;
        return After(LocalClock.Utc(at, DateTime.MaxValue.AddDays(-2), frame.Zone));
    }

    private double? Dated(string text)
    {
        text = text.Trim();
        if (text.Length is < 6 or > 60)
        {
            return null;
        }

        if (Zoned().IsMatch(text) && DateTimeOffset.TryParse(text, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var zoned))
        {
            kind = "date";
            return After(zoned.UtcDateTime);
        }

        var split = WithDate().Match(text);
        if (!split.Success || !TimeSpan.TryParse(Padded(split.Groups["t"].Value), CultureInfo.InvariantCulture, out var ofDay) || ofDay.TotalHours >= 24)
        {
            return null;
        }

        // where day and month could be either, the one nearer to the pour
        var poured = Say.Local(frame.PouredAt, frame.Zone);
        var days = Dates.Select(f => DateTime.TryParseExact(split.Groups["d"].Value.TrimEnd('.', ','), f, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) && day.Year is > 1990 and < 2200 ? day : (DateTime?)null).OfType<DateTime>().ToList();
        if (days.Count == 0)
        {
            return null;
        }

        kind = "date";
        var half = split.Groups["p"].Value.ToLowerInvariant();
        ofDay += half.StartsWith('p') && ofDay.Hours < 12 ? TimeSpan.FromHours(12) : half.StartsWith('a') && ofDay.Hours == 12 ? TimeSpan.FromHours(-12) : TimeSpan.Zero;
        return After(LocalClock.Utc(days.MinBy(d => Math.Abs((d - poured.Date).TotalDays)) + ofDay, DateTime.MaxValue.AddDays(-2), frame.Zone));
    }

    private static string Padded(string clock) => clock.Count(c => c == ':') == 1 ? clock + ":00" : clock;

    private double After(DateTime utc) => (utc - frame.PouredAt).TotalHours;

    [GeneratedRegex(@"^\s*(?<h>[0-9]{1,3}):(?<m>[0-9]{2})(:(?<s>[0-9]{2}([.,][0-9]{1,6})?))?\s*(?<p>[AaPp])?\.?([Mm]\.?)?\s*$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Clock();

    [GeneratedRegex(@"^(?<d>[0-9A-Za-z./, -]{6,20}?)[ T,]+(?<t>[0-9]{1,2}:[0-9]{2}(:[0-9]{2}([.][0-9]{1,6})?)?)\s*(?<p>[AaPp])?\.?([Mm]\.?)?$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex WithDate();

    [GeneratedRegex(@"^\s*(?<n>[-+0-9.,]{1,15})\s*(?<u>h|hours?|min|minutes?|s|sec|seconds?)\.?\s*$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex WithUnit();

    [GeneratedRegex(@"^[0-9]{4}-[0-9]{2}-[0-9]{2}.*[0-9]\s*(Z|[-+][0-9]{2}:?[0-9]{2})$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Zoned();
}
