using System.Text.RegularExpressions;

namespace Studio.Calibration;

/// <summary>Which column of a pasted log is what.</summary>
internal sealed partial class LogColumns
{
    private readonly char separator;

    private LogColumns(char separator, int time, int temperature)
    {
        (this.separator, Time, Temperature) = (separator, time, temperature);
    }

    /// <summary>True when the first line names the columns.</summary>
    internal bool Header { get; private init; }

    internal int Time { get; }

    internal int Temperature { get; }

    /// <summary>A column of dates beside the one of times; −1 where there is none.</summary>
    internal int Date { get; private init; } = -1;

    /// <summary>Unit that the header names for bare numbers [h]; null when it names none.</summary>
    internal double? HoursPerUnit { get; private init; }

    internal bool Fahrenheit { get; private init; }

    internal bool Celsius { get; private init; }

    /// <summary>Finds the columns from the first lines.</summary>
    internal static LogColumns Of(IReadOnlyList<string> first)
    {
        var between = Separator(first);
        var named = Split(first[0], between);
        var header = named.Count > 0 && named.All(c => LogNumbers.Temperature(c) is null && !Digit().IsMatch(c)) ? named : named.Any(n => NameOfTemperature().IsMatch(n)) && named.All(c => LogNumbers.Temperature(c) is null) ? named : null;
        if (header is null)
        {
            // a date and a time in columns of their own
            var cells = first.Select(l => Split(l, between)).FirstOrDefault(c => c.Count > 2 && DateOnly().IsMatch(c[0]) && ClockOnly().IsMatch(c[1]));
            return cells is null ? new(between, 0, 1) : new(between, 1, 2) { Date = 0 };
        }

        var temperature = Find(header, NameOfTemperature()) is var t and >= 0 ? t : Math.Min(1, header.Count - 1);
        var date = Find(header, NameOfDate());
        var time = Find(header, NameOfTime()) is var at and >= 0 && at != temperature ? at : date >= 0 ? date : temperature == 0 ? 1 : 0;
        return new(between, time, temperature)
        {
            Header = true,
            Date = date >= 0 && date != time && !header[date].Contains("time", StringComparison.OrdinalIgnoreCase) ? date : -1,
            HoursPerUnit = time < header.Count ? Unit(header[time]) : null,
            Fahrenheit = InFahrenheit().IsMatch(header[temperature]),
            Celsius = InCelsius().IsMatch(header[temperature]),
        };
    }

    /// <summary>The cells of a line.</summary>
    internal IReadOnlyList<string> Split(string line) => Split(line, separator);

    /// <summary>True where commas may part columns or decimals, and nothing tells which.</summary>
    internal bool Unclear(IReadOnlyList<string> cells) => separator == ',' && !Header && cells.Count > 2 && cells.Skip(1).All(c => c.Length > 0 && c.All(char.IsAsciiDigit));

    private static List<string> Split(string line, char separator) => separator == ' '
        ? Blanks(line)
        : [.. line.Split(separator).Select(c => c.Trim().Trim('"').Trim())];

    // "2026-11-25 14:10 31,5": a date and a time keep together as columns of their own; a unit stays with its number
    private static List<string> Blanks(string line)
    {
        List<string> cells = [];
        foreach (var cell in line.Split([' ', '\t'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (cells.Count > 0 && OnlyUnit().IsMatch(cell))
            {
                cells[^1] += " " + cell;
            }
            else
            {
                cells.Add(cell);
            }
        }

        return cells;
    }

    private static char Separator(IReadOnlyList<string> first)
    {
        foreach (var mark in "\t;|")
        {
            if (first.Any(l => l.Contains(mark, StringComparison.Ordinal)))
            {
                return mark;
            }
        }

        // a comma parts columns where what lies between commas can be read, most of the time
        var parted = first.Count(l => l.Contains(',', StringComparison.Ordinal) && Split(l, ',') is { Count: >= 2 } cells && LogTimes.CouldBe(cells[0]) && cells.Skip(1).All(c => !c.Contains(' ', StringComparison.Ordinal) || LogNumbers.Temperature(c) is not null || LogTimes.CouldBe(c)));
        var names = first[0].Contains(',', StringComparison.Ordinal) && !Digit().IsMatch(first[0]);
        return parted * 2 > first.Count || (names && parted > 0) ? ',' : ' ';
    }

    private static int Find(IReadOnlyList<string> header, Regex name) => header.ToList().FindIndex(c => name.IsMatch(c));

    private static double? Unit(string name) => Seconds().IsMatch(name) ? 1 / 3600.0 : Minutes().IsMatch(name) ? 1 / 60.0 : Hours().IsMatch(name) ? 1 : null;

    [GeneratedRegex("[0-9]", RegexOptions.None, 200)]
    private static partial Regex Digit();

    [GeneratedRegex(@"temp|celsius|fahrenheit|°|probe|core|middle|\b[CF]\b|^[tT][0-9]$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex NameOfTemperature();

    [GeneratedRegex(@"time|clock|elapsed|min|hour|sec|uhr|zeit|stunde|stamp|^\s*(t|h|s)\s*$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex NameOfTime();

    [GeneratedRegex("date|day|datum", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex NameOfDate();

    [GeneratedRegex(@"fahrenheit|°\s*F|\bF\b|degF", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex InFahrenheit();

    [GeneratedRegex(@"celsius|°\s*C|\bC\b|degC", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex InCelsius();

    [GeneratedRegex(@"sec|\bs\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Seconds();

    [GeneratedRegex(@"min", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Minutes();

    [GeneratedRegex(@"hour|stunde|\bh\b", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Hours();

    [GeneratedRegex(@"^[0-9]{1,4}[-./][0-9]{1,2}[-./][0-9]{1,4}\.?$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex DateOnly();

    [GeneratedRegex(@"^[0-9]{1,2}:[0-9]{2}", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex ClockOnly();

    [GeneratedRegex(@"^(°?[CFK]|°|min|h|am|pm|a\.m\.|p\.m\.)$", RegexOptions.IgnoreCase | RegexOptions.ExplicitCapture, 200)]
    private static partial Regex OnlyUnit();
}
