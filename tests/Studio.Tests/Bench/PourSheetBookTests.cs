using Studio.Bench;
using Studio.Settings;
using UglyToad.PdfPig;

namespace Studio.Tests.Bench;

public sealed class PourSheetBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook bench;
    private readonly PourSheetBook book;

    public PourSheetBookTests()
    {
        var settings = new SettingsBook(studio.Factory, studio.News);
        scene = new(studio.Factory, studio.Clock);
        bench = new(studio.Factory, studio.Clock, studio.News, settings);
        book = new(bench, settings);
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task The_sheet_prints_the_grams_that_the_bench_shows()
    {
        var id = await scene.PieceAsync();
        var plan = (await bench.ReadAsync(id))!.Layers[1].Plan!;
        var file = await book.SheetAsync(id, 2);
        file.ShouldNotBeNull();
        file.FileName.ShouldBe("pour-26-001-layer-2.pdf");
        using var pdf = PdfDocument.Open(file.Content);
        var words = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        words.ShouldContain("heather band");
        words.ShouldContain(plan.PartAG.ToString("N1", System.Globalization.CultureInfo.GetCultureInfo("en-GB")));
        words.ShouldContain(plan.PartBG.ToString("N1", System.Globalization.CultureInfo.GetCultureInfo("en-GB")));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(-1)]
    public async Task There_is_no_sheet_for_a_layer_that_is_not_there(int number) => (await book.SheetAsync(await scene.PieceAsync(), number)).ShouldBeNull();

    [Fact]
    public async Task There_is_no_sheet_for_a_piece_that_is_not_there() => (await book.SheetAsync(4711, 1)).ShouldBeNull();
}
