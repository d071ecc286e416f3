using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Bench;
using Studio.Heat;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using UglyToad.PdfPig;
using TestContext = Xunit.TestContext;

namespace Studio.Tests.Bench;

public sealed class PourPaperBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook bench;
    private readonly PourPaperBook book;

    public PourPaperBookTests()
    {
        var settings = new SettingsBook(studio.Factory, studio.News);
        scene = new(studio.Factory, studio.Clock);
        var heats = new PourHeatBook(studio.Factory, studio.Clock);
        bench = new(studio.Factory, studio.Clock, studio.News, settings, heats);
        book = new(bench, heats, settings);
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

    [Fact]
    public async Task The_first_step_levels_the_mould_as_well_as_this_line_needs()
    {
        var id = await scene.PieceAsync();
        var tilt = (await bench.ReadAsync(id))!.Layers[2].Tilt!;
        var words = await WordsAsync(id, 3, leftColumn: true);
        words.ShouldContain("Level the mould first: to");
        words.ShouldContain($"{Math.Floor(tilt.MostPer100Mm * 100) / 100:0.##} mm over 100 mm");
        words.ShouldNotContain("±");
    }

    [Fact]
    public async Task A_mould_that_was_filled_with_water_prints_how_sure_the_grams_are()
    {
        var id = await scene.PieceAsync();
        await using (var db = studio.Open())
        {
            var piece = await db.Set<Studio.Pieces.Piece>().Include(p => p.Mould).SingleAsync(p => p.Id == id, TestContext.Current.CancellationToken);
            (piece.Mould!.VolumeFactor, piece.Mould.VolumeSpreadPercent) = (1.02, 1.5);
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var plan = (await bench.ReadAsync(id))!.Layers[1].Plan!;
        plan.MixSpreadG!.Value.ShouldBeGreaterThan(0);
        var words = await WordsAsync(id, 2);
        words.ShouldContain($"± {plan.MixSpreadG.Value.ToString(plan.MixSpreadG < 10 ? "N2" : "N1", CultureInfo.InvariantCulture)} g in one batch");
        words.ShouldContain("rests on the mould’s water check: its volumes are sure to ± 1.5 %");
    }

    private async Task<string> WordsAsync(int id, int layer, bool leftColumn = false)
    {
        using var pdf = PdfDocument.Open((await book.SheetAsync(id, layer))!.Content);
        return string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords().Where(w => !leftColumn || w.BoundingBox.Left < p.Width * 0.44)).Select(w => w.Text)).Replace('\u00a0', ' ');
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task A_layer_with_layers_above_it_prints_no_time_to_demould(bool poured)
    {
        var id = await scene.PieceAsync();
        if (poured)
        {
            await scene.ReadingAsync(23);
            await scene.PourAsync(id, 0, scene.Now);
        }

        (await WordsAsync(id, 1)).ShouldContain("the last layer allows it");
        (await WordsAsync(id, 3)).ShouldNotContain("the last layer allows it");
    }

    // the sheet's own six hours hold in a room as warm as it was printed for, and for a resin of which nothing more is known
    [Theory]
    [InlineData(17.0, 1.0)]
    [InlineData(23.0, 3.0)]
    public async Task A_layer_not_poured_yet_prints_the_hours_that_the_clock_will_tell_and_not_the_sheets(double roomC, double slower)
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(roomC);
        var resin = (await bench.ReadAsync(id))!.Layers[0].Resin.Id;
        await KnownCureScene.AddAsync(studio, resin, KnownCure.Proposed, slower);
        var foretold = (await bench.ReadAsync(id))!.IfPouredNow(0).ShouldNotBeNull();
        var words = await WordsAsync(id, 1);

        await scene.PourAsync(id, 0, scene.Now);
        var poured = (await bench.ReadAsync(id))!;
        var told = poured.Times.Layers.Single();
        var hours = (told.From.At!.Value - told.StartedAt).TotalHours;
        hours.ShouldBeGreaterThan(Scene.Casting.Times[0].NextPourFromHours!.Value + 0.5);
        (foretold.From.At!.Value - foretold.StartedAt).TotalHours.ShouldBe(hours, 1e-3);
        words.ShouldContain($"not before {Careful(hours)} hours after");
        words.ShouldContain("If it is poured in the room as it is.");
        poured.IfPouredNow(0).ShouldBeNull();
    }

    // to the tenth of an hour, upwards: a paper is never earlier than the clock
    private static string Careful(double hours) => (Math.Ceiling(Math.Round(hours * 10, 6)) / 10).ToString("0.#", CultureInfo.InvariantCulture);

    [Fact]
    public async Task Where_the_room_was_never_read_the_hours_are_the_sheets_and_are_said_to_be_printed()
    {
        var words = await WordsAsync(await scene.PieceAsync(), 1);
        words.ShouldContain("Printed for 23 °C; a colder room takes longer.");
        words.ShouldContain($"not before {Scene.Casting.Times[0].NextPourFromHours} hours after");
    }

    // what a scale shows as nothing is still stirred in
    [Theory]
    [InlineData(0.01, "less than 0.1 g, 0.01 % of the resin")]
    [InlineData(0.0005, "less than 0.1 g, 0.0005 % of the resin")]
    public async Task What_is_more_than_nothing_is_never_said_to_be_nothing(double percent, string words)
    {
        var id = await scene.PieceAsync();
        await scene.ChangeAsync<PieceLayer>(_ => true, l => l.Additions = [new(null, "Blue tint", percent, 1.1)]);
        var sheet = (await bench.ReadAsync(id))!;
        var layer = sheet.Layers[0];
        layer.Plan!.Additions[0].Grams.ShouldBeInRange(1e-9, 0.0499);
        layer.Things.Single(t => t.What == "addition").Amount.ShouldBe(words);
        (await WordsAsync(id, 1)).ShouldNotContain(" 0.00 ");
    }

    [Theory]
    [InlineData(0)]
    [InlineData(4)]
    [InlineData(-1)]
    public async Task There_is_no_sheet_for_a_layer_that_is_not_there(int number) => (await book.SheetAsync(await scene.PieceAsync(), number)).ShouldBeNull();

    [Fact]
    public async Task There_is_no_sheet_for_a_piece_that_is_not_there() => (await book.SheetAsync(4711, 1)).ShouldBeNull();
}
