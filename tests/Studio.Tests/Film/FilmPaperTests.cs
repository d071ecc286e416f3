using System.Globalization;
using System.Xml.Linq;
using SkiaSharp;
using Studio.Engine.Film;
using Studio.Engine.Moulds;
using Studio.Film;
using Studio.Papers;
using Studio.Pieces;
using Studio.Tests.Files;
using Studio.Tests.Papers;
using UglyToad.PdfPig;

namespace Studio.Tests.Film;

/// <summary>The true-size page, rendered at 300 dpi by pdftoppm and measured; and the outline as SVG.</summary>
public sealed class FilmPaperTests
{
    private const int Dpi = 300;
    private const double PerPx = 25.4 / Dpi;
    private const double Allowed = 0.2; // the tolerance [mm]; a pixel is 0.085 mm

    public static TheoryData<PaperSize> Sizes => [PaperSize.A4, PaperSize.Letter];

    [Theory, MemberData(nameof(Sizes))]
    public void Printed_rectangle_and_check_bars_measure_what_they_say(PaperSize size)
    {
        Tool.Need("pdftoppm");
        using var page = Page(FilmPaper.Create(Model(Print("cuboid", "widthMm=80 depthMm=80 heightMm=90", new() { MarginMm = 0, TabMm = 0 })), size));
        var (left, top) = (FilmPage.EdgeMm, size.HeightMm() - FilmPage.EdgeMm);

        // the bars: ends of the 100 mm and of the 4 in line, across and down; only the marks at the ends reach 1.2 mm from the line
        Span(page, across: true, at: top - 3.2, from: left + 15, to: left + 118.5).ShouldBe(100, Allowed);
        Span(page, across: true, at: top - 11.2, from: left + 15, to: left + 120.5).ShouldBe(101.6, Allowed);
        Span(page, across: false, at: left + 3.2, from: top - 118.5, to: top - 16).ShouldBe(100, Allowed);
        Span(page, across: false, at: left + 11.2, from: top - 120, to: top - 16).ShouldBe(101.6, Allowed);

        // the outline: a cube of edge 80, corner to corner: 80 √2 wide, 90 high; its corner lies in the corner of the room for prints
        var room = new FilmPage(size);
        var (x, y) = (room.LeftMm, FilmPage.TopMm);
        Span(page, across: true, at: y + 45, from: x - 0.6, to: x + 150).ShouldBe(80 * Math.Sqrt(2), Allowed);
        Span(page, across: false, at: x + 40, from: y - 0.6, to: y + 120).ShouldBe(90, Allowed);
    }

    [Fact]
    public void Printed_triangle_keeps_its_slant()
    {
        Tool.Need("pdftoppm");
        var print = Print("pyramid", "baseMm=100 heightMm=80", new() { MarginMm = 0, TabMm = 0 });
        var place = FilmPaper.Plan(Model(print), PaperSize.A4).Places.ShouldHaveSingleItem();
        using var page = Page(FilmPaper.Create(Model(print), PaperSize.A4));

        // the tip is down in the mould; half way up the sheet is half its width
        var room = new FilmPage(PaperSize.A4);
        foreach (var up in (double[])[20, 40, 60])
        {
            var (a, b) = (place.On(new(0, -up)), place.On(new(1, -up)));
            (b.VMm - a.VMm).ShouldBe(0, 1e-9, "the print lies upright or upside down");
            Span(page, across: true, at: FilmPage.TopMm + a.VMm, from: room.LeftMm - 0.5, to: room.LeftMm + 160).ShouldBe(100 * Math.Sqrt(2) * up / 80, Allowed);
        }
    }

