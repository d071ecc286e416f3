using System.Globalization;
using System.Text;

namespace Studio.Papers;

/// <summary>
/// An entry number as it is read out over a telephone: letters by the spelling alphabet of the International Civil Aviation
/// Organization (Annex 10, volume II; an open standard), digits one by one. Anything else only parts the groups.
/// </summary>
public static class EntryWords
{
    private static readonly string[] Letters =
    [
        "alfa", "bravo", "charlie", "delta", "echo", "foxtrot", "golf", "hotel", "india", "juliett", "kilo", "lima", "mike",
        "november", "oscar", "papa", "quebec", "romeo", "sierra", "tango", "uniform", "victor", "whiskey", "x-ray", "yankee", "zulu",
    ];

    private static readonly string[] Digits = ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine"];

    /// <summary>"KS-26-00042-H" becomes "kilo sierra, two six, zero zero zero four two, hotel".</summary>
    public static string Spell(string entryNumber) =>
        string.Join(", ", Groups(entryNumber).Select(g => string.Join(' ', g.Select(Word))));

    /// <summary>"KS-26-00042-H" becomes "K S 26 00042 H": letters apart, digits in their groups.</summary>
    public static string Spaced(string entryNumber) =>
        string.Join(' ', Groups(entryNumber).Select(g => char.IsAsciiDigit(g[0]) ? g : string.Join(' ', g.AsEnumerable())));

    private static string Word(char c) => char.IsAsciiDigit(c) ? Digits[c - '0'] : Letters[c - 'A'];

    /// <summary>Runs of letters and runs of digits.</summary>
    private static List<string> Groups(string entryNumber)
    {
        var groups = new List<string>();
        var run = new StringBuilder();
        foreach (var c in entryNumber.ToUpper(CultureInfo.InvariantCulture).Append(' '))
        {
            if (run.Length > 0 && (!char.IsAsciiLetterOrDigit(c) || char.IsAsciiDigit(c) != char.IsAsciiDigit(run[^1])))
            {
                groups.Add(run.ToString());
                run.Clear();
            }

            if (char.IsAsciiLetterOrDigit(c))
            {
                run.Append(c);
            }
        }

        return groups;
    }
}
