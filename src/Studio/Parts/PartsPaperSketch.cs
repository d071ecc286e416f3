using Studio.Engine.Moulds;
using Studio.Papers;

namespace Studio.Parts;

/// <summary>A sketch as a paper's drawing: the screen's marks in ink that needs no colour.</summary>
internal static class PartsPaperSketch
{
    private const string Ink = "#1F2B33";
    private const string Slate = "#4A6272";
    private const int RoundPoints = 36;

    // rows of dimensions and their words, as shares of the drawing's larger side
    private const double RowBelow = 0.11;
    private const double RowLeft = 0.2;
    private const double WordsBelow = 0.045;
    private const double WordsHigh = 0.055;
    private const double WordsWide = 0.12;

    public static PaperDrawing Of(PartsSketch sketch)
    {
        var (left, right, low, high) = sketch.Bounds;
        var size = Math.Max(right - left, high - low);
        var shapes = sketch.Marks.SelectMany(m => Shapes(m, size)).ToList();
        return new PaperDrawing([Room(sketch, size), .. shapes], sketch.Words);
    }

    /// <summary>A circle as a fine polygon.</summary>
    public static IReadOnlyList<PaperPoint> Round(PlanPoint at, double diameter) =>
        [.. Enumerable.Range(0, RoundPoints).Select(i => 2 * Math.PI * i / RoundPoints).Select(a => new PaperPoint(at.XMm + (diameter / 2 * Math.Cos(a)), at.YMm + (diameter / 2 * Math.Sin(a))))];

    private static IEnumerable<PaperShape> Shapes(SketchMark mark, double size) => mark switch
    {
        SketchArea { Kind: "opening" } a => a.Points.Select((p, i) => new PaperLine(At(p), At(a.Points[(i + 1) % a.Points.Count]), 0.8, Dashed: true, Ink)),
        SketchArea a => [new PaperPolygon([.. a.Points.Select(At)], Fill(a.Kind), PaperPattern.None, Ink, 0.8)],
        SketchRound r => [new PaperPolygon(Round(r.At, r.DiameterMm), r.Kind == "foot" ? "#F7EAD6" : "#FFFFFF", PaperPattern.None, Ink, 0.7), .. r.Bad ? Cross(r) : []],
        SketchLine n => [new PaperLine(At(n.From), At(n.To), 0.5, Dashed: true, Slate)],
        SketchWords w => [new PaperNote(At(w.At), w.Words)],
        SketchSpan s => Span(s, size),
        _ => [],
    };

    private static PaperPoint At(PlanPoint p) => new(p.XMm, p.YMm);

    private static string? Fill(string kind) => kind switch { "base" or "fitting" => "#E6ECEF", "part" or "wall" or "plate" => "#F3EDE2", _ => null };

    private static IEnumerable<PaperShape> Cross(SketchRound r)
    {
        var (x, y, d) = (r.At.XMm, r.At.YMm, (r.DiameterMm / 2) + 1.5);
        yield return new PaperLine(new(x - d, y - d), new(x + d, y + d), 1, false, Ink);
        yield return new PaperLine(new(x - d, y + d), new(x + d, y - d), 1, false, Ink);
    }

    private static IEnumerable<PaperShape> Span(SketchSpan s, double size)
    {
        var (middle, tick) = ((s.FromMm + s.ToMm) / 2, size * 0.012);
        if (s.Along)
        {
            var y = s.AtMm - (((s.Row + 1) * RowBelow) - WordsBelow) * size;
            yield return new PaperLine(new(s.FromMm, y), new(s.ToMm, y), 0.5, false, Slate);
            yield return new PaperLine(new(s.FromMm, s.AtMm - tick), new(s.FromMm, y - tick), 0.35, false, Slate);
            yield return new PaperLine(new(s.ToMm, s.AtMm - tick), new(s.ToMm, y - tick), 0.35, false, Slate);
            yield return new PaperNote(new(middle, y - (WordsBelow * size)), s.Words);
            yield break;
        }

        var x = s.AtMm - (((s.Row + 1) * RowLeft) - 0.06) * size;
        var gap = Math.Min(WordsHigh * size, (s.ToMm - s.FromMm) / 2);
        yield return new PaperLine(new(x, s.FromMm), new(x, middle - gap), 0.5, false, Slate);
        yield return new PaperLine(new(x, middle + gap), new(x, s.ToMm), 0.5, false, Slate);
        yield return new PaperLine(new(s.AtMm - tick, s.FromMm), new(x - tick, s.FromMm), 0.35, false, Slate);
        yield return new PaperLine(new(s.AtMm - tick, s.ToMm), new(x - tick, s.ToMm), 0.35, false, Slate);
        yield return new PaperNote(new(x, middle), s.Words);
    }

    // an area without ink, so that words at the edge keep their place on the paper
    private static PaperPolygon Room(PartsSketch sketch, double size)
    {
        var (left, right, low, high) = sketch.Bounds;
        foreach (var s in sketch.Marks.OfType<SketchSpan>())
        {
            left = s.Along ? left : Math.Min(left, s.AtMm - (((s.Row + 1) * RowLeft) - 0.06 + WordsWide) * size);
            low = s.Along ? Math.Min(low, s.AtMm - (((s.Row + 1) * RowBelow) + 0.03) * size) : low;
        }

        return new PaperPolygon([new(left, low), new(right, low), new(right, high), new(left, high)], null);
    }
}
