using System.Text;

namespace Studio.Data;

/// <summary>Turns what is typed into a search box into LIKE patterns, one a word; a line is found when every word stands somewhere in it.</summary>
public static class Matching
{
    /// <summary>The escape character to hand to <c>EF.Functions.Like</c>.</summary>
    public const string Escape = "\\";

    private const int MostWords = 8;
    private const int MostLetters = 60;

    /// <summary>The patterns, to be compared with lower-cased text; none for an empty box.</summary>
    public static IReadOnlyList<string> Patterns(string? typed) =>
        [.. (typed ?? "").Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Take(MostWords).Select(Pattern)];

    // SQLite lowers only A to Z, so any other letter is left open: "élodie" finds "Élodie"
    private static string Pattern(string word)
    {
        var pattern = new StringBuilder("%");
        foreach (var rune in word.EnumerateRunes().Take(MostLetters))
        {
            _ = rune switch
            {
                { Value: '%' or '_' or '\\' } => pattern.Append('\\').Append((char)rune.Value),
                { IsAscii: true } => pattern.Append(char.ToLowerInvariant((char)rune.Value)),
                _ => pattern.Append('_'),
            };
        }

        return pattern.Append('%').ToString();
    }
}