    [Fact]
    public void Picture_fills_the_outline_stays_inside_it_and_is_mirrored_on_demand()
    {
        Tool.Need("pdftoppm");
        using var quarters = Pictures.Quarters(900, 900);
        var print = Print("cuboid", "widthMm=80 depthMm=80 heightMm=90", new() { MarginMm = 0, TabMm = 0, Ink = "dye" }) with { Picture = Pictures.Jpeg(quarters) };
        print = print with { Shown = PictureFit.Cover(print.Fit.Picture, 900, 900) };
        using var page = Page(FilmPaper.Create(Model(print), PaperSize.A4));
        using var mirrored = Page(FilmPaper.Create(Model(print with { Mirrored = true }), PaperSize.A4));
        var (x, y) = (new FilmPage(PaperSize.A4).LeftMm, FilmPage.TopMm);
        Colour(page, x + 20, y + 20).ShouldBeLike(SKColors.Red);
        Colour(page, x + 93, y + 20).ShouldBeLike(SKColors.Lime);
        Colour(page, x + 20, y + 70).ShouldBeLike(SKColors.Blue);
        Colour(mirrored, x + 20, y + 20).ShouldBeLike(SKColors.Lime);
        Colour(page, x + 2.5, y + 45).ShouldBeLike(SKColors.White); // the sealed margin of 5 mm
        Colour(page, x + 5.5, y + 20).ShouldBeLike(SKColors.Red);
        Colour(page, x + 56, y + 87.5f).ShouldBeLike(SKColors.White);
    }

    [Fact]
    public void Several_prints_share_a_page_and_the_page_says_how_much_film_they_take()
    {
        var model = Model(Print("pyramid", "baseMm=70 heightMm=70", new()) with { Count = 4 });
        var plan = FilmPaper.Plan(model, PaperSize.A4);
        plan.Pages.ShouldBe(1);
        plan.Places.Select(p => p.QuarterTurns % 4).Distinct().Count().ShouldBeGreaterThan(1);
        using var pdf = PdfDocument.Open(FilmPaper.Create(model, PaperSize.A4));
        var words = string.Join(' ', pdf.GetPage(1).GetWords().Select(w => w.Text));
        words.ShouldContain("4 × Picture");
        words.ShouldContain(string.Create(CultureInfo.InvariantCulture, $"{plan.UsedPercent:0} % of the room for prints is used"));
        words.ShouldContain("If they are off, do not cut.");
    }

