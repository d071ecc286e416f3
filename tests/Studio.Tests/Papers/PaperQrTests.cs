using SkiaSharp;
using Studio.Keepsakes;
using Studio.Papers;
using ZXing;

namespace Studio.Tests.Papers;

/// <summary>Labels are scanned back with ZXing.Net. Quiet zone of four modules, level M: ISO/IEC 18004.</summary>
public sealed class PaperQrTests
{
    private const int Dpi = 300;

    public static TheoryData<PaperSize> Sizes => [PaperSize.A4, PaperSize.Letter];

    [Theory]
    [InlineData("KS-26-00042-H")]
    [InlineData("https://studio.example/k/KS-26-00042-H")]
    [InlineData("Łódź, ő")]
    public void The_modules_that_are_drawn_read_back_as_they_were_given(string text)
    {
        var modules = PaperQr.Modules(text);
        const int Scale = 6;
        var side = (modules.Count + (2 * PaperQr.QuietModules)) * Scale;
        var grey = new byte[side * side];
        Array.Fill(grey, (byte)255);
        foreach (var run in PaperQr.Runs(text, 0, 0, side))
        {
            for (var y = (int)Math.Round(run.Y); y < (int)Math.Round(run.Y + run.Height); y++)
            {
                Array.Fill(grey, (byte)0, (y * side) + (int)Math.Round(run.X), (int)Math.Round(run.Width));
            }
        }

        var result = Scan(new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8));
        result.ShouldNotBeNull().Text.ShouldBe(text);
        result.ResultMetadata[ResultMetadataType.ERROR_CORRECTION_LEVEL].ShouldBe("M");
    }

    [Theory, MemberData(nameof(Sizes))]
    public void Every_label_of_a_printed_sheet_scans_in_its_own_cell(PaperSize size)
    {
        Tool.Need("pdftoppm");
        var grid = LabelGrid.For(size);
        var model = PaperSamples.Labels(grid.Cells, start: 5);
        var pages = PaperTools.Pages(LabelPaper.Create(model, size), Dpi);
        pages.Count.ShouldBe(2, "a sheet begun at its fifth cell runs over onto a second");
        for (var i = 0; i < model.Labels.Count; i++)
        {
            var place = i + 4;
            using var page = SKBitmap.Decode(pages[place / grid.Cells]);
            using var cell = Cut(page, grid, place % grid.Cells);
            var result = Scan(Grey(cell)).ShouldNotBeNull($"label {i + 1}");
            result.Text.ShouldBe(model.Labels[i].QrText);
        }
    }

    [Fact]
    public void The_cells_that_were_used_before_stay_blank()
    {
        Tool.Need("pdftoppm");
        using var page = SKBitmap.Decode(PaperTools.Pages(LabelPaper.Create(PaperSamples.Labels(2, start: 5), PaperSize.A4), 60)[0]);
        foreach (var (cell, used) in Enumerable.Range(0, 8).Select(c => (c, c is 4 or 5)))
        {
            using var cut = Cut(page, LabelGrid.A4ThreeByEight, cell);
            cut.Pixels.Any(p => p.Red < 128).ShouldBe(used, $"cell {cell + 1}");
        }
    }

    /// <summary>At least 20 mm across: facts of the trade, 'common practice'; on the low Letter cell the quiet zone counts in.</summary>
    [Theory]
    [InlineData(PaperSize.A4, false)]
    [InlineData(PaperSize.Letter, true)]
    public void The_symbol_is_large_enough_and_nothing_stands_in_its_quiet_zone(PaperSize size, bool withQuietZone)
    {
        Tool.Need("pdftoppm");
        var model = PaperSamples.Labels(1);
        using var page = SKBitmap.Decode(PaperTools.Pages(LabelPaper.Create(model, size), Dpi)[0]);
        using var cell = Cut(page, LabelGrid.For(size), 0);
        var modules = PaperQr.Modules(model.Labels[0].QrText).Count;

        // the two finder patterns at the left edge begin and end the symbol's first column
        var left = Enumerable.Range(0, cell.Width).First(x => Enumerable.Range(0, cell.Height).Any(y => Dark((x, y))));
        var top = Enumerable.Range(0, cell.Height).First(y => Dark((left + 2, y)));
        var bottom = Enumerable.Range(0, cell.Height).Last(y => Dark((left + 2, y)));
        var side = bottom - top + 1.0;
        var sideMm = side / Dpi * 25.4;
        (withQuietZone ? sideMm * (modules + 8) / modules : sideMm).ShouldBeGreaterThan(20);

        var module = side / modules;
        var right = left + (int)side + 1;
        var clear = Enumerable.Range(right, (int)(4 * module) - 2).All(x => Enumerable.Range(0, cell.Height).All(y => !Dark((x, y))));
        clear.ShouldBeTrue("four modules right of the symbol are blank");
        (left / module).ShouldBeGreaterThan(3.9);

        bool Dark((int X, int Y) at) => cell.GetPixel(at.X, at.Y).Red < 128;
    }

    [Fact]
    public void A_start_cell_off_the_sheet_is_refused()
    {
        Should.Throw<ArgumentOutOfRangeException>(() => LabelPaper.Create(PaperSamples.Labels(1, start: 25), PaperSize.A4)).Message.ShouldContain("1 to 24");
        Should.Throw<ArgumentOutOfRangeException>(() => LabelPaper.Create(PaperSamples.Labels(1, start: 0), PaperSize.A4));
        Should.Throw<ArgumentException>(() => LabelPaper.Create(PaperSamples.Labels(1, grid: LabelGrid.LetterThreeByTen), PaperSize.A4));
    }

    private static SKBitmap Cut(SKBitmap page, LabelGrid grid, int cell)
    {
        var (row, column) = Math.DivRem(cell, grid.Columns);
        var scale = page.Width / grid.Size.WidthMm();
        var (left, top) = (grid.LeftMm + (column * grid.PitchXMm), grid.TopMm + (row * grid.PitchYMm));
        var area = new SKRectI((int)(left * scale), (int)(top * scale), (int)((left + grid.CellWidthMm) * scale), (int)((top + grid.CellHeightMm) * scale));
        var cut = new SKBitmap(area.Width, area.Height);
        using var canvas = new SKCanvas(cut);
        canvas.Clear(SKColors.White);
        canvas.DrawBitmap(page, -area.Left, -area.Top, SKSamplingOptions.Default);
        return cut;
    }

    private static RGBLuminanceSource Grey(SKBitmap bitmap) =>
        new([.. bitmap.Pixels.Select(p => p.Red)], bitmap.Width, bitmap.Height, RGBLuminanceSource.BitmapFormat.Gray8);

    private static Result? Scan(LuminanceSource source)
    {
        var reader = new BarcodeReaderGeneric { Options = { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } };
        return reader.Decode(source);
    }
}
