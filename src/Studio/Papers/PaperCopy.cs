using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.IO;

namespace Studio.Papers;

/// <summary>Marks a stored paper as a copy, without touching a word that stands on it.</summary>
public static class PaperCopy
{
    private const double FromTopMm = 9;

    /// <summary>The same pages with one line at the top of each.</summary>
    /// <param name="pdf">A paper of ours.</param>
    /// <param name="words">"Copy", "Copy. Replaced by version 2".</param>
    public static byte[] Mark(byte[] pdf, string words)
    {
        ArgumentNullException.ThrowIfNull(pdf);
        PaperFonts.Install();
        using var read = new MemoryStream(pdf);
        using var document = PdfReader.Open(read, PdfDocumentOpenMode.Modify);
        var (title, author) = (document.Info.Title, document.Info.Author);
        var font = new XFont(PaperFonts.Sans, 9, XFontStyleEx.Bold);
        foreach (var page in document.Pages)
        {
            var before = page.Contents.Elements.Count;
            using (var graphics = XGraphics.FromPdfPage(page, XGraphicsPdfPageOptions.Append))
            {
                graphics.DrawString(words, font, new XSolidBrush(PaperInks.Amber), new XRect(0, Measure.Mm(FromTopMm), page.Width.Point, 12), XStringFormats.TopCenter);
            }

            AsArtifact(page, before);
        }

        using var file = new MemoryStream();
        document.Save(file, closeStream: false);
        return PdfFinisher.Finish(file.ToArray(), title, author);
    }

    // what is no part of the document's own words is no part of what a screen reader reads as them (PDF/UA-1, 7.1)
    private static void AsArtifact(PdfPage page, int before)
    {
        for (var i = before; i < page.Contents.Elements.Count; i++)
        {
            var content = page.Contents.Elements.GetDictionary(i)!;
            content.Stream!.TryUncompress();
            content.Stream.Value = [.. Encoding.ASCII.GetBytes("/Artifact BMC\n"), .. content.Stream.Value, .. Encoding.ASCII.GetBytes("\nEMC\n")];
        }
    }
}
