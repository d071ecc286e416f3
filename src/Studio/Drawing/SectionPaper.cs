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
    /// <param name="detail">False leaves heights out of the names, for the family.</param>
    public static PaperDrawing Of(SectionView view, bool detail = true)
    {
        var shapes = new List<PaperShape>();
        shapes.AddRange(view.Bands.Where(b => b.Points.Count > 0).Select(b => new PaperPolygon([.. b.Points.Select(Point)], b.Layer.Colour, Pattern(b), Ink, b.Layer.State is LayerState.Now ? 1.4 : 0.5)));
        shapes.AddRange(view.Former.Select(Box));
        shapes.Add(new PaperPolygon([.. view.Outline.Select(Point)], null, PaperPattern.None, Ink, 0.9));
        shapes.AddRange(view.Bands.Where(b => b.Points.Count > 0).Select(b => Label(view, b, detail)));
        return new PaperDrawing(shapes, detail ? SectionWords.Whole(view) : view.Words);
    }

    private static PaperPoint Point(SectionPoint p) => new(p.XMm, p.ZMm);

    private static PaperPattern Pattern(SectionBand band) => band.Layer switch
    {
        { State: LayerState.Curing or LayerState.Now } => PaperPattern.Hatch,
        { Scatter: true } => PaperPattern.Dots,
        _ => PaperPattern.None,
    };

    private static PaperPolygon Box(SectionBox b) =>
        new([new(b.LeftMm, b.LowMm), new(b.RightMm, b.LowMm), new(b.RightMm, b.HighMm), new(b.LeftMm, b.HighMm)], Blank, b.Open ? PaperPattern.None : PaperPattern.CrossHatch, Ink);

    private static PaperLabel Label(SectionView view, SectionBand band, bool detail)
    {
        var l = band.Layer;
        var mid = Math.Clamp((l.FromMm + l.ToMm) / 2, 0, view.HeightMm);
        var words = detail ? string.Create(CultureInfo.InvariantCulture, $"{band.Number}  {l.Name}, {l.FromMm:0.#} to {l.ToMm:0.#} mm") : l.Name;
        return new PaperLabel(new PaperPoint(view.WidthMm(mid) / 2, view.Drawn(mid)), words, l.State is LayerState.Now);
    }
}
