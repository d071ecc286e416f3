using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Studio.Drawing;

/// <summary>A dimension line with its figure.</summary>
public sealed record SectionDimension(double X1, double Y1, double X2, double Y2, string Text, bool Upright);

/// <summary>The line at the top of a layer, which can be moved where the layer allows it.</summary>
public sealed record SectionLine(int Key, string Above, string Below, double Mm, double LowMm, double HighMm, double X1, double X2, double Y)
{
    /// <summary>Where the former's room interrupts the line; nothing between the two when it does not.</summary>
    public (double From, double To) Gap { get; init; }
}

/// <summary>A speck or a plate that stands for what lies in a layer.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct SectionMark(double X, double Y, double Size);

/// <summary>Places a section on a sheet of a given width: the scale, the dimension lines, and names that never cover each other.</summary>
public sealed partial class SectionLayout
{
    private const double Edge = 34;
    private const double SmallEdge = 5;
    private const double SecondRow = 22;

    private readonly SectionView view;
    private readonly string units;
    private readonly bool names;
    private readonly bool widest;

    /// <summary>Takes the view, whether it has names and dimensions, and the width to fill.</summary>
    /// <param name="width">Drawing units, about a pixel each.</param>
    /// <param name="tallest">The drawing itself is at most this high.</param>
    /// <param name="names">False leaves each layer's number alone, for a narrow page that lists the layers beside it.</param>
    public SectionLayout(SectionView view, bool large, double width, double tallest, string units, bool names = true)
    {
        (this.view, this.units, this.names, Width) = (view, units, names, width);
        widest = large && view.WidestMm > 1.02 * Math.Max(view.WidthMm(0), view.WidthMm(view.HeightMm));
        var (head, foot) = large ? (Edge, Edge + (widest ? SecondRow : 0)) : (SmallEdge, SmallEdge);
        var left = large ? 66 : SmallEdge;
        var right = !large ? SmallEdge : names ? Math.Clamp(width * 0.31, 118, 230) : 52;
        var room = Math.Max(1, width - left - right);
        Scale = Math.Max(0.001, Math.Min(room / view.WidestMm, (tallest - head - foot) / view.HeightMm));
        AxisX = left + (room / 2) - ((view.LeftMm + view.RightMm) / 2 * Scale);
        var labels = large ? Labels(width - right + 14, right - 14) : [];
        var tall = view.HeightMm * Scale;
        var needed = labels.Sum(l => l.Height + LabelGap);
        Height = Math.Max(tall, needed) + head + foot;
        Top = head + Math.Max(0, (needed - tall) / 2);
        LeftX = X(view.LeftMm);
        RightX = X(view.RightMm);
        LabelList = Spread(labels, 6, Height - 6);
        Dimensions = large ? [.. AllDimensions()] : [];
        Lines = [.. AllLines()];
    }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Drawing units a mm.</summary>
    public double Scale { get; }

    /// <summary>Where the middle of the mould's bounding box stands, and with it the former's.</summary>
    public double AxisX { get; }

    public double Top { get; }

    public double LeftX { get; }

    public double RightX { get; }

    public IReadOnlyList<SectionLabel> LabelList { get; }

    public IReadOnlyList<SectionDimension> Dimensions { get; }

    public IReadOnlyList<SectionLine> Lines { get; }

    /// <summary>Where a drawn height lies.</summary>
    public double Y(double zMm) => Top + ((view.HeightMm - zMm) * Scale);

    /// <summary>Where a distance from the axis lies.</summary>
    public double X(double xMm) => AxisX + (xMm * Scale);

    /// <summary>Closed lines in one path, to be filled by the even-odd rule.</summary>
    public string Path(IReadOnlyList<IReadOnlyList<SectionPoint>> rings)
    {
        var path = new StringBuilder();
        foreach (var ring in rings)
        {
            Trace(path, ring);
            path.Append('Z');
        }

        return path.ToString();
    }

    /// <summary>A sheet: closed outlines where its face is seen, else a line.</summary>
    public string Path(SectionFilm sheet) => sheet.Filled ? Path(sheet.Rings) : sheet.Rings.Aggregate(new StringBuilder(), Trace).ToString();

