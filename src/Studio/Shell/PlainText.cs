using System.Globalization;
using System.Text;

namespace Studio.Shell;

/// <summary>Typed or pasted text with its typography made plain, so that what looks like a number reads like one.</summary>
internal static class PlainText
{
    private static readonly Dictionary<char, string> Instead = new()
    {
        ['−'] = "-",
        ['–'] = "-",
        ['—'] = "-",
        ['‐'] = "-",
        ['‑'] = "-",
        ['’'] = "'",
        ['‘'] = "'",
        ['′'] = "'",
        ['″'] = "\"",
        ['”'] = "\"",
        ['“'] = "\"",
        ['º'] = "°",
        ['˚'] = "°",
        ['⁄'] = "/",
        ['½'] = " 1/2",
        ['¼'] = " 1/4",
        ['¾'] = " 3/4",
        ['⅛'] = " 1/8",
        ['⅜'] = " 3/8",
        ['⅝'] = " 5/8",
        ['⅞'] = " 7/8",
    };

    /// <summary>Any script's digits as 0 to 9, full-width marks as plain ones, one kind of blank, minus and quote; invisible marks left out.</summary>
    public static string Of(string? text)
    {
        var swapped = new StringBuilder();
        foreach (var c in text ?? "")
        {
            swapped.Append(Instead.GetValueOrDefault(c) ?? c.ToString());
        }

        var plain = new StringBuilder();
        foreach (var c in swapped.ToString().Normalize(NormalizationForm.FormKC))
        {
            Put(plain, c);
        }

        return plain.ToString().Trim();
    }

    private static void Put(StringBuilder plain, char c)
    {
        if (char.IsDigit(c))
        {
            plain.Append((char)('0' + CharUnicodeInfo.GetDecimalDigitValue(c)));
        }
        else if (char.IsWhiteSpace(c))
        {
            // several blanks in a row are a slip of the thumb, not a message
            plain.Append(plain.Length > 0 && plain[^1] != ' ' ? " " : "");
        }
        else if (CharUnicodeInfo.GetUnicodeCategory(c) is not (UnicodeCategory.Format or UnicodeCategory.Control))
        {
            plain.Append(c == '−' ? '-' : c);
        }
    }
}
