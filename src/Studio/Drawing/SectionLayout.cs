using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Studio.Drawing;

/// <summary>A name beside the drawing with the line that leads to it; all in drawing units (about one pixel each).</summary>
/// <param name="Y">Top of the block of lines.</param>
public sealed record SectionLabel(int Number, IReadOnlyList<string> Lines, string Detail, string Full, LayerState State, double X, double Y, double Height, double AnchorX, double AnchorY);

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
    private const double LineHeight = 18;
    private const double DetailHeight = 16;
    private const double LabelGap = 8;
    private const double LetterWidth = 7.6;
    private const double FigureWidth = 6.8;

    private readonly SectionView view;
    private readonly string units;
    private readonly bool names;

    /// <summary>Takes the view, whether it has names and dimensions, and the width to fill.</summary>
    /// <param name="width">Drawing units, about a pixel each.</param>
    /// <param name="tallest">The drawing itself is at most this high.</param>
    /// <param name="names">False leaves each layer's number alone, for a narrow page that lists the layers beside it.</param>
    public SectionLayout(SectionView view, bool large, double width, double tallest, string units, bool names = true)
    {
        (this.view, this.units, this.names, Width) = (view, units, names, width);
        var left = large ? 66 : 5;
        var right = !large ? 5 : names ? Math.Clamp(width * 0.31, 118, 230) : 52;
        var head = large ? 34 : 5;
        var foot = large ? 34 : 5;
        Scale = Math.Max(0.001, Math.Min((width - left - right) / view.WidestMm, (tallest - head - foot) / view.HeightMm));
        AxisX = left + ((width - left - right) / 2);
        var labels = large ? Labels(width - right + 14, right - 14) : [];
        var tall = view.HeightMm * Scale;
        var needed = labels.Sum(l => l.Height + LabelGap);
        Height = Math.Max(tall, needed) + head + foot;
        Top = head + Math.Max(0, (needed - tall) / 2);
        LeftX = AxisX - (view.WidestMm / 2 * Scale);
        RightX = AxisX + (view.WidestMm / 2 * Scale);
        LabelList = Spread(labels, 6, Height - 6);
        Dimensions = large ? [.. AllDimensions()] : [];
        Lines = [.. AllLines()];
    }

    public double Width { get; }

    public double Height { get; }

    /// <summary>Drawing units a mm.</summary>
    public double Scale { get; }

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

    /// <summary>A closed path.</summary>
    public string Path(IReadOnlyList<SectionPoint> points)
    {
        var path = new StringBuilder();
        foreach (var p in points)
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(Number(X(p.XMm))).Append(' ').Append(Number(Y(p.ZMm)));
        }

        return path.Length == 0 ? "" : path.Append('Z').ToString();
    }

    /// <summary>The mould's wall, open at the rim: down one side, along the bottom, up the other.</summary>
    public string Wall()
    {
        var half = view.Outline.Count / 2;
        var path = new StringBuilder();
        foreach (var p in view.Outline.Take(half).Reverse().Concat(view.Outline.Skip(half).Reverse()))
        {
            path.Append(path.Length == 0 ? 'M' : 'L').Append(Number(X(p.XMm))).Append(' ').Append(Number(Y(p.ZMm)));
        }

        return path.ToString();
    }

    /// <summary>A number as SVG reads it.</summary>
    public static string Number(double value) => value.ToString("0.###", CultureInfo.InvariantCulture);

    /// <summary>A length as a workshop drawing writes it: the unit stands once, at the greatest.</summary>
    public string Length(double mm, bool unit = false) => units == "inch"
        ? (mm / 25.4).ToString("0.##", CultureInfo.InvariantCulture) + (unit ? " in" : "")
        : mm.ToString("0.#", CultureInfo.InvariantCulture) + (unit ? " mm" : "");

    private IEnumerable<SectionDimension> AllDimensions()
    {
        var outer = 16;
        yield return new SectionDimension(outer, Y(0), outer, Y(view.HeightMm), Length(view.HeightMm, true), Upright: true);
        foreach (var l in view.Bands.Where(b => b.Points.Count > 0).Select(b => b.Layer))
        {
            var (a, b) = (Y(view.Drawn(Math.Max(0, l.FromMm))), Y(view.Drawn(Math.Min(l.ToMm, view.HeightMm))));
            var figure = Length(l.ToMm - l.FromMm);
            yield return new SectionDimension(46, a, 46, b, Math.Abs(a - b) >= (figure.Length * FigureWidth) + 2 ? figure : "", Upright: true);
        }

        foreach (var z in new[] { 0, view.HeightMm }.Where(z => view.WidthMm(z) * Scale > 40))
        {
            var (half, drawn) = (view.WidthMm(z) / 2, view.Drawn(z));
            var y = drawn > 0 ? Y(drawn) - 18 : Y(drawn) + 20;
            yield return new SectionDimension(X(-half), y, X(half), y, Length(view.WidthMm(z), true), Upright: false);
        }
    }

    private IEnumerable<SectionLine> AllLines()
    {
        for (var i = 0; i < view.Bands.Count; i++)
        {
            var l = view.Bands[i].Layer;
            if (l.Movable)
            {
                var next = i + 1 < view.Bands.Count ? view.Bands[i + 1].Layer : null;
                var half = view.WidthMm(l.ToMm) / 2;
                yield return new SectionLine(l.Key, next?.Name ?? "the open top", l.Name, l.ToMm, l.FromMm, next?.ToMm ?? view.HeightMm, X(-half), X(half), Y(view.Drawn(Math.Min(l.ToMm, view.HeightMm)))) { Gap = Gap(view.Drawn(l.ToMm)) };
            }
        }
    }

    private (double From, double To) Gap(double drawnMm) =>
        view.Former.FirstOrDefault(f => f.Open && f.LowMm < drawnMm && drawnMm < f.HighMm) is { } room ? (X(room.LeftMm), X(room.RightMm)) : (AxisX, AxisX);

}
