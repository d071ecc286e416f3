using Studio.Engine.Fit;

namespace Studio.Calibration;

/// <summary>What is known of a pasted log before it is read.</summary>
/// <param name="PouredAt">Start of the pour [UTC].</param>
/// <param name="PouredC">Temperature of the mix as noted at the pour [°C]; null when nobody did.</param>
/// <param name="Zone">The studio's zone, for times of day.</param>
/// <param name="BareHours">True when bare numbers are hours, false when they are minutes; a header that says a unit goes before it.</param>
/// <param name="Unit"><c>C</c>, <c>F</c>, or empty when the text must say or show it.</param>
public sealed record LogFrame(DateTime PouredAt, double? PouredC, TimeZoneInfo Zone, bool BareHours = false, string Unit = "");

/// <summary>A line that could not be read, and what to do about it.</summary>
/// <param name="Line">Counted from 1.</param>
public sealed record LogLineError(int Line, string Message);

/// <summary>What was read of a pasted log; the good lines are there whatever was wrong with others.</summary>
/// <param name="Readings">In time's order.</param>
/// <param name="Errors">By line.</param>
/// <param name="AsksFahrenheit">True when the numbers look like °F and nothing says so: ask before they are used.</param>
/// <param name="Understood">How the columns, times and units were taken.</param>
public sealed record LogPaste(IReadOnlyList<LogReading> Readings, IReadOnlyList<LogLineError> Errors, bool AsksFahrenheit, string Understood);

/// <summary>
/// Reads a thermometer's log as it is pasted: columns by tab, semicolon, comma or blanks; times of day, minutes, hours or dates; decimal points or commas; °C or °F;
/// with or without a header. Never throws on any text.
/// </summary>
public static class LogText
{
    /// <summary>Lines beyond this are not read.</summary>
    public const int MostLines = 1_000_000;

    private const int MostErrors = 100;
    private const int LongestLine = 400;

    /// <summary>Readings kept of a long log: the first and the warmest of each stretch.</summary>
    private const int MostKept = 4000;

    /// <summary>Reads a text.</summary>
    public static LogPaste Read(string? text, LogFrame frame)
    {
        var lines = (text ?? "").Split('\n').Take(MostLines).Select((l, i) => (Text: l.Trim('\r', ' ', '\uFEFF'), Number: i + 1)).Where(l => l.Text.Trim().Length > 0).ToList();
        if (lines.Count == 0)
        {
            return new([], [], AsksFahrenheit: false, "");
        }

        var columns = LogColumns.Of([.. lines.Take(20).Select(l => l.Text.Length > LongestLine ? l.Text[..LongestLine] : l.Text)]);
        var times = new LogTimes(frame, columns);
        var (readings, errors, fahrenheit) = (new List<LogReading>(), new List<LogLineError>(), 0);
        foreach (var (line, number) in columns.Header ? lines.Skip(1) : lines)
        {
            var (reading, inF, wrong) = line.Length > LongestLine ? (null, false, "This line is too long to be a reading.") : One(columns.Split(line), columns, times, frame);
            fahrenheit += inF ? 1 : 0;
            if (reading is not null)
            {
                readings.Add(reading);
            }
            else if (errors.Count < MostErrors)
            {
                errors.Add(new(number, wrong));
            }
        }

        var read = readings.Count;
        var order = Thin([.. readings.OrderBy(r => r.AfterHours)]);
        return new(order, errors, fahrenheit == 0 && frame.Unit.Length == 0 && LooksLikeFahrenheit(order, frame.PouredC), Understood(times, fahrenheit, read, order.Count));
    }

    /// <summary>A log that begins far above the mix, and not once it is converted.</summary>
    public static bool LooksLikeFahrenheit(IReadOnlyList<LogReading> order, double? pouredC) =>
        order.Count > 0 && order[0].Celsius is var first && first > (pouredC ?? 22) + 20 && Math.Abs(((first - 32) / 1.8) - (pouredC ?? 22)) < (pouredC is null ? 12 : 8);

    private static (LogReading? Reading, bool Fahrenheit, string Wrong) One(IReadOnlyList<string> cells, LogColumns columns, LogTimes times, LogFrame frame)
    {
        if (columns.Unclear(cells))
        {
            return (null, false, "Commas stand between the columns and perhaps within the numbers too. Put semicolons between the columns, or give them a header.");
        }

        if (cells.Count <= Math.Max(columns.Time, columns.Temperature))
        {
            return (null, false, "This line has one column. A line is a time and a temperature, such as “14:10; 31.5”.");
        }

        if (LogNumbers.Temperature(cells[columns.Temperature]) is not { } temperature)
        {
            return (null, false, $"“{Short(cells[columns.Temperature])}” is not a temperature. Type it as a number, such as 31.5.");
        }

        if (times.Hours(cells) is not { } hours)
        {
            return (null, false, $"“{Short(cells[columns.Time])}” is not a time. Type 14:10, or the date and time, or the minutes since the pour.");
        }

        var inF = temperature.Unit == 'F' || (temperature.Unit == ' ' && (columns.Fahrenheit || (frame.Unit == "F" && !columns.Celsius)));
        var celsius = inF ? (temperature.Value - 32) / 1.8 : temperature.Unit == 'K' ? temperature.Value - 273.15 : temperature.Value;
        return hours is < -1000 or > 5000
            ? (null, false, "This time lies weeks away from the pour. Look at the date.")
            : celsius is < -273.15 or > 1000
            ? (null, false, "No layer is so. Look at the number and its unit.")
            : (new(Math.Round(hours, 5), Math.Round(celsius, 3)), inF, "");
    }

    private static IReadOnlyList<LogReading> Thin(List<LogReading> order)
    {
        if (order.Count <= MostKept)
        {
            return order;
        }

        var (from, span) = (order[0].AfterHours, Math.Max(1e-9, order[^1].AfterHours - order[0].AfterHours));
        return [.. order.GroupBy(r => (int)((r.AfterHours - from) / span * (MostKept / 2)))
            .SelectMany(g => new[] { g.First(), g.MaxBy(r => r.Celsius)! }.Distinct().OrderBy(r => r.AfterHours))];
    }

    private static string Understood(LogTimes times, int fahrenheit, int read, int kept) => string.Join(' ', new[]
    {
        $"{(read == 1 ? "1 reading" : $"{read} readings")} read{(kept < read ? $", {kept} of them kept: the first and the warmest of each stretch" : "")}.",
        read > 0 ? times.Words : "",
        fahrenheit > 0 ? "Temperatures in °F were turned into °C." : "",
    }.Where(w => w.Length > 0));

    private static string Short(string cell) => cell.Length <= 30 ? cell : cell[..30] + "…";
}
