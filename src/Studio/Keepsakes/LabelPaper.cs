using Studio.Papers;

namespace Studio.Keepsakes;

/// <summary>The grid of a sheet of labels [mm]. Pitch is from one cell's edge to the next one's same edge.</summary>
public sealed record LabelGrid(string Name, PaperSize Size, int Columns, int Rows, double CellWidthMm, double CellHeightMm, double LeftMm, double TopMm, double PitchXMm, double PitchYMm)
{
    /// <summary>Three by eight on A4, 70 × 37 mm, without gaps.</summary>
    public static LabelGrid A4ThreeByEight { get; } = new("3 × 8 on A4, 70 × 37 mm", PaperSize.A4, 3, 8, 70, 37, 0, 0.5, 70, 37);

    /// <summary>Three by ten on US Letter, 66.7 × 25.4 mm (2⅝ × 1 in).</summary>
    public static LabelGrid LetterThreeByTen { get; } = new("3 × 10 on Letter, 66.7 × 25.4 mm", PaperSize.Letter, 3, 10, 66.7, 25.4, 4.75, 12.7, 69.85, 25.4);

    public int Cells => Columns * Rows;

    /// <summary>The usual grid of a sheet size.</summary>
    public static LabelGrid For(PaperSize size) => size is PaperSize.Letter ? LetterThreeByTen : A4ThreeByEight;
}

/// <summary>A sheet of labels.</summary>
public sealed record LabelPaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required IReadOnlyList<LabelPaperLabel> Labels { get; init; }

    /// <summary>Null takes the usual grid of the sheet.</summary>
    public LabelGrid? Grid { get; init; }

    /// <summary>The first free cell of a part-used sheet, counted from 1 along the rows.</summary>
    public int StartAtCell { get; init; } = 1;

    /// <summary>Where a found keepsake goes, in a line; null prints the studio's name and telephone.</summary>
    public string? ReturnTo { get; init; }

    public required DateTime MadeUtc { get; init; }

    /// <summary>Language tag of the words.</summary>
    public string Language { get; init; } = "en-GB";
}

/// <summary>One keepsake's label.</summary>
/// <param name="EntryNumber">Such as KS-26-00042-H.</param>
/// <param name="QrText">What a scan reads: the keepsake's address, or its number.</param>
/// <param name="Description">A few words; cut where they do not fit.</param>
/// <param name="Commission">The commission's number or name.</param>
public sealed record LabelPaperLabel(string EntryNumber, string QrText, string Description, string Commission);

/// <summary>Labels that travel with a keepsake: a QR symbol, the entry number to read and to say, and where it belongs.</summary>
public static class LabelPaper
{
    /// <summary>Widest QR square, its quiet zone included [mm].</summary>
    private const double MaxQrMm = 28.5;

    /// <summary>As many sheets as the labels need, the first one from its start cell.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The start cell is not on the sheet.</exception>
    /// <exception cref="ArgumentException">The grid is for the other sheet size.</exception>
    public static byte[] Create(LabelPaperModel model, PaperSize size)
    {
        var grid = model.Grid ?? LabelGrid.For(size);
        if (grid.Size != size)
        {
            throw new ArgumentException($"The grid {grid.Name} does not belong on {size}.", nameof(model));
        }

        if (model.StartAtCell < 1 || model.StartAtCell > grid.Cells)
        {
            throw new ArgumentOutOfRangeException(nameof(model), model.StartAtCell, $"The first cell must be from 1 to {grid.Cells}.");
        }

        return PaperFlow.Render(
            new PaperSetup("Keepsake labels", size, PaperType.Work(), model.Language, model.Studio.StudioName, "", model.MadeUtc) { HasFoot = false, SideMm = 0, TopMm = 0, BottomMm = 0 },
            flow => Sheet(flow, model, grid));
    }

