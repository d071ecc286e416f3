using PdfSharp.Drawing;

namespace Studio.Papers;

internal sealed partial class PaperFlow
{
    /// <summary>Between the drawing and its names [pt].</summary>
    private const double LeaderRoom = 20;

    /// <summary>More names than this get a wider column, so that each stays on one line.</summary>
    private const int Crowd = 7;

    private sealed record SetLabel(PaperLabel Label, IReadOnlyList<string> Lines, PaperStyle Style, XPoint Anchor)
    {
        public double Height => (Lines.Count * Style.Leading) + 3;

        public double Top { get; set; }
    }

    /// <summary>A drawing to scale in the present column, its names in a column of their own at the right.</summary>
    /// <param name="maxHeight">Height at most [pt].</param>
    /// <param name="labelStyle">Face of the names.</param>
    public void Drawing(PaperDrawing drawing, double maxHeight, PaperStyle? labelStyle = null)
    {
        var points = drawing.Shapes.SelectMany(Points).ToList();
        if (points.Count == 0)
        {
            return;
        }

        var labels = drawing.Shapes.OfType<PaperLabel>().ToList();
        var style = LabelStyle(labels, labelStyle ?? Type.Small, maxHeight);
        var (minX, maxX, minZ, maxZ) = (points.Min(p => p.XMm), points.Max(p => p.XMm), points.Min(p => p.ZMm), points.Max(p => p.ZMm));
        var names = labels.Count == 0 ? 0 : Math.Min(labels.Max(l => _ink.Width(PaperWrap.Clean(l.Text), style.Bold())) + 1, Width * (labels.Count > Crowd ? 0.5 : 0.36));
        var scale = Math.Min((Width - names - (names > 0 ? LeaderRoom : 0)) / Math.Max(maxX - minX, 1), maxHeight / Math.Max(maxZ - minZ, 1));
        var tall = (maxZ - minZ) * scale;
        var gap = (maxX - minX) * scale;
        var set = SetLabels(labels, style, names, p => Place(p, 0));
        var height = Math.Max(tall, set.Sum(l => l.Height));

        Need(height);
        var top = Y;
        var shift = (height - tall) / 2;
        set = SetLabels(labels, style, names, p => Place(p, top + shift));
        using (_ink.Figure(drawing.Alt, new XRect(Left, top, Width, height)))
        {
            foreach (var shape in drawing.Shapes)
            {
                Draw(shape, p => Place(p, top + shift));
            }

            Draw(set, top, top + height, Left + gap + LeaderRoom);
        }

        Y = top + height;

        XPoint Place(PaperPoint p, double from) => new(Left + ((p.XMm - minX) * scale), from + ((maxZ - p.ZMm) * scale));
    }

    /// <summary>Names that would stand taller than the drawing are set smaller, not below 7.5 pt.</summary>
    private PaperStyle LabelStyle(IReadOnlyList<PaperLabel> labels, PaperStyle style, double maxHeight)
    {
        var size = style.Font.Size;
        while (size > 7.5 && labels.Count * (style.Leading + 3) > maxHeight)
        {
            size = Math.Max(7.5, size - 0.5);
            style = Type.Sized(size);
        }

        return style;
    }

    private static IEnumerable<PaperPoint> Points(PaperShape shape) => shape switch
    {
        PaperPolygon polygon => polygon.Points,
        PaperLine line => [line.From, line.To],
        PaperNote note => [note.At],
        _ => [],
    };

    private void Draw(PaperShape shape, Func<PaperPoint, XPoint> place)
    {
        switch (shape)
        {
            case PaperPolygon polygon:
                Draw(polygon, [.. polygon.Points.Select(place)]);
                break;
            case PaperLine line:
                var (a, b) = (place(line.From), place(line.To));
                _ink.Line(a.X, a.Y, b.X, b.Y, PaperInks.Hex(line.Stroke) ?? PaperInks.Ink, line.WidthPt, line.Dashed);
                break;
            case PaperNote note:
                var at = place(note.At);
                var text = PaperWrap.Clean(note.Text);
                _ink.Text(text, Type.Label, at.X - (_ink.Width(text, Type.Label) / 2), at.Y + (Type.Label.Font.Size * 0.35));
                break;
        }
    }

    private void Draw(PaperPolygon polygon, XPoint[] points)
    {
        _ink.Polygon(points, PaperInks.Hex(polygon.Fill), null);
        var mark = PaperInks.On(PaperInks.Hex(polygon.Fill));
        var flat = points.Select(p => (p.X, p.Y)).ToList();
        if (points.Length >= 3 && polygon.Pattern is PaperPattern.Hatch or PaperPattern.CrossHatch)
        {
            foreach (var (from, to) in PaperHatch.Lines(flat, -45, 4.5).Concat(polygon.Pattern is PaperPattern.CrossHatch ? PaperHatch.Lines(flat, 45, 4.5) : []))
            {
                _ink.Line(from.X, from.Y, to.X, to.Y, mark, 0.6);
            }
        }

        if (points.Length >= 3 && polygon.Pattern is PaperPattern.Dots)
        {
            foreach (var (x, y) in PaperHatch.Dots(flat, 4.5))
            {
                _ink.Rectangle(new XRect(x - 0.5, y - 0.5, 1, 1), mark, null);
            }
        }

        if (PaperInks.Hex(polygon.Stroke) is { } stroke)
        {
            _ink.Polygon(points, null, stroke, polygon.StrokePt);
        }
    }

    private List<SetLabel> SetLabels(IReadOnlyList<PaperLabel> labels, PaperStyle style, double width, Func<PaperPoint, XPoint> place)
    {
        var strong = style.Bold();
        return [.. labels.Select(l => (Label: l, Style: l.Strong ? strong : style))
            .Select(l => new SetLabel(l.Label, PaperWrap.Lines(l.Label.Text, width, s => _ink.Width(s, l.Style)), l.Style, place(l.Label.Anchor)))
            .OrderBy(l => l.Anchor.Y)];
    }

    /// <summary>Sets each name as near its anchor's height as its neighbours allow.</summary>
    private void Draw(List<SetLabel> labels, double top, double bottom, double x)
    {
        var y = top;
        foreach (var label in labels)
        {
            label.Top = y = Math.Max(y, label.Anchor.Y - (label.Style.Leading / 2));
            y += label.Height;
        }

        var floor = bottom;
        foreach (var label in Enumerable.Reverse(labels))
        {
            label.Top = Math.Min(label.Top, floor - label.Height);
            floor = label.Top;
        }

        foreach (var label in labels)
        {
            var middle = label.Top + (label.Style.Leading / 2);
            var width = label.Label.Strong ? 0.9 : 0.5;
            _ink.Rectangle(new XRect(label.Anchor.X - 1, label.Anchor.Y - 1, 2, 2), PaperInks.Ink, null);
            _ink.Line(label.Anchor.X, label.Anchor.Y, x - 12, middle, PaperInks.Slate, width);
            _ink.Line(x - 12, middle, x - 3, middle, PaperInks.Slate, width);
            for (var i = 0; i < label.Lines.Count; i++)
            {
                _ink.Text(label.Lines[i], label.Style, x, label.Top + (i * label.Style.Leading) + label.Style.Ascent);
            }
        }
    }
}
