using System.Globalization;
using System.Text.RegularExpressions;

namespace Studio.Shell;

/// <summary>
/// Reads a number as people type or paste it: "150 mm", "6 in", "5 1/2\"", "1,5", "1.250,75", "68 °F", "£12.50".
/// Where two readings are possible it asks and never guesses.
/// </summary>
public static partial class Quantity
{
    private const int LongestText = 60;

    /// <summary>Reads <paramref name="text"/> in <paramref name="unit"/> (the field's own); another unit of the same kind is converted.</summary>
    /// <param name="text">What was typed; empty gives null without a complaint.</param>
    /// <param name="unit">The field's unit: mm, g, ml, h, min, %, g/ml, °C, °, mPa·s, an ISO 4217 code or empty.</param>
    /// <param name="typedUnit">The unit taken for a bare number, when the page shows another than the field keeps (inches over mm).</param>
    /// <returns>The number, or a sentence that says what to do.</returns>
    public static (double? Value, string? Wrong) Read(string? text, string unit, string? typedUnit = null)
    {
        var plain = PlainText.Of(text);
        if (plain.Length == 0)
        {
            return (null, null);
        }

        if (plain.Length > LongestText)
        {
            return (null, $"That is too long for a number. Type digits, with a unit if you like, such as {UnitTable.Example(unit)}.");
        }

        var match = Shape().Match(plain);
        return match.Success ? Whole(match, plain, unit, typedUnit)
            : Range().IsMatch(plain) ? (null, $"“{plain}” is a range. Type one number: where the sheet prints a range, take its safer end.")
            : (null, $"“{plain}” is not a number. Type digits, with a unit if you like, such as {UnitTable.Example(unit)}.");
    }

    private static (double? Value, string? Wrong) Whole(Match match, string plain, string unit, string? typedUnit)
    {
        var (number, wrong) = Number(match, plain);
        if (wrong is not null)
        {
            return (null, wrong);
        }

        var said = match.Groups["c"].Value + match.Groups["u"].Value.Replace(" ", "", StringComparison.Ordinal);
        var (value, misfit) = UnitTable.Convert(number, said.Length > 0 ? said : typedUnit ?? unit, unit);
        return value is { } v && !double.IsFinite(v) ? (null, "That number is too large to mean anything.") : (value, misfit);
    }

    private static (double Number, string? Wrong) Number(Match match, string plain)
    {
        var sign = match.Groups["s"].Value == "-" ? -1 : 1;
        if (match.Groups["d"].Success)
        {
            var whole = match.Groups["w"].Success ? double.Parse(match.Groups["w"].Value, CultureInfo.InvariantCulture) : 0;
            var below = double.Parse(match.Groups["d"].Value, CultureInfo.InvariantCulture);
            return below == 0
                ? (0, $"“{plain}” divides by nothing. Type the number with a point, such as 5.5.")
                : (sign * (whole + (double.Parse(match.Groups["t"].Value, CultureInfo.InvariantCulture) / below)), null);
        }

        var digits = match.Groups["n"].Value;
        if (Ambiguous().IsMatch(digits))
        {
            var grouped = digits.Replace(",", "", StringComparison.Ordinal);
            var fraction = Trimmed(digits.Replace(',', '.'));
            return (0, $"“{digits}” could mean {grouped} or {fraction}. Type it without the comma.");
        }

        return Digits.Plain(digits) is { } invariant && double.TryParse(invariant + match.Groups["e"].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number)
            ? (sign * number, null)
            : (0, $"“{digits}” is not written as one number. Type it without thousands marks, such as 1250.75.");
    }

    private static string Trimmed(string fraction) => fraction.TrimEnd('0').TrimEnd('.');

    // one comma with exactly three digits behind it: thousands for some, a decimal mark for others
    [GeneratedRegex(@"^[1-9][0-9]{0,2},[0-9]{3}$", RegexOptions.ExplicitCapture, 200)]
    private static partial Regex Ambiguous();

    [GeneratedRegex(@"^[0-9.,]+ ?\p{L}* ?(-|to|…|\.\.) ?[0-9][0-9.,]* ?[\p{L}%°/]*$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 200)]
    private static partial Regex Range();

    // currency mark, sign, then a fraction (5 1/2) or digits with marks and an exponent, then a unit
    [GeneratedRegex(@"^(?<s>[+-]?) ?(?<c>\p{Sc}?) ?(((?<w>[0-9]+) )?(?<t>[0-9]+)/(?<d>[0-9]+)|(?<n>[0-9]([0-9., ']*[0-9.,])?|[.,][0-9]+)(?<e>e[+-]?[0-9]+)?) ?(?<u>([\p{L}\p{Sc}%°""'/·⋅ ]*[\p{L}\p{Sc}%°""'/·⋅][23]?)?)$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 200)]
    private static partial Regex Shape();

    private static partial class Digits
    {
        /// <summary>The digits with a point as their only mark, or null where the marks make no sense.</summary>
        public static string? Plain(string digits)
        {
            if (English().IsMatch(digits))
            {
                return Keep(digits, ',', '.');
            }

            return Continental().IsMatch(digits) ? Keep(digits, '.', ',') : null;
        }

        private static string Keep(string digits, char group, char point) =>
            string.Concat(digits.Where(c => c != group && c is not (' ' or '\''))).Replace(point, '.');

        // groups of three throughout, or none; groups may be marked by a blank or an apostrophe as well
        [GeneratedRegex(@"^([1-9][0-9]{0,2}(,[0-9]{3})+|[0-9]{1,3}([ '][0-9]{3})+|[0-9]*)(\.[0-9]*)?$", RegexOptions.ExplicitCapture, 200)]
        private static partial Regex English();

        [GeneratedRegex(@"^([1-9][0-9]{0,2}(\.[0-9]{3})+|[0-9]{1,3}([ '][0-9]{3})+|[0-9]*)(,[0-9]*)?$", RegexOptions.ExplicitCapture, 200)]
        private static partial Regex Continental();
    }
}
