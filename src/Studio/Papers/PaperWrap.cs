using System.Buffers;
using System.Globalization;
using System.Text;

namespace Studio.Papers;

/// <summary>Breaks text into lines that fit a width, whatever it holds.</summary>
internal static class PaperWrap
{
    private static readonly SearchValues<char> SoftMarks = SearchValues.Create("-/@._?&=");

    /// <summary>What can be set: composed letters, plain spaces, no control marks. Never null.</summary>
    public static string Clean(string? text)
    {
        if (string.IsNullOrEmpty(text))
        {
            return "";
        }

        var clean = new StringBuilder(text.Length);
        foreach (var rune in text.ReplaceLineEndings("\n").EnumerateRunes())
        {
            clean.Append(rune.Value switch
            {
                '\n' => "\n",
                '\t' => " ",
                0x202F => "\u00A0",
                0x00AD => "",
                _ => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format ? "" : rune.ToString(),
            });
        }

        return clean.ToString().Normalize(NormalizationForm.FormC);
    }

    /// <summary>Lines of at most <paramref name="width"/>; a word that is wider than a line is cut between letters.</summary>
    /// <param name="measure">Width of a string, in the unit of <paramref name="width"/>.</param>
    public static IReadOnlyList<string> Lines(string text, double width, Func<string, double> measure)
    {
        var lines = new List<string>();
        foreach (var paragraph in Clean(text).Split('\n'))
        {
            Fill(lines, paragraph, width, measure);
        }

        return lines;
    }

    private static void Fill(List<string> lines, string paragraph, double width, Func<string, double> measure)
    {
        var line = "";
        foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : line + " " + word;
            if (measure(longer) <= width)
            {
                line = longer;
                continue;
            }

            if (line.Length > 0)
            {
                lines.Add(line);
            }

            line = Cut(lines, word, width, measure);
        }

        lines.Add(line);
    }

    /// <summary>Adds the full lines of an over-long word and returns its rest.</summary>
    private static string Cut(List<string> lines, string word, double width, Func<string, double> measure)
    {
        while (measure(word) > width)
        {
            var letters = StringInfo.ParseCombiningCharacters(word);
            var fit = 1;
            while (fit < letters.Length - 1 && measure(word[..letters[fit + 1]]) <= width)
            {
                fit++;
            }

            if (fit >= letters.Length)
            {
                break;
            }

            var end = Softer(word, letters[fit]);
            lines.Add(word[..end]);
            word = word[end..];
        }

        return word;
    }

    /// <summary>Where a mark that invites a break stands in the latter half, the cut goes after it: addresses, double names.</summary>
    private static int Softer(string word, int end)
    {
        var mark = word.AsSpan(0, end).LastIndexOfAny(SoftMarks);
        return mark >= end / 2 ? mark + 1 : end;
    }
}