    [Fact]
    public void Print_larger_than_the_page_is_named_and_never_made_smaller()
    {
        var model = Model(Print("cuboid", "widthMm=260 depthMm=260 heightMm=200", new()));
        FilmPaper.Plan(model, PaperSize.A4).TooLarge.ShouldBe([0]);
        using var pdf = PdfDocument.Open(FilmPaper.Create(model, PaperSize.A4));
        string.Join(' ', pdf.GetPage(1).GetWords().Select(w => w.Text)).ShouldContain("does not fit this page at true size");
        PaperTree.Of(pdf).All.Count(t => t.Role == "Figure").ShouldBe(1); // the check bars alone
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Paper_is_whole_tagged_and_says_what_each_figure_is(PaperSize size)
    {
        Tool.Need("qpdf");
        var bytes = FilmPaper.Create(Model(Print("pyramid", "baseMm=70 heightMm=70", new()) with { Count = 2 }), size);
        var (code, output) = PaperTools.QpdfCheck(bytes);
        code.ShouldBe(0, output);
        using var pdf = PdfDocument.Open(bytes);
        var tree = PaperTree.Of(pdf);
        tree.All.Count(t => t.Role == "H1").ShouldBe(1);
        var figures = tree.All.Where(t => t.Role == "Figure").ToList();
        figures.Count.ShouldBe(3);
        figures.ShouldAllBe(f => f.Alt != null && f.Alt.Length > 20);
        figures.Count(f => f.Alt!.Contains("Outline of Picture at true size", StringComparison.Ordinal)).ShouldBe(2);
    }

    [Fact]
    public void Outline_as_svg_is_in_millimetres_to_the_hundredth()
    {
        var fit = Print("pyramid", "baseMm=120 heightMm=90", new() { MarginMm = 1 }).Fit;
        var svg = XElement.Parse(FilmSvg.Write("Ferry & friends <3>", fit, mirrored: false));
        var view = svg.Attribute("viewBox")!.Value.Split(' ').Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray();
        (svg.Attribute("width")!.Value, svg.Attribute("height")!.Value).ShouldBe((view[2].ToString(CultureInfo.InvariantCulture) + "mm", view[3].ToString(CultureInfo.InvariantCulture) + "mm"));
        var points = Points(svg, "outline");
        (points.Max(p => p.X) - points.Min(p => p.X)).ShouldBe(fit.FilmBox.WidthMm, 0.001);
        (points.Max(p => p.Y) - points.Min(p => p.Y)).ShouldBe(fit.FilmBox.HeightMm, 0.001);
        view[2].ShouldBe(fit.FilmBox.WidthMm + 2, 0.001);
        var away = Points(svg, "cut-away-later");
        (away[0].Y - points.Min(p => p.Y)).ShouldBe(10, 0.001); // the strip stands above it
        XNamespace ns = "http://www.w3.org/2000/svg";
        svg.Element(ns + "title")!.Value.ShouldBe("Ferry & friends <3>");
    }

    [Fact]
    public void Recipe_travels_in_an_address_and_back()
    {
        var recipe = new Studio.Data.Files.PictureRecipe { QuarterTurns = 3, Mirror = true, StraightenDegrees = -2.5, CropLeft = 0.125, CropBottom = 0.3, BrightnessPercent = 12, ContrastPercent = -40, OneColour = true };
        RecipeText.Read(RecipeText.Write(recipe)).ShouldBe(recipe);
        foreach (var wrong in (string[])["", "1_2", "a_0_0_0_0_0_0_0_0_0", "NaN_0_0_0_0_0_0_0_0_0", "1e99_0_0_0_0_0_0_0_0_0", "0_0_0_0_0_0_0_0_0_0_0"])
        {
            RecipeText.Read(wrong).ShouldBeNull(wrong);
        }
    }

    internal static FilmPaperPrint Print(string shape, string dimensions, FilmSpec spec)
    {
        var sizes = dimensions.Split(' ').Select(d => d.Split('=')).ToDictionary(d => d[0], d => double.Parse(d[1], CultureInfo.InvariantCulture), StringComparer.Ordinal);
        return new("Picture", FilmCut.Fit(MouldShapes.Make(new MouldSpec(shape, sizes)).Value, spec, FilmSurroundings.Nothing).Value, 1, Mirrored: false);
    }

    internal static FilmPaperModel Model(params FilmPaperPrint[] prints) => new()
    {
        Studio = PaperSamples.Studio,
        Format = PaperSamples.Format,
        MadeUtc = PaperSamples.Now,
        Piece = "Ferry pyramid",
        Commission = "26-014",
        Prints = prints,
    };

    private static SKBitmap Page(byte[] pdf) => SKBitmap.Decode(PaperTools.Pages(pdf, Dpi).ShouldHaveSingleItem());

    private static SKColor Colour(SKBitmap page, double xMm, double yMm) => page.GetPixel((int)(xMm / PerPx), (int)(yMm / PerPx));

    // from the first to the last dark place along a line across or down the page [mm], each place the middle of its dark pixels
    private static double Span(SKBitmap page, bool across, double at, double from, double to)
    {
        double Dark(double along)
        {
            var c = across ? Colour(page, along, at) : Colour(page, at, along);
            return (255 - ((c.Red + c.Green + c.Blue) / 3.0)) / 255;
        }

        var dark = Enumerable.Range(0, (int)((to - from) / PerPx)).Select(i => (At: from + (i * PerPx), Ink: Dark(from + (i * PerPx)))).Where(p => p.Ink > 0.15).ToList();
        dark.ShouldNotBeEmpty($"nothing is drawn along {at} mm");
        double Middle(double near) => dark.Where(p => Math.Abs(p.At - near) < 0.3).Sum(p => p.At * p.Ink) / dark.Where(p => Math.Abs(p.At - near) < 0.3).Sum(p => p.Ink);
        return dark[^1].At - dark[0].At < 0.3 ? 0 : Middle(dark[^1].At) - Middle(dark[0].At);
    }

    private static List<(double X, double Y)> Points(XElement svg, string id) =>
        [.. svg.Elements().Single(e => e.Attribute("id")?.Value == id).Attribute("d")!.Value.Split(['M', 'L', 'Z'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)
            .Select(p => p.Split(' ')).Select(p => (double.Parse(p[0], CultureInfo.InvariantCulture), double.Parse(p[1], CultureInfo.InvariantCulture)))];
}
