using System.Globalization;
using System.Text.RegularExpressions;

namespace Studio.Shell;

/// <summary>Reads a number as people type or paste it: "150 mm", "6 in", "1,5", "1.250,75", "12 oz". Never guesses where two readings are possible.</summary>
public static partial class Quantity
{
    // exact by definition: the international inch and the avoirdupois ounce and pound
    private static readonly Dictionary<string, (string Base, double Factor)> Units = new(StringComparer.OrdinalIgnoreCase)
    {
        ["mm"] = ("mm", 1), ["cm"] = ("mm", 10), ["m"] = ("mm", 1000), ["in"] = ("mm", 25.4), ["inch"] = ("mm", 25.4), ["inches"] = ("mm", 25.4), ["\""] = ("mm", 25.4), ["″"] = ("mm", 25.4),
        ["g"] = ("g", 1), ["gram"] = ("g", 1), ["grams"] = ("g", 1), ["kg"] = ("g", 1000), ["oz"] = ("g", 28.349523125), ["lb"] = ("g", 453.59237),
        ["ml"] = ("ml", 1), ["l"] = ("ml", 1000), ["cl"] = ("ml", 10), ["cm3"] = ("ml", 1), ["cm³"] = ("ml", 1),
        ["h"] = ("h", 1), ["hour"] = ("h", 1), ["hours"] = ("h", 1), ["hr"] = ("h", 1), ["day"] = ("h", 24), ["days"] = ("h", 24),
        ["min"] = ("min", 1), ["minute"] = ("min", 1), ["minutes"] = ("min", 1),
        ["%"] = ("%", 1), ["g/ml"] = ("g/ml", 1), ["g/cm3"] = ("g/ml", 1), ["g/cm³"] = ("g/ml", 1), ["kg/m3"] = ("g/ml", 0.001), ["kg/m³"] = ("g/ml", 0.001), ["mPas"] = ("mPa·s", 1), ["mPa·s"] = ("mPa·s", 1), ["cP"] = ("mPa·s", 1),
    };

    /// <summary>Reads <paramref name="text"/> in <paramref name="unit"/> (the field's own); another unit of the same kind is converted.</summary>
    /// <param name="text">What was typed; empty gives null without a complaint.</param>
    /// <param name="unit">The field's unit: mm, g, ml, h, min, %, g/ml, °C, mPa·s or empty.</param>
    /// <param name="typedUnit">The unit taken for a bare number, when the page shows another than the field keeps (inches over mm).</param>
    /// <returns>The number, or a sentence that says what to do.</returns>
    public static (double? Value, string? Wrong) Read(string? text, string unit, string? typedUnit = null)
    {
        if (string.IsNullOrWhiteSpace(text))
        {
            return (null, null);
        }

        var match = Shape().Match(text.Trim());
        if (!match.Success)
        {
            return (null, $"“{text.Trim()}” is not a number. Type digits, with a unit if you like, such as {Example(unit)}.");
        }

        if (Plain(match.Groups["n"].Value) is not { } number)
        {
            return (null, $"“{match.Groups["n"].Value}” can be read in two ways. Type it without thousands marks, such as 1250.75.");
        }

        var said = match.Groups["u"].Value is { Length: > 0 } u ? u : typedUnit ?? unit;
        if (unit is "°C" || said is "°C" or "C" or "°F" or "F")
        {
            return Degrees(number, said, unit);
        }

        if (said == unit)
        {
            return Finite(number);
        }

        if (!Units.TryGetValue(said, out var from) || from.Base != unit)
        {
            return (null, unit.Length == 0 ? $"Type the number alone, without “{said}”." : $"“{said}” is not a unit for this. Use {unit}, such as {Example(unit)}.");
        }

        return Finite(number * from.Factor);
    }

    private static (double? Value, string? Wrong) Degrees(double number, string said, string unit) => (unit, said) switch
    {
        ("°C", "°C" or "C" or "") => Finite(number),
        ("°C", "°F" or "F") => Finite((number - 32) / 1.8),
        ("°C", _) => (null, $"“{said}” is not a unit for this. Use °C, such as 19.5."),
        _ => (null, $"A temperature does not belong here. Use {unit}, such as {Example(unit)}."),
    };

    private static (double? Value, string? Wrong) Finite(double number) =>
        double.IsFinite(number) ? (number, null) : (null, "That number is too large to mean anything.");

    // the last of comma and point is the decimal mark; a single comma with exactly three digits behind it could be either
    private static double? Plain(string digits)
    {
        var text = digits.Replace(" ", "", StringComparison.Ordinal).Replace("\u00A0", "", StringComparison.Ordinal).Replace("\u202F", "", StringComparison.Ordinal).Replace("−", "-", StringComparison.Ordinal);
        int comma = text.LastIndexOf(','), point = text.LastIndexOf('.');
        if (comma >= 0 && point >= 0)
        {
            text = comma > point ? text.Replace(".", "", StringComparison.Ordinal).Replace(',', '.') : text.Replace(",", "", StringComparison.Ordinal);
        }
        else if (comma >= 0)
        {
            var behind = text.Length - comma - 1;
            if (text.IndexOf(',') != comma || (behind == 3 && comma is > 0 and <= 3 && text.TrimStart('-')[0] != '0'))
            {
                return null;
            }

            text = text.Replace(',', '.');
        }
        else if (point >= 0 && text.IndexOf('.') != point)
        {
            return null;
        }

        return double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;
    }

    private static string Example(string unit) => unit switch
    {
        "mm" => "150 or 6 in",
        "g" => "412.5",
        "g/ml" => "1.10",
        "h" => "6",
        "" => "2",
        _ => "12.5 " + unit,
    };

    [GeneratedRegex(@"^(?<n>[+\-−]?[\d][\d., \u00A0\u202F]*(?:e[+\-]?\d+)?|[+\-−]?[.,]\d+)\s*(?<u>[\p{L}%°""″/·³3]*)$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 200)]
    private static partial Regex Shape();
}
