using PdfSharp.Drawing;

namespace Studio.Papers;

internal sealed partial class PaperFlow
{
    public void Rule(XColor? colour = null, double width = 0.5)
    {
        using var scope = _ink.Artifact();
        _ink.Line(Left, Y, Left + Width, Y, colour ?? PaperInks.Line, width);
    }

    /// <summary>The studio's head: its name at the left, where to find it at the right, a short line of amber below.</summary>
    /// <param name="state">A word in the head's rule line for a paper that is not the final one, such as "Draft"; empty for none.</param>
    public void Letterhead(PaperLetterhead studio, string state = "")
    {
        Columns(16,
            (1.15, () => Text(studio.StudioName, Type.Glance)),
            (1, () =>
            {
                foreach (var line in studio.Lines)
                {
                    Text(line, Type.Label, right: true);
                }
            }
        ));
        Y += 7;
        using (_ink.Artifact())
        {
            _ink.Line(Left, Y, Left + Measure.Mm(18), Y, PaperInks.Amber, 1.6);
        }

        if (state.Length > 0)
        {
            Y -= 6;
            Text(state, Type.Strong.In(PaperInks.Amber), right: true);
            Y += 6 - Type.Strong.Leading;
        }

        Y += 18;
    }

    /// <summary>
    /// Names and values, row by row. A null value leaves its row out; an empty one leaves a line to write on.
    /// </summary>
    public void Pairs(double labelWidth, IReadOnlyList<(string Label, string? Value)> pairs, PaperStyle? style = null)
    {
        style ??= Type.Text;
        var shown = pairs.Where(p => p.Value is not null).ToList();
        if (shown.Count == 0)
        {
            return;
        }

        using var table = _ink.Tag("Table");
        foreach (var (label, value) in shown)
        {
            Pair(label, value!, labelWidth, style);
        }
    }

    private void Pair(string label, string value, double labelWidth, PaperStyle style)
    {
        var labels = PaperWrap.Lines(label, labelWidth - 6, s => _ink.Width(s, Type.Label));
        var lines = PaperWrap.Lines(value, Width - labelWidth, s => _ink.Width(s, style));
        Need(Math.Max(labels.Count * Type.Label.Leading, Math.Min(2, lines.Count) * style.Leading));
        var top = Y;
        using var row = _ink.Tag("TR");
        using (_ink.Tag("TH", "Row"))
        {
            for (var i = 0; i < labels.Count; i++)
            {
                _ink.Text(labels[i], Type.Label, Left, top + style.Ascent + (i * Type.Label.Leading));
            }
        }

        using (_ink.Tag("TD"))
        {
            if (string.IsNullOrWhiteSpace(value))
            {
                WriteOn(Left + labelWidth, top + style.Leading - 1, Width - labelWidth);
                Y += style.Leading + 3;
            }
            else
            {
                Inset(labelWidth, 0, () => Lines(lines, style, right: false));
            }
        }

        var turnedThePage = Y < top;
        Y = turnedThePage ? Y + 2 : Math.Max(Y, top + (labels.Count * Type.Label.Leading) + 2) + 2;
    }

    /// <summary>A line to write on.</summary>
    public void WriteOn(double x, double y, double width)
    {
        using var scope = _ink.Artifact();
        _ink.Line(x, y, x + width, y, PaperInks.Slate, 0.6);
    }

    /// <summary>Room to sign: lines side by side with their names below.</summary>
    public void Signatures(double room, params (double Share, string Label)[] lines) =>
        Columns(18, [.. lines.Select(l => (l.Share, (Action)(() =>
        {
            Y += room;
            WriteOn(Left, Y, Width);
            Y += 2;
            Text(l.Label, Type.Label);
        })))]);

    /// <summary>A few things to see first: a small name above a large value, side by side on a tint.</summary>
    public void Glance(IReadOnlyList<(string Label, string Value)> values)
    {
        if (values.Count > 0)
        {
            Boxed(() => Columns(12, [.. values.Select(v => (1.0, (Action)(() =>
            {
                Text(v.Label, Type.Label);
                Text(v.Value, Type.Glance);
            })))]));
        }
    }

    /// <summary>A block on a tint; it stays on one page, or loses its tint where it cannot.</summary>
    public void Boxed(Action block, XColor? edge = null)
    {
        const double Pad = 9;
        var height = 0.0;
        Inset(Pad, Pad, () => height = HeightOf(block) + (2 * Pad));
        if (height > PageBody)
        {
            block();
            return;
        }

        Need(height);
        var top = Y;
        using (_ink.Artifact())
        {
            _ink.Rectangle(new XRect(Left, Y, Width, height), PaperInks.Wash, edge, 0.9);
        }

        Y += Pad;
        Inset(Pad, Pad, block);
        Y = top + height;
    }

    /// <summary>A QR symbol with its quiet zone, the whole square <paramref name="side"/> wide.</summary>
    public void Qr(string text, string alt, double x, double y, double side)
    {
        using var figure = _ink.Figure(alt, new XRect(x, y, side, side));
        _ink.Squares(PaperQr.Runs(text, x, y, side));
    }
}
