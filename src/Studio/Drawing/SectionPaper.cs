using System.Globalization;
using Studio.Papers;

namespace Studio.Drawing;

/// <summary>The same section for a paper: the same polygons, to scale, that the pages draw.</summary>
public static class SectionPaper
{
    private const string Ink = "#1F2B33";
    private const string Blank = "#FFFFFF";

    /// <summary>The drawing with its names; a curing layer hatched, the one the paper is about marked strongly.</summary>
    /// <param name="view">The view.</param>
    /// <param name="detail">False leaves sizes and heights out, for the family.</param>
    public static PaperDrawing Of(SectionView view, bool detail = true)
    {
        var bands = view.Bands.Where(b => !b.Empty).ToList();
        var shapes = new List<PaperShape>();
        shapes.AddRange(bands.SelectMany(b => Area(b.Rings, b.Layer.Colour, Pattern(b), b.Layer.State is LayerState.Now ? 1.4 : 0.5)));
        shapes.AddRange(view.Sheets.SelectMany(Film));
        shapes.AddRange(view.Former.Select(Box));
        shapes.AddRange(Area(view.Outline, null, PaperPattern.None, 0.9));
        shapes.AddRange(detail ? Across(view) : []);
        shapes.AddRange(bands.Select(b => Label(view, b, detail)));
        shapes.AddRange(view.Sheets.Where(s => s.Points.Any()).Select(s => new PaperLabel(Point(s.Points.MaxBy(p => p.ZMm)), s.Name)));
        if (detail && view.Caveat.Length > 0)
        {
            shapes.Add(new PaperLabel(new PaperPoint(view.SpanMm(view.HeightMm).Right, view.Drawn(view.HeightMm)), view.Caveat));
        }

        return new PaperDrawing(shapes, detail ? SectionWords.Whole(view) : view.Words);
    }

    private static PaperPoint Point(SectionPoint p) => new(p.XMm, p.ZMm);

    // several outlines are filled as one, joined by lines of no width, and then drawn round one by one
    private static IEnumerable<PaperPolygon> Area(IReadOnlyList<IReadOnlyList<SectionPoint>> rings, string? fill, PaperPattern pattern, double strokePt)
    {
        if (rings.Count == 1)
        {
            return [new([.. rings[0].Select(Point)], fill, pattern, Ink, strokePt)];
        }

        var whole = rings.SelectMany((r, i) => i == 0 ? r.Append(r[0]) : r.Append(r[0]).Append(rings[0][0])).Select(Point);
        return rings.Select(r => new PaperPolygon([.. r.Select(Point)], null, PaperPattern.None, Ink, strokePt)).Prepend(new PaperPolygon([.. whole], fill, pattern));
    }

    private static PaperPattern Pattern(SectionBand band) => band.Layer switch
    {
        { State: LayerState.Curing or LayerState.Now } => PaperPattern.Hatch,
        { Scatter: true } => PaperPattern.Dots,
        _ => PaperPattern.None,
    };

    // white below, so that the dashes read on a dark layer
    private static IEnumerable<PaperShape> Film(SectionFilm sheet)
    {
        var ends = sheet.Rings.SelectMany(r => sheet.Filled ? r.Zip(r.Skip(1).Append(r[0])) : r.Zip(r.Skip(1))).ToList();
        return ends.Select(e => new PaperLine(Point(e.First), Point(e.Second), 2.4, Stroke: Blank)).Concat(ends.Select(e => new PaperLine(Point(e.First), Point(e.Second), 1, Dashed: true, Stroke: Ink)));
    }

    private static IEnumerable<PaperShape> Across(SectionView view)
    {
        var (z, tick) = (-0.07 * view.HeightMm, 0.015 * view.HeightMm);
        var width = string.Create(CultureInfo.InvariantCulture, $"{view.WidestMm:0.#} mm");
        return
        [
            new PaperLine(new(view.LeftMm, z), new(view.RightMm, z), 0.4),
            new PaperLine(new(view.LeftMm, z - tick), new(view.LeftMm, z + tick), 0.4),
            new PaperLine(new(view.RightMm, z - tick), new(view.RightMm, z + tick), 0.4),
            new PaperNote(new((view.LeftMm + view.RightMm) / 2, z - (3 * tick)), width),
        ];
    }

    private static PaperPolygon Box(SectionBox b) =>
        new([new(b.LeftMm, b.LowMm), new(b.RightMm, b.LowMm), new(b.RightMm, b.HighMm), new(b.LeftMm, b.HighMm)], Blank, b.Open ? PaperPattern.None : PaperPattern.CrossHatch, Ink);

    private static PaperLabel Label(SectionView view, SectionBand band, bool detail)
    {
        var l = band.Layer;
        var mid = Math.Clamp((l.FromMm + l.ToMm) / 2, 0, view.HeightMm);
        var words = detail ? string.Create(CultureInfo.InvariantCulture, $"{band.Number}  {l.Name}, {l.FromMm:0.#} to {l.ToMm:0.#} mm") : l.Name;
        return new PaperLabel(new PaperPoint(view.SpanMm(mid).Right, view.Drawn(mid)), words, l.State is LayerState.Now);
    }
}
