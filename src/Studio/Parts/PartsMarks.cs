using System.Globalization;
using System.Net;
using System.Text;
using static Studio.Parts.PartsLayout;

namespace Studio.Parts;

/// <summary>A sketch's marks as the inside of an SVG element, styled by their kind.</summary>
public static class PartsMarks
{
    private const double LeastRadiusPx = 1.6;

    public static string Of(PartsSketch sketch, PartsLayout at)
    {
        var svg = new StringBuilder();
        foreach (var mark in sketch.Marks)
        {
            svg.Append(mark switch
            {
                SketchArea a => $"<path class=\"{a.Kind}\" d=\"{at.Path(a.Points)}\">{Title(a.Name)}</path>",
                SketchRound r => Round(r, at.X(r.At.XMm), at.Y(r.At.YMm), Math.Max(r.DiameterMm / 2 * at.Scale, LeastRadiusPx)),
                SketchLine n => $"<path class=\"thin\" d=\"M{Number(at.X(n.From.XMm))} {Number(at.Y(n.From.YMm))}L{Number(at.X(n.To.XMm))} {Number(at.Y(n.To.YMm))}\"/>",
                SketchWords w => Text(at.X(w.At.XMm), at.Y(w.At.YMm) + 4, w.Words, w.Strong ? "words strong" : "words"),
                SketchSpan s => Span(s, at.Place(s)),
                _ => "",
            });
        }

        return svg.ToString();
    }

    private static string Round(SketchRound r, double x, double y, double radius) =>
        $"<circle class=\"{r.Kind}{(r.Bad ? " bad" : "")}\" cx=\"{Number(x)}\" cy=\"{Number(y)}\" r=\"{Number(radius)}\">{Title(r.Bad ? r.Name + ": cannot stand here" : r.Name)}</circle>"
        + (r.Bad ? Cross(x, y, radius + 4) : "");

    private static string Cross(double x, double y, double r) =>
        $"<path class=\"cross\" d=\"M{Number(x - r)} {Number(y - r)}L{Number(x + r)} {Number(y + r)}M{Number(x - r)} {Number(y + r)}L{Number(x + r)} {Number(y - r)}\"/>";

    // the line with a tick at each end, and thin lines back to what it measures
    private static string Span(SketchSpan s, SpanLine p)
    {
        var (x, y) = ((p.X1 + p.X2) / 2, (p.Y1 + p.Y2) / 2);
        return s.Along
            ? $"<path class=\"span\" d=\"M{Number(p.X1)} {Number(p.Y1 - p.Off + 2)}V{Number(p.Y1 + 4)}M{Number(p.X2)} {Number(p.Y1 - p.Off + 2)}V{Number(p.Y1 + 4)}M{Number(p.X1)} {Number(p.Y1)}H{Number(p.X2)}{Tick(p.X1, p.Y1)}{Tick(p.X2, p.Y1)}\"/>"
                + Text(x, y - 3, s.Words, "words")
            : $"<path class=\"span\" d=\"M{Number(p.X1 + p.Off - 2)} {Number(p.Y1)}H{Number(p.X1 - 4)}M{Number(p.X1 + p.Off - 2)} {Number(p.Y2)}H{Number(p.X1 - 4)}M{Number(p.X1)} {Number(p.Y1)}V{Number(p.Y2)}{Tick(p.X1, p.Y1)}{Tick(p.X1, p.Y2)}\"/>"
                + Text(x - 3, y, s.Words, "words", string.Create(CultureInfo.InvariantCulture, $" transform=\"rotate(-90 {Number(x - 3)} {Number(y)})\""));
    }

    private static string Tick(double x, double y) => $"M{Number(x - 3)} {Number(y + 3)}L{Number(x + 3)} {Number(y - 3)}";

    private static string Title(string name) => name.Length == 0 ? "" : $"<title>{WebUtility.HtmlEncode(name)}</title>";

    private static string Text(double x, double y, string words, string kind, string turn = "") =>
        $"<text class=\"{kind}\" x=\"{Number(x)}\" y=\"{Number(y)}\" text-anchor=\"middle\"{turn}>{WebUtility.HtmlEncode(words)}</text>";
}