    /// <summary>The mould's wall: every outline, open where it reaches the rim.</summary>
    public string Wall()
    {
        var rim = view.Drawn(view.HeightMm);
        var path = new StringBuilder();
        foreach (var ring in view.Outline)
        {
            bool Open(int i) => Math.Abs(ring[i].ZMm - rim) < 1e-6 && Math.Abs(ring[(i + 1) % ring.Count].ZMm - rim) < 1e-6;
            var start = Enumerable.Range(0, ring.Count).FirstOrDefault(Open, -1);
            var run = new List<SectionPoint>();
            for (var k = 1; k <= ring.Count; k++)
            {
                var i = (start + k) % ring.Count;
                run.Add(ring[i]);
                if (Open(i) || k == ring.Count)
                {
                    Trace(path, run);
                    path.Append(start < 0 ? "Z" : "");
                    run.Clear();
                }
            }
        }

        return path.ToString();
    }

    /// <summary>A number as SVG reads it; a tenth of a pixel is finer than any screen.</summary>
    public static string Number(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A length as a workshop drawing writes it: the unit stands once, at the greatest.</summary>
    public string Length(double mm, bool unit = false) => units == "inch"
        ? (mm / 25.4).ToString("0.##", CultureInfo.InvariantCulture) + (unit ? " in" : "")
        : mm.ToString("0.#", CultureInfo.InvariantCulture) + (unit ? " mm" : "");

    private StringBuilder Trace(StringBuilder path, IReadOnlyList<SectionPoint> points)
    {
        for (var i = 0; i < points.Count; i++)
        {
            path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(points[i].XMm):0.#} {Y(points[i].ZMm):0.#}");
        }

        return path;
    }

    private IEnumerable<SectionDimension> AllDimensions()
    {
        const int Outer = 16;
        const int Inner = 46;
        yield return new SectionDimension(Outer, Y(0), Outer, Y(view.HeightMm), Length(view.HeightMm, true), Upright: true);
        foreach (var l in view.Bands.Where(b => !b.Empty).Select(b => b.Layer))
        {
            var (a, b) = (Y(view.Drawn(Math.Max(0, l.FromMm))), Y(view.Drawn(Math.Min(l.ToMm, view.HeightMm))));
            var figure = Length(l.ToMm - l.FromMm);
            yield return new SectionDimension(Inner, a, Inner, b, Math.Abs(a - b) >= (figure.Length * FigureWidth) + 2 ? figure : "", Upright: true);
        }

        foreach (var z in new[] { 0, view.HeightMm }.Where(z => view.WidthMm(z) * Scale > 46))
        {
            yield return Across(view.SpanMm(z), view.Drawn(z) > 0 ? Y(view.Drawn(z)) - 18 : Y(view.Drawn(z)) + 26);
        }

        if (widest)
        {
            yield return Across((view.LeftMm, view.RightMm), Y(0) + 26 + SecondRow);
        }
    }

    private SectionDimension Across((double Left, double Right) span, double y) => new(X(span.Left), y, X(span.Right), y, Length(span.Right - span.Left, true), Upright: false);

    private IEnumerable<SectionLine> AllLines()
    {
        for (var i = 0; i < view.Bands.Count; i++)
        {
            var l = view.Bands[i].Layer;
            if (l.Movable)
            {
                var next = i + 1 < view.Bands.Count ? view.Bands[i + 1].Layer : null;
                var (left, right) = view.SpanMm(l.ToMm);
                yield return new SectionLine(l.Key, next?.Name ?? "the open top", l.Name, l.ToMm, l.FromMm, next?.ToMm ?? view.HeightMm, X(left), X(right), Y(view.Drawn(Math.Min(l.ToMm, view.HeightMm)))) { Gap = Gap(view.Drawn(l.ToMm)) };
            }
        }
    }

    private (double From, double To) Gap(double drawnMm) =>
        view.Former.FirstOrDefault(f => f.Open && f.LowMm < drawnMm && drawnMm < f.HighMm) is { } room ? (X(room.LeftMm), X(room.RightMm)) : (AxisX, AxisX);
}
