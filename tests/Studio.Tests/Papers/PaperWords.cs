using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace Studio.Tests.Papers;

/// <summary>A paper's words as a reader selects them: block by block in the order they were set, lines joined by blanks.</summary>
internal static class PaperWords
{
    /// <summary>All of them.</summary>
    public static string Of(byte[] content) => string.Join(' ', Pages(content));

    /// <summary>As <see cref="Of(byte[])"/>, page by page.</summary>
    public static IReadOnlyList<string> Pages(byte[] content)
    {
        using var pdf = PdfDocument.Open(content);
        return [.. pdf.GetPages().Select(p => Of(p).Replace('\u00A0', ' '))];
    }

    /// <summary>Of one page, blanks as they were set.</summary>
    public static string Of(Page page) => string.Join(' ', page.GetMarkedContents().Where(m => m.Letters.Count > 0).Select(Line));

    private static string Line(MarkedContentElement content)
    {
        var text = new StringBuilder();
        var last = double.NaN;
        foreach (var letter in content.Letters)
        {
            if (!double.IsNaN(last) && Math.Abs(letter.StartBaseLine.Y - last) > 1)
            {
                text.Append(' ');
            }

            text.Append(letter.Value);
            last = letter.StartBaseLine.Y;
        }

        return text.ToString();
    }
}
