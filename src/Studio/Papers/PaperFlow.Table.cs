using PdfSharp.Drawing;

namespace Studio.Papers;

internal sealed partial class PaperFlow
{
    private const double CellPad = 4;

    private sealed record SetLine(string Text, PaperStyle Style);

    private sealed record SetCell(PaperCell Cell, IReadOnlyList<SetLine> Lines, double PictureHeight, double X, double Width, bool Right)
    {
        public double Height => Lines.Sum(l => l.Style.Leading) + Math.Max(PictureHeight, Cell.Tick);
    }

    /// <summary>
    /// A table whose header stands again on every page it reaches. A row stays whole unless it is taller than a page.
    /// </summary>
    public void Table(IReadOnlyList<PaperColumn> columns, IReadOnlyList<IReadOnlyList<PaperCell>> rows)
    {
        var header = Set(columns, [.. columns.Select(c => PaperCell.Of(c.Heading, Type.Label))]);
        var headed = columns.Any(c => c.Heading.Length > 0);
        var first = rows.Count > 0 ? RowHeight(Set(columns, rows[0])) : 0;
        Need((headed ? RowHeight(header) : 0) + Math.Min(first, PageBody / 2));
        using var table = _ink.Tag("Table");
        if (headed)
        {
            using var row = _ink.Tag("TR");
            Row(header, "TH", "Column", null);
            RowRule(PaperInks.Slate);
        }

        foreach (var cells in rows)
        {
            var set = Set(columns, cells);
            void Again() => Repeat(header, headed);
            var whole = RowHeight(set) <= PageBody - RowHeight(header);
            if (RowHeight(set) > Rest && (whole || Rest < PageBody / 3))
            {
                Break();
                Again();
            }

            using (_ink.Tag("TR"))
            {
                Row(set, "TD", null, Again);
            }

            RowRule(PaperInks.Line);
        }
    }

    private void Repeat(List<SetCell> header, bool headed)
    {
        if (!headed)
        {
            return;
        }

        using (_ink.Artifact())
        {
            Row(header, null, null, null);
        }

        RowRule(PaperInks.Slate);
    }

    private void RowRule(XColor colour)
    {
        using var scope = _ink.Artifact();
        _ink.Line(Left, Y, Left + Width, Y, colour);
    }

    private List<SetCell> Set(IReadOnlyList<PaperColumn> columns, IReadOnlyList<PaperCell> cells)
    {
        var unit = Width / columns.Sum(c => c.Share);
        var x = Left;
        var set = new List<SetCell>(columns.Count);
        for (var i = 0; i < columns.Count; i++)
        {
            var width = unit * columns[i].Share;
            var text = width - (i == columns.Count - 1 ? 0 : 2 * CellPad);
            var cell = cells[i];
            var lines = cell.Paragraphs.Where(p => !string.IsNullOrWhiteSpace(p.Text))
                .SelectMany(p => PaperWrap.Lines(p.Text, text, s => _ink.Width(s, p.Style)).Select(l => new SetLine(l, p.Style)));
            set.Add(new SetCell(cell, [.. lines], PictureHeight(cell, text), x, text, columns[i].Right));
            x += width;
        }

        return set;
    }

    private double PictureHeight(PaperCell cell, double width) =>
        cell.Jpeg is { } jpeg && _ink.ImageSize(jpeg) is { Width: > 0 } size ? Math.Min(width * size.Height / size.Width, width * 0.85) : 0;

    private static double RowHeight(List<SetCell> row) => row.Max(c => c.Height) + (2 * CellPad);

    /// <summary>Draws a row; one taller than what is left goes on over the next pages, line by line.</summary>
    private void Row(List<SetCell> row, string? tag, string? scope, Action? again)
    {
        var drawn = new int[row.Count];
        var pictures = true;
        do
        {
            var top = Y;
            var room = Rest - (2 * CellPad);
            var deepest = 0.0;
            for (var i = 0; i < row.Count; i++)
            {
                using (tag is null ? default : _ink.Tag(tag, scope))
                {
                    deepest = Math.Max(deepest, Cell(row[i], ref drawn[i], top + CellPad, room, pictures));
                }
            }

            Y = top + deepest + (2 * CellPad);
            pictures = false;
            var all = row.Select((c, i) => drawn[i] >= c.Lines.Count).All(done => done);
            if (all || _endless)
            {
                return;
            }

            Break();
            again?.Invoke();
        }
        while (true);
    }

    private double Cell(SetCell cell, ref int line, double top, double room, bool pictures)
    {
        var y = 0.0;
        if (pictures && cell.PictureHeight > 0)
        {
            Picture(cell.Cell, cell.X, top, cell.Width, cell.PictureHeight);
            y += cell.PictureHeight;
        }

        if (pictures && cell.Cell.Tick > 0)
        {
            TickBox(cell.Right ? cell.X + cell.Width - cell.Cell.Tick : cell.X, top + 2, cell.Cell.Tick - 4);
            y += cell.Cell.Tick;
        }

        for (; line < cell.Lines.Count && y + cell.Lines[line].Style.Leading <= room + 0.01; line++)
        {
            var (text, style) = cell.Lines[line];
            _ink.Text(text, style, cell.Right ? cell.X + cell.Width - _ink.Width(text, style) : cell.X, top + y + style.Ascent);
            y += style.Leading;
        }

        return y;
    }

    /// <summary>A photograph, whole, in a box of the given width and height.</summary>
    public void Picture(PaperCell cell, double x, double y, double width, double height)
    {
        if (cell.Jpeg is not { } jpeg || _ink.ImageSize(jpeg) is not { Width: > 0 } size)
        {
            return;
        }

        var scale = Math.Min(width / size.Width, height / size.Height);
        var box = new XRect(x, y, size.Width * scale, size.Height * scale);
        using var figure = _ink.Figure(cell.Alt, box);
        _ink.Image(jpeg, box);
    }
}