    private static void Sheet(PaperFlow flow, LabelPaperModel model, LabelGrid grid)
    {
        for (var i = 0; i < model.Labels.Count; i++)
        {
            var cell = (model.StartAtCell - 1 + i) % grid.Cells;
            if (cell == 0 && i > 0)
            {
                flow.Break();
            }

            var (row, column) = Math.DivRem(cell, grid.Columns);
            Label(flow, model, model.Labels[i], grid, grid.LeftMm + (column * grid.PitchXMm), grid.TopMm + (row * grid.PitchYMm));
        }
    }

    private static void Label(PaperFlow flow, LabelPaperModel model, LabelPaperLabel label, LabelGrid grid, double xMm, double yMm)
    {
        var qr = Math.Min(MaxQrMm, grid.CellHeightMm - 0.6);
        var pad = (grid.CellHeightMm - qr) / 2;
        var left = Measure.Mm(xMm + Math.Max(pad, 1.5));
        using var section = flow.Ink.Tag("Sect");
        flow.Qr(label.QrText, "QR code of " + label.EntryNumber, left, Measure.Mm(yMm + pad), Measure.Mm(qr));

        var textLeft = left + Measure.Mm(qr);
        var roomy = grid.CellHeightMm > 30;
        var width = Measure.Mm(xMm + grid.CellWidthMm - (roomy ? 5 : 2)) - textLeft;
        var lines = Lines(flow, model, label, width, roomy);
        var y = Measure.Mm(yMm + (grid.CellHeightMm / 2)) - (lines.Sum(l => l.Style.Leading + l.Before) / 2);
        foreach (var (text, style, before) in lines)
        {
            y += before;
            using (flow.Ink.Tag("P"))
            {
                flow.Ink.Text(text, style, textLeft, y + style.Ascent);
            }

            y += style.Leading;
        }
    }

    private static List<(string Text, PaperStyle Style, double Before)> Lines(PaperFlow flow, LabelPaperModel model, LabelPaperLabel label, double width, bool roomy)
    {
        var type = flow.Type;
        var (number, words, plain, foot) = (Shrunk(flow, EntryWords.Spaced(label.EntryNumber), roomy ? 13 : 11.5, width), type.Sized(roomy ? 6.6 : 6), type.Sized(roomy ? 8 : 7), type.Sized(roomy ? 6.4 : 5.8));
        var lines = new List<(string, PaperStyle, double)> { (EntryWords.Spaced(label.EntryNumber), number, 0) };
        Add(EntryWords.Spell(label.EntryNumber), words.In(PaperInks.Slate), 3, 0);
        Add(label.Description, plain, roomy ? 2 : 1, roomy ? 3 : 1.5);
        Add(label.Commission, plain, 1, 0);
        Add("Return to " + (model.ReturnTo ?? string.Join(", ", new[] { model.Studio.StudioName, model.Studio.Phone ?? "" }.Where(s => s.Length > 0))), foot.In(PaperInks.Slate), 2, roomy ? 3 : 1.5);
        return lines;

        void Add(string text, PaperStyle style, int most, double before)
        {
            if (string.IsNullOrWhiteSpace(text))
            {
                return;
            }

            var wrapped = PaperWrap.Lines(text, width, s => flow.Ink.Width(s, style));
            for (var i = 0; i < Math.Min(most, wrapped.Count); i++)
            {
                var last = i == most - 1 && wrapped.Count > most;
                lines.Add((last ? flow.Fit(string.Join(' ', wrapped.Skip(i)), style, width) : wrapped[i], style, i == 0 ? before : 0));
            }
        }
    }

    /// <summary>The number is never cut: it is set smaller until it fits.</summary>
    private static PaperStyle Shrunk(PaperFlow flow, string text, double size, double width)
    {
        var style = flow.Type.Sized(size, bold: true);
        while (flow.Ink.Width(text, style) > width && size > 5)
        {
            size -= 0.5;
            style = flow.Type.Sized(size, bold: true);
        }

        return style;
    }
}
