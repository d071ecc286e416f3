using System.Globalization;

namespace Studio.Keepsakes;

/// <summary>A search that is meant as an entry number but has a slip in it.</summary>
internal static class EntrySlip
{
    private const int PrefixAndYear = 4;
    private const int Shortest = 6;
    private const int Longest = 10;

    /// <summary>The beginning of the numbers that may be meant, such as <c>KS-26-00042</c>; null when no number was meant.</summary>
    public static string? DigitsOf(string search)
    {
        var plain = new string([.. search.ToUpper(CultureInfo.InvariantCulture).Where(char.IsAsciiLetterOrDigit)]);
        if (plain.Length is < Shortest or > Longest || !plain.StartsWith("KS", StringComparison.Ordinal))
        {
            return null;
        }

        var digits = plain[2..].Replace('O', '0').Replace('I', '1').Replace('L', '1');
        var run = new string([.. digits.TakeWhile(char.IsAsciiDigit).Take(7)]);
        return run.Length < PrefixAndYear ? null : $"KS-{run[..2]}-{run[2..]}";
    }
}
