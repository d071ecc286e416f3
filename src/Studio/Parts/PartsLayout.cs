using System.Globalization;
using System.Runtime.InteropServices;
using Studio.Engine.Moulds;

namespace Studio.Parts;

/// <summary>A sketch laid out on the screen: mm into pixels, rows of dimensions below and to the left.</summary>
public sealed class PartsLayout
{
    private const double RowPx = 19;
    private const double EdgePx = 8;
    private const double LetterPx = 6.6;
    private const double LetterHighPx = 8;

    private readonly double left;
    private readonly double high;
    private readonly double padLeft;

    /// <summary>Lays a sketch out.</summary>
    /// <param name="sketch">What is drawn.</param>
    /// <param name="mostWidth">Width at most [px].</param>
    /// <param name="mostHeight">Height at most [px].</param>
    /// <param name="scale">Pixels to a millimetre, to draw several alike; else what the room allows.</param>
    public PartsLayout(PartsSketch sketch, double mostWidth, double mostHeight, double? scale = null)
    {
        var (l, r, low, h) = sketch.Bounds;
        (left, high) = (l, h);
        padLeft = Rows(sketch, along: false) + (sketch.Marks.Any(m => m is SketchSpan { Along: false }) ? LetterHighPx : 0) + EdgePx;
        var padBelow = Rows(sketch, along: true) + EdgePx;
        Scale = scale ?? Math.Min((mostWidth - padLeft - EdgePx) / Math.Max(r - l, 1), (mostHeight - padBelow - EdgePx) / Math.Max(h - low, 1));
        // a word wider than what it measures needs room of its own
        var words = sketch.Marks.OfType<SketchSpan>().Where(s => s.Along).Select(s => s.Words.Length * LetterPx).DefaultIfEmpty(0).Max();
        Width = padLeft + Math.Max((r - l) * Scale, words) + EdgePx;
        Height = EdgePx + Math.Max((h - low) * Scale, sketch.Marks.OfType<SketchSpan>().Where(s => !s.Along).Select(s => s.Words.Length * LetterPx).DefaultIfEmpty(0).Max()) + padBelow;
    }

    public double Scale { get; }

    public double Width { get; }

    public double Height { get; }

    public static string Number(double value) => Math.Round(value, 2).ToString(CultureInfo.InvariantCulture);

    public double X(double mm) => padLeft + ((mm - left) * Scale);

    public double Y(double mm) => EdgePx + ((high - mm) * Scale);

    public string Path(IEnumerable<PlanPoint> points) => "M" + string.Join("L", points.Select(p => $"{Number(X(p.XMm))} {Number(Y(p.YMm))}")) + "Z";

    /// <summary>Where a dimension's line runs, and its words.</summary>
    public SpanLine Place(SketchSpan span)
    {
        var off = (span.Row + 1) * RowPx;
        return span.Along
            ? new(X(span.FromMm), Y(span.AtMm) + off, X(span.ToMm), Y(span.AtMm) + off, off)
            : new(X(span.AtMm) - off, Y(span.FromMm), X(span.AtMm) - off, Y(span.ToMm), off);
    }

    private static double Rows(PartsSketch sketch, bool along) =>
        sketch.Marks.OfType<SketchSpan>().Where(s => s.Along == along).Select(s => (s.Row + 1) * RowPx).DefaultIfEmpty(0).Max();
}

/// <summary>A dimension's line on the screen [px]; <paramref name="Off"/> back to what it measures.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SpanLine(double X1, double Y1, double X2, double Y2, double Off);
