using SkiaSharp;
using Studio.Engine.Parts;
using Studio.Papers;
using Studio.Parts;
using Studio.Tests.Papers;
using Studio.Tests.Pieces;
using UglyToad.PdfPig;

namespace Studio.Tests.Parts;

/// <summary>The pages at true size, rendered by poppler at 300 dpi and measured: a pixel is 0.085 mm.</summary>
public sealed class PartsPaperTests
{
    private const int Dpi = 300;
    private const double CloseMm = 0.2;

    public static TheoryData<PaperSize> Sizes => [PaperSize.A4, PaperSize.Letter];

    [Theory, MemberData(nameof(Sizes))]
    public void Every_part_measures_on_paper_what_it_is(PaperSize size)
    {
        Tool.Need("pdftoppm");
        var model = PartsSamples.Paper(PartsSamples.Piece());
        var sheets = PartsPaper.TrueSize(model.Plan, size).Sheets;
        var pages = PaperTools.Pages(PartsPaper.Create(model, size), Dpi);
        pages.Count.ShouldBe(1 + sheets.Count);
        for (var i = 0; i < sheets.Count; i++)
        {
            using var page = SKBitmap.Decode(pages[i + 1]);
            foreach (var p in sheets[i])
            {
                var (left, top) = (PartsPaper.FieldLeftMm + p.XMm, PartsPaper.FieldTopMm + p.YMm);
                var across = Lines(page, left - 1, left + p.WidthMm + 1, top + (p.HeightMm * 0.31), along: true);
                (across[^1] - across[0]).ShouldBe(p.WidthMm, CloseMm, p.Part.Name);
                across[0].ShouldBe(left, CloseMm);
                var down = Lines(page, top - 1, top + p.HeightMm + 1, left + (p.WidthMm * 0.31), along: false);
                (down[^1] - down[0]).ShouldBe(p.HeightMm, CloseMm, p.Part.Name);
            }
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void The_check_bars_measure_100_mm_and_4_in_both_ways(PaperSize size)
    {
        Tool.Need("pdftoppm");
        using var page = SKBitmap.Decode(PaperTools.Pages(PartsPaper.Create(PartsSamples.Paper(PartsSamples.Piece()), size), Dpi)[1]);
        var bottom = (size is PaperSize.A4 ? 297 : 279.4) - 20;
        foreach (var (at, length) in new[] { (2.0, 100.0), (10.0, 101.6) })
        {
            // beside the bar, where only its two end marks reach
            var across = Lines(page, 27, 132, bottom - at - 1.3, along: true);
            across.Count.ShouldBe(2);
            (across[1] - across[0]).ShouldBe(length, CloseMm);
            var down = Lines(page, bottom - 17 - 103, bottom - 17 + 1, 12 + at - 1.3, along: false);
            down.Count.ShouldBe(2);
            (down[1] - down[0]).ShouldBe(length, CloseMm);
        }
    }

    [Fact]
    public void Holes_stand_on_paper_where_the_cut_list_says()
    {
        Tool.Need("pdftoppm");
        var model = PartsSamples.Paper(PartsSamples.Piece());
        var sheets = PartsPaper.TrueSize(model.Plan, PaperSize.A4).Sheets;
        var (sheet, cover) = sheets.SelectMany((s, i) => s.Select(p => (i, p))).Single(x => x.p.Part.Key == "cover");
        cover.Turned.ShouldBeFalse();
        using var page = SKBitmap.Decode(PaperTools.Pages(PartsPaper.Create(model, PaperSize.A4), Dpi)[sheet + 1]);
        var hole = cover.Part.Holes.Single(h => h.Key == "front-left"); // low on paper: y counts upwards in the part
        var (x, y) = (PartsPaper.FieldLeftMm + cover.XMm + hole.XMm, PartsPaper.FieldTopMm + cover.YMm + cover.HeightMm - hole.YMm);
        // across the circle half-way between its middle and its rim: chord of 2·√(r² − (r/2)²), with the upright hair in its middle
        var cut = Lines(page, x - 3, x + 3, y - (hole.DiameterMm / 4), along: true);
        cut.Count.ShouldBe(3);
        cut[1].ShouldBe(x, CloseMm);
        (cut[2] - cut[0]).ShouldBe(hole.DiameterMm * Math.Sqrt(3) / 2, CloseMm);
    }

    [Fact]
    public void A_part_larger_than_the_page_is_drawn_smaller_and_says_so()
    {
        var piece = PartsSamples.Piece(new CutSpec { SheetWidthMm = 1200, SheetHeightMm = 600 });
        piece.Mould = PieceSamples.Pyramid(700, 500);
        piece.Former = piece.Former! with { OuterWidthMm = 300, OuterDepthMm = 250, FromMm = 400 };
        var words = Words(PartsPaper.Create(PartsSamples.Paper(piece), PaperSize.A4));
        words.ShouldContain("not at true size");
        words.ShouldContain("300 mm");
        words.ShouldNotContain("Print at 100 %");
    }

    [Fact]
    public void The_cut_list_names_every_part_its_count_and_its_size()
    {
        var words = Words(PartsPaper.Create(PartsSamples.Paper(PartsSamples.Piece()), PaperSize.A4));
        foreach (var expected in new[] { "80 × 41 mm", "54 × 41 mm", "102 × 82 mm", "Front and back, running through", "both diagonals measure 100 mm", "cut outside the line", "Clamp the work" })
        {
            words.ShouldContain(expected);
        }
    }

    [Theory, MemberData(nameof(Sizes))]
    public void The_file_is_sound(PaperSize size)
    {
        Tool.Need("qpdf");
        var (code, output) = PaperTools.QpdfCheck(PartsPaper.Create(PartsSamples.Paper(PartsSamples.Piece()), size));
        code.ShouldBe(0, output);
        if (Environment.GetEnvironmentVariable("STUDIO_PAPERS") is { } folder)
        {
            File.WriteAllBytes(Path.Combine(folder, $"parts-{size}.pdf"), PartsPaper.Create(PartsSamples.Paper(PartsSamples.Piece()), size));
        }
    }

    private static string Words(byte[] pdf)
    {
        using var read = PdfDocument.Open(pdf);
        return string.Join(' ', read.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }

    /// <summary>Middles of the dark strokes [mm] crossed by a line along x or y, weighted by their ink.</summary>
    private static List<double> Lines(SKBitmap page, double fromMm, double toMm, double atMm, bool along)
    {
        const double Px = 25.4 / Dpi;
        var found = new List<double>();
        var (weight, sum) = (0.0, 0.0);
        for (var i = (int)(fromMm / Px); i <= toMm / Px; i++)
        {
            var at = (int)(atMm / Px);
            var ink = 255 - (along ? page.GetPixel(i, at) : page.GetPixel(at, i)).Red;
            if (ink > 20)
            {
                (weight, sum) = (weight + ink, sum + (ink * (i + 0.5) * Px));
            }
            else if (weight > 0)
            {
                found.Add(sum / weight);
                (weight, sum) = (0, 0);
            }
        }

        return found;
    }
}
