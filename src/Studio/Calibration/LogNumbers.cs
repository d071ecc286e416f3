using System.Globalization;
using System.Text.RegularExpressions;

namespace Studio.Calibration;

/// <summary>Numbers of a pasted log: a point or one comma for the decimals, with or without a unit.</summary>
internal static partial class LogNumbers
{
    /// <summary>A temperature and the unit behind it: <c>C</c>, <c>F</c>, <c>K</c> or a blank.</summary>
    internal static (double Value, char Unit)? Temperature(string cell)
    {
        var match = Shape().Match(cell);
        return match.Success && Plain(match.Groups["n"].Value) is { } value
            ? (value, match.Groups["u"].Value.ToUpperInvariant() is { Length: 1 } unit ? unit[0] : ' ')
            : null;
    }

    /// <summary>A bare number; null where it is none.</summary>
    internal static double? Plain(string cell)
    {
        var text = cell.Trim().Replace('−', '-');
        if (text.Count(c => c == ',') == 1 && !text.Contains('.', StringComparison.Ordinal))
        {
            text = text.Replace(',', '.');
        }

        return double.TryParse(text, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value) ? value : null;
    }

    [GeneratedRegex(@"^\s*(?<n>[-+−]?[0-9.,]{1,20}(?:[eE][-+]?[0-9]{1,3})?)\s*[°º˚]?\s*(?<u>[CFKcfk]?)\s*$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Shape();
}
