using UglyToad.PdfPig;

namespace Studio.Tests.Papers;

/// <summary>A paper's words as a reader sees them.</summary>
internal static class PaperWords
{
    /// <summary>All words in the order they were set, one blank between two.</summary>
    public static string Of(byte[] content)
    {
        using var pdf = PdfDocument.Open(content);
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text)).Replace('\u00A0', ' ');
    }

    /// <summary>As <see cref="Of"/>, page by page.</summary>
    public static IReadOnlyList<string> Pages(byte[] content)
    {
        using var pdf = PdfDocument.Open(content);
        return [.. pdf.GetPages().Select(p => string.Join(' ', p.GetWords().Select(w => w.Text)).Replace('\u00A0', ' '))];
    }
}
