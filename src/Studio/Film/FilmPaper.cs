using System.Globalization;
using PdfSharp.Drawing;
using Studio.Engine.Film;
using Studio.Papers;
using Studio.Pieces;

namespace Studio.Film;

/// <summary>Photographs to be printed on film and cut, at true size. Every number comes computed.</summary>
public sealed record FilmPaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    public required DateTime MadeUtc { get; init; }

    public required string Piece { get; init; }

    public required string Commission { get; init; }

    public required IReadOnlyList<FilmPaperPrint> Prints { get; init; }
}

/// <summary>One photograph and how often it is printed.</summary>
/// <param name="Name">What the maker calls it.</param>
/// <param name="Fit">Its outline.</param>
/// <param name="Count">How many.</param>
/// <param name="Mirrored">Printed on the side that faces away.</param>
public sealed record FilmPaperPrint(string Name, FilmFit Fit, int Count, bool Mirrored)
{
    /// <summary>How the picture lies on it; null prints the outline alone.</summary>
    public PictureFit? Shown { get; init; }

    /// <summary>The picture made ready, upright, as a JPEG.</summary>
    public byte[]? Picture { get; init; }

    /// <summary>What to mind of the ink, in whole sentences.</summary>
    public string Ink { get; init; } = "";
}

/// <summary>Outlines at true size with the pictures in them, laid close to save film, beside bars that a ruler can check.</summary>
public static class FilmPaper
{
    private const double HairPt = 0.3;

    /// <summary>How the prints lie on pages of a size.</summary>
    public static NestPlan Plan(FilmPaperModel model, PaperSize size)
    {
        var page = new FilmPage(size);
        return Nest.Lay([.. model.Prints.SelectMany(p => Enumerable.Repeat(Cut(p), p.Count))], page.WidthMm, page.HeightMm, FilmPage.GapMm);
    }

    /// <summary>As many pages as the prints need. A print that fits no page is named in words, never made smaller.</summary>
    public static byte[] Create(FilmPaperModel model, PaperSize size)
    {
        var (plan, prints) = (Plan(model, size), Each(model).ToList());
        var setup = new PaperSetup($"True size: {model.Piece}", size, PaperType.Work(), model.Format.Language, model.Studio.StudioName, "", model.MadeUtc)
        {
            SideMm = 8,
            TopMm = 7,
            BottomMm = 0,
            HasFoot = false,
        };
        return PaperFlow.Render(setup, flow =>
        {
            for (var page = 0; page < Math.Max(1, plan.Pages); page++)
            {
                if (page > 0)
                {
                    flow.Break();
                }

                Head(flow, model, plan, prints, page);
                PaperCheckBars.Draw(flow.Ink, flow.Type, FilmPage.EdgeMm, size.HeightMm() - FilmPage.EdgeMm);
                foreach (var place in plan.Places.Where(p => p.Page == page))
                {
                    Print(flow, prints[place.Print], place, new FilmPage(size));
                }
            }
        });
    }

    private static IEnumerable<FilmPaperPrint> Each(FilmPaperModel model) => model.Prints.SelectMany(p => Enumerable.Repeat(p, p.Count));

    // as the printer lays it: mirrored where the printed side faces away, and counted downwards
    private static IReadOnlyList<FilmArea> Cut(FilmPaperPrint print) =>
        [.. print.Fit.Film.Select(a => new FilmArea([.. a.Ring.Select(p => Laid(print, p))], [.. a.Holes.Select(h => (IReadOnlyList<FilmPoint>)[.. h.Select(p => Laid(print, p))])]))];

    private static FilmPoint Laid(FilmPaperPrint print, FilmPoint p) => new(print.Mirrored ? -p.UMm : p.UMm, -p.VMm);

