using System.Globalization;
using System.Text.RegularExpressions;

namespace Studio.Climate;

/// <summary>A reading of a pasted table.</summary>
/// <param name="Line">Counted from 1.</param>
/// <param name="At">[UTC].</param>
public sealed record PastedReading(int Line, DateTime At, double Celsius, double? HumidityPercent);

/// <summary>A line that could not be read.</summary>
public sealed record PastedError(int Line, string Message);

/// <summary>
/// Reads a table of readings as it is pasted: date and time, temperature, and humidity where there is one. Columns by semicolon, tab or comma;
/// a header names them, else they stand in that order. °F where the header or the cell says so. Never throws on any text.
/// </summary>
public static partial class ReadingText
{
    /// <summary>Lines beyond this belong into a second paste.</summary>
    public const int MostLines = 20_000;

    private const int MostErrors = 100;

    // no month-first dates: 03/04 would be read a month off
    private static readonly string[] Dates =
    [
        "yyyy-M-d H:m", "yyyy-M-d H:m:s", "yyyy-M-d'T'H:m", "yyyy-M-d'T'H:m:s", "d.M.yyyy H:m", "d.M.yyyy H:m:s",
    ];

    /// <summary>The good lines, and every line that is not with what to do.</summary>
    public static (IReadOnlyList<PastedReading> Readings, IReadOnlyList<PastedError> Errors) Read(string? text, DateTime now, TimeZoneInfo zone)
    {
        var lines = (text ?? "").Split('\n').Select((l, i) => (Text: l.Trim('\r', ' ', '\uFEFF'), Number: i + 1)).Where(l => l.Text.Length > 0).ToList();
        if (lines.Count == 0)
        {
            return ([], [new(1, "Paste lines such as “2026-11-25 14:10; 19.5; 48”.")]);
        }

        if (lines.Count > MostLines)
        {
            return ([], [new(MostLines + 1, FormattableString.Invariant($"More than {MostLines} lines. Paste them in parts."))]);
        }

        var mark = lines[0].Text.Contains(';', StringComparison.Ordinal) ? ';' : lines[0].Text.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        var names = Cells(lines[0].Text, mark);
        var header = names.Any(n => n.Length > 0) && names.All(n => n.Length == 0 || char.IsAsciiLetter(n[0]) || n[0] is '°' or '%');
        (int Time, int Celsius, int Humid) columns = header ? (Find(names, Time()), Find(names, Temperature()), Find(names, Humidity())) : (0, 1, 2);
        if (columns.Time < 0 || columns.Celsius < 0)
        {
            return ([], [new(lines[0].Number, "The header needs a column of times and one of temperatures, such as “time;temperature;humidity”.")]);
        }

        var inF = header && Fahrenheit().IsMatch(names[columns.Celsius]);
        List<PastedReading> readings = [];
        List<PastedError> errors = [];
        foreach (var (line, number) in header ? lines.Skip(1) : lines)
        {
            var (reading, wrong) = One(Cells(line, mark), columns, inF, now, zone, number);
            if (reading is not null)
            {
                readings.Add(reading);
            }
            else if (errors.Count < MostErrors)
            {
                errors.Add(new(number, wrong));
            }
        }

        return (readings, errors);
    }

    private static (PastedReading? Reading, string Wrong) One(string[] cells, (int Time, int Celsius, int Humid) at, bool inF, DateTime now, TimeZoneInfo zone, int line)
    {
        if (cells.Length <= Math.Max(at.Time, at.Celsius))
        {
            return (null, "A line is a time and a temperature, such as “2026-11-25 14:10; 19.5”. With decimal commas put semicolons between the columns.");
        }

        if (cells.Length > 3 && at is (0, 1, 2))
        {
            return (null, "More than three columns, and no header says which is which. Give them a header, or put semicolons between them if commas stand within the numbers.");
        }

        if (When(cells[at.Time], now, zone) is not { } when)
        {
            return (null, $"“{Short(cells[at.Time])}” is not a date and time. Write 2026-11-25 14:10 or 25.11.2026 14:10.");
        }

        if (when > now.AddMinutes(ReadingDoubts.AheadMinutes))
        {
            return (null, "This lies in the future. Look at the date.");
        }

        var cell = cells[at.Celsius];
        if (Number(Units().Replace(cell, "")) is not { } celsius)
        {
            return (null, $"“{Short(cell)}” is not a temperature. Write 19.5 or 19,5.");
        }

        celsius = cell.EndsWith('F') || (inF && !cell.EndsWith('C')) ? SensorMessage.OfFahrenheit(celsius) : celsius;
        if (RoomBook.Wrong(celsius) is { } wrong)
        {
            return (null, wrong);
        }

        double? humid = null;
        if (at.Humid >= 0 && at.Humid < cells.Length && cells[at.Humid].Length > 0)
        {
            humid = Number(cells[at.Humid].TrimEnd('%', ' '));
            if (!(humid is >= 0 and <= 100))
            {
                return (null, $"“{Short(cells[at.Humid])}” is not a relative humidity. It lies between 0 and 100 %.");
            }
        }

        return (new(line, when, celsius, humid), "");
    }

    private static DateTime? When(string cell, DateTime now, TimeZoneInfo zone)
    {
        if (Zoned().IsMatch(cell) && DateTimeOffset.TryParse(cell, CultureInfo.InvariantCulture, DateTimeStyles.None, out var zoned))
        {
            return zoned.Year is > 2000 and < 2200 ? zoned.UtcDateTime : null;
        }

        return DateTime.TryParseExact(cell, Dates, CultureInfo.InvariantCulture, DateTimeStyles.AllowInnerWhite, out var local) && local.Year is > 2000 and < 2200 ? LocalClock.Utc(local, now, zone) : null;
    }

    private static double? Number(string text)
    {
        text = text.Trim().Replace('−', '-');
        text = text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal) ? text.Replace(',', '.') : text;
        return double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    private static string[] Cells(string line, char mark) => [.. line.Split(mark).Select(c => c.Trim().Trim('"').Trim())];

    private static int Find(string[] names, Regex name) => Array.FindIndex(names, name.IsMatch);

    private static string Short(string cell) => cell.Length <= 30 ? cell : cell[..30] + "…";

    [GeneratedRegex("time|date|^at$|stamp|zeit|datum", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Time();

    [GeneratedRegex("temp|celsius|fahrenheit|°", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Temperature();

    [GeneratedRegex("humid|feuchte|^rh|%", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Humidity();

    [GeneratedRegex(@"fahrenheit|°\s*F|\(F\)|_f$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Fahrenheit();

    [GeneratedRegex(@"\s*°?\s*[CF]?$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Units();

    [GeneratedRegex(@"^[0-9]{4}-[0-9]{2}-[0-9]{2}[T ][0-9:.]{4,16}\s*(Z|[-+][0-9]{2}:?[0-9]{2})$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Zoned();
}
