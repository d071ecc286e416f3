using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Studio.Engine.Custody;

/// <summary>
/// A keepsake's entry number, <c>KS-YY-NNNNN-C</c>: the year of entry, a running number and a check character over the rest.
/// It is what stands on the label, so that no keepsake is taken for another.
/// </summary>
public sealed record EntryNumber
{
    private const int Length = 10;
    private const int PrefixLength = 2;

    private EntryNumber(int year, int running, char check) => (Year, Running, Check) = (year, running, check);

    /// <summary>Year of entry, 2000 to 2099.</summary>
    public int Year { get; }

    /// <summary>Running number within the year, 1 to 99 999.</summary>
    public int Running { get; }

    /// <summary>Check character, ISO 7064 MOD 37,36.</summary>
    public char Check { get; }

    /// <summary>Makes the number.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The year is not 2000 to 2099, or the running number not 1 to 99 999.</exception>
    public static EntryNumber Create(int year, int running)
    {
        Require.Within(year, 2000, 2099, "(year)");
        Require.Within(running, 1, 99_999, "(running number)");
        return new(year, running, CheckCharacter.For(Payload(year, running)));
    }

    /// <summary>
    /// Reads a number as people type it: lower case, spaces, any dashes or none, letter O for zero and I or L for one among the
    /// digits. Not in the check character, where both a letter and a digit can be right.
    /// </summary>
    public static bool TryParse(string? text, [NotNullWhen(true)] out EntryNumber? number)
    {
        var outcome = Parse(text);
        number = outcome.Ok ? outcome.Value : null;
        return outcome.Ok;
    }

    /// <summary>Reads a number like <see cref="TryParse"/>, and says what is wrong with one that cannot be read.</summary>
    public static Outcome<EntryNumber> Parse(string? text)
    {
        var plain = Plain(text ?? "");
        if (plain.Length != Length || !plain.StartsWith("KS", StringComparison.Ordinal) || !char.IsAsciiLetterOrDigit(plain[^1])
            || !int.TryParse(plain.AsSpan(PrefixLength, Length - PrefixLength - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var digits))
        {
            return Refuse("An entry number looks like KS-26-00042-L: KS, two digits of the year, five digits, one check character. Look at the label and type it again.");
        }

        var (year, running) = (2000 + (digits / 100_000), digits % 100_000);
        if (running == 0)
        {
            return Refuse("Entry numbers start at 00001. Look at the label and type it again.");
        }

        var made = Create(year, running);
        return made.Check == plain[^1]
            ? Outcome<EntryNumber>.Of(made)
            : Refuse("The last character does not fit the rest, so one of them is wrong. Compare each with the label; mind letter O and zero, letter I and one.");
    }

    /// <summary>As printed: <c>KS-26-00042-L</c>.</summary>
    public override string ToString() =>
        string.Create(CultureInfo.InvariantCulture, $"KS-{Year % 100:00}-{Running:00000}-{Check}");

    private static string Payload(int year, int running) =>
        string.Create(CultureInfo.InvariantCulture, $"KS{year % 100:00}{running:00000}");

    private static string Plain(string text)
    {
        var kept = text.Where(c => !char.IsWhiteSpace(c) && char.GetUnicodeCategory(c) != UnicodeCategory.DashPunctuation && c != '−')
            .Select(char.ToUpperInvariant).ToArray();
        for (var i = PrefixLength; i < kept.Length - 1; i++)
        {
            kept[i] = kept[i] switch { 'O' => '0', 'I' or 'L' => '1', var c => c };
        }

        return new(kept);
    }

    private static Outcome<EntryNumber> Refuse(string message) => Outcome<EntryNumber>.Refused([new("entryNumber", message)]);
}
