using SkiaSharp;
using Studio.Papers;

namespace Studio.Tests.Papers;

/// <summary>The fonts as PDFsharp gets them, held against the font files as Skia reads them.</summary>
public sealed class PaperGlyphTests
{
    public static TheoryData<string> Faces => ["SourceSans3-Regular", "SourceSans3-SemiBold", "SourceSerif4-Regular", "SourceSerif4-SemiBold", "SourceSerif4-Italic"];

    [Theory, MemberData(nameof(Faces))]
    public void A_flattened_font_draws_every_glyph_as_before(string face)
    {
        var original = Original(face);
        using var before = new SKFont(SKTypeface.FromStream(new MemoryStream(original)), 1000);
        using var after = new SKFont(SKTypeface.FromStream(new MemoryStream(PaperGlyphs.Flatten(original))), 1000);
        after.Typeface.GlyphCount.ShouldBe(before.Typeface.GlyphCount);
        for (ushort glyph = 0; glyph < before.Typeface.GlyphCount; glyph++)
        {
            using var was = before.GetGlyphPath(glyph);
            using var now = after.GetGlyphPath(glyph);
            var same = now is null ? was is null : string.Equals(now.ToSvgPathData(), was!.ToSvgPathData(), StringComparison.Ordinal) || Near(was.TightBounds, now.TightBounds);
            same.ShouldBeTrue($"glyph {glyph} of {face}");
        }
    }

    [Theory]
    [InlineData("е", "ё")]
    [InlineData("⁄", "%")]
    [InlineData("o", "ő")]
    public void Marks_and_rings_reach_the_printed_page(string plain, string marked)
    {
        Tool.Need("pdftoppm");
        foreach (var type in new[] { PaperType.Family(), PaperType.Work() })
        {
            Ink(marked, type).ShouldBeGreaterThan(Ink(plain, type) * 1.05);
        }
    }

    private static double Ink(string text, PaperType type)
    {
        var setup = new PaperSetup("Ink", PaperSize.A4, type, "en", "", "", PaperSamples.Now) { HasFoot = false };
        var pdf = PaperFlow.Render(setup, flow => flow.Text(string.Concat(Enumerable.Repeat(text, 20))));
        using var page = SKBitmap.Decode(PaperTools.Pages(pdf, 150)[0]);
        return page.Pixels.Sum(p => 255 - p.Red);
    }

    /// <summary>A turned part of a part may differ by a rounded unit.</summary>
    private static bool Near(SKRect a, SKRect b) =>
        Math.Abs(a.Left - b.Left) <= 1 && Math.Abs(a.Right - b.Right) <= 1 && Math.Abs(a.Top - b.Top) <= 1 && Math.Abs(a.Bottom - b.Bottom) <= 1;

    private static byte[] Original(string face)
    {
        using var stream = typeof(PaperFonts).Assembly.GetManifestResourceStream(face + ".ttf")!;
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }
}