    private static void Head(PaperFlow flow, FilmPaperModel model, NestPlan plan, List<FilmPaperPrint> prints, int page)
    {
        var many = plan.Pages > 1 ? string.Create(CultureInfo.InvariantCulture, $", page {page + 1} of {plan.Pages}") : "";
        var here = plan.Places.Where(p => p.Page == page).Select(p => prints[p.Print]).ToList();
        flow.Block("H1", $"{model.Piece}, photographs at true size{many}", flow.Type.LongTitle);
        flow.Text(PaperCheckBars.Words + " If they are off, do not cut.", flow.Type.SmallStrong);
        foreach (var group in here.GroupBy(p => p.Name, StringComparer.Ordinal))
        {
            flow.Text(Line(group.First(), group.Count(), model.Format), flow.Type.Small);
        }

        foreach (var name in plan.TooLarge.Select(i => prints[i].Name).Distinct(StringComparer.Ordinal))
        {
            var box = prints.Find(p => p.Name == name)!.Fit.FilmBox;
            flow.Text($"{name} is {model.Format.Length(box.WidthMm)} by {model.Format.Length(box.HeightMm)} and does not fit this page at true size, so it is left out. Choose the other paper, or take its outline as SVG to a print shop.", flow.Type.SmallStrong);
        }

        if (here.Count > 0)
        {
            flow.Text(string.Create(CultureInfo.InvariantCulture, $"{model.Commission} · {plan.UsedPercent:0} % of the room for prints is used. Cut along the thin line; a dashed one only once the resin holds the film, the blade away from hands and silicone."), flow.Type.Small);
        }
    }

    private static string Line(FilmPaperPrint print, int count, PaperFormat format)
    {
        var box = print.Fit.Box;
        return string.Create(CultureInfo.InvariantCulture, $"{count} × {print.Name}: {format.Length(box.WidthMm)} wide and {format.Length(box.HeightMm)} high in the piece.")
            + (print.Mirrored ? " Mirrored: its printed side faces away from whoever looks." : "") + (print.Ink.Length > 0 ? " " + print.Ink : "");
    }

    private static void Print(PaperFlow flow, FilmPaperPrint print, NestPlace place, FilmPage page)
    {
        XPoint At(FilmPoint p)
        {
            var on = place.On(Laid(print, p));
            return new(Papers.Measure.Mm(page.LeftMm + on.UMm), Papers.Measure.Mm(FilmPage.TopMm + on.VMm));
        }

        var film = print.Fit.Film.SelectMany(a => a.Rings).Select(r => r.Select(At).ToArray()).ToList();
        using var figure = flow.Ink.Figure(Alt(print), Around([.. film.SelectMany(r => r)]));
        if (print is { Picture: { } jpeg, Shown: { } shown })
        {
            flow.Ink.Image(jpeg, Place(print.Fit, shown, At), print.Fit.Picture.SelectMany(a => a.Rings).Select(r => r.Select(At).ToArray()));
        }

        foreach (var ring in film)
        {
            flow.Ink.Polygon(ring, null, XColors.Black, HairPt);
        }

        foreach (var (from, to) in print.Fit.CutAway.Select(c => (At(c.From), At(c.To))))
        {
            flow.Ink.Line(from.X, from.Y, to.X, to.Y, XColors.Black, HairPt, dashed: true);
        }
    }

    private static string Alt(FilmPaperPrint print)
    {
        var box = print.Fit.Box;
        return string.Create(
            CultureInfo.InvariantCulture,
            $"Outline of {print.Name} at true size, {box.WidthMm:0.#} mm wide and {box.HeightMm:0.#} mm high{(print.Fit.CutAway.Count > 0 ? ", with a strip to hold it by" : "")}{(print.Picture is null ? "" : ", the photograph in it")}");
    }

    // the picture fills the box around its room, from the middle
    private static XMatrix Place(FilmFit fit, PictureFit shown, Func<FilmPoint, XPoint> at)
    {
        var box = FilmBox.Around(fit.Picture);
        var (u, v) = ((box.LeftMm + box.RightMm - shown.WidthMm) / 2, (box.BottomMm + box.TopMm + shown.HeightMm) / 2);
        var (corner, right, below) = (at(new(u, v)), at(new(u + shown.WidthMm, v)), at(new(u, v - shown.HeightMm)));
        return new(right.X - corner.X, right.Y - corner.Y, below.X - corner.X, below.Y - corner.Y, corner.X, corner.Y);
    }

    private static XRect Around(IReadOnlyList<XPoint> points) =>
        points.Count == 0 ? default : new(new XPoint(points.Min(p => p.X), points.Min(p => p.Y)), new XPoint(points.Max(p => p.X), points.Max(p => p.Y)));
}
