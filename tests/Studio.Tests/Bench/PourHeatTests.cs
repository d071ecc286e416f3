using Studio.Bench;
using Studio.Clock;
using Studio.Engine.Forecast;
using Studio.Heat;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;

namespace Studio.Tests.Bench;

/// <summary>
/// The stop before an overheating pour. Which peak a mould, a room and a resin give is checked against reference cases in the engine's tests; here it is
/// what the bench makes of it. An invented casting resin, its figures as such sheets print them (common practice, no source).
/// </summary>
public sealed class PourHeatTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly PourHeatBook heats;
    private readonly BenchBook book;

    public PourHeatTests()
    {
        scene = new(studio.Factory, studio.Clock);
        heats = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), heats);
    }

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task An_overheating_pour_is_stopped_and_passes_once_the_advice_is_taken()
    {
        var id = await PieceAsync(depthMm: 14, limitC: 36);
        await scene.ReadingAsync(23);
        var form = await FormAsync(id);
        var refused = await book.PourAsync(form, "Maker");
        refused.Ok.ShouldBeFalse();
        refused.Stops.ShouldHaveSingleItem().Code.ShouldBe("would-overheat");
        refused.Words.ShouldContain("for Test casting resin the limit is 36 °C");

        var told = await heats.AdviseAsync(await heats.AskAsync(form.Asked(heats), Stop), Stop);
        var thinner = told.Offers!.ShouldNotBeNull().Single(o => o.Kind == AdviceOffer.Thinner);
        thinner.Suffices.ShouldBeTrue();
        thinner.ChangesDesign.ShouldBeTrue();
        thinner.Value.ShouldBeInRange(2, 13.5);
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.ToMm = thinner.Value);
        var kept = await book.PourAsync(await FormAsync(id), "Maker");
        kept.Words.ShouldBe("");
        (await scene.AllAsync<Pour>()).Single().Foretold.ShouldNotBeNull().PeakHighC.ShouldBeLessThanOrEqualTo(36);
    }

    [Fact]
    public async Task An_overheating_pour_passes_with_a_reason_that_is_kept_with_it()
    {
        var id = await PieceAsync(depthMm: 14, limitC: 36);
        await scene.ReadingAsync(23);
        var form = await FormAsync(id);
        form.Why = "The mould stands in a water bath.";
        (await book.PourAsync(form, "Maker")).Words.ShouldBe("");
        var trace = (await scene.AllAsync<PourCorrection>()).Single();
        (trace.Field, trace.Passed, trace.Why).ShouldBe(("would-overheat", true, "The mould stands in a water bath."));
        (await scene.AllAsync<Pour>()).Single().Foretold.ShouldNotBeNull().PeakHighC.ShouldBeGreaterThan(36);
    }

    [Fact]
    public async Task A_runaway_shows_no_number_and_no_reason_passes_it()
    {
        var id = await PieceAsync(depthMm: 45, layers: 1);
        await scene.ReadingAsync(23);
        var form = await FormAsync(id);
        form.Why = "I have always done it so.";
        var refused = await book.PourAsync(form, "Maker");
        refused.Ok.ShouldBeFalse();
        var stop = refused.Stops.Single(s => s.Code == "run-away");
        stop.Message.ShouldStartWith("clear base: run-away, do not pour.");
        stop.Message.ShouldNotContain("°C");
        refused.Words.ShouldNotContain("say why");
        (await scene.AllAsync<Pour>()).ShouldBeEmpty();
        (await heats.AskAsync(form.Asked(heats), Stop)).Foretold.ShouldBeNull();
    }

    // 3 mm on 45 mm that have hardly begun: what is poured stays cool by itself, what lies under it does not
    [Fact]
    public async Task A_little_poured_on_top_hides_no_runaway_of_what_lies_under_it()
    {
        var id = await PieceAsync(depthMm: 45);
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 1, l => l.ToMm = 48);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now.AddMinutes(-10));
        var told = await heats.AskAsync(heats.Asked(id, (await scene.FindAsync(id)).Layers.Single(l => l.Order == 1).Id, null, null, ""), Stop);
        told.RunAway.ShouldBeTrue();
        told.Foretold.ShouldBeNull();
        told.Findings.ShouldHaveSingleItem().Message.ShouldStartWith("heather band, clear base under heather band: run-away, do not pour.");
    }

    [Fact]
    public async Task What_only_may_become_too_hot_is_warned_of_and_poured()
    {
        var id = await PieceAsync(depthMm: 10, limitC: 38);
        await scene.ReadingAsync(23);
        var told = await heats.AskAsync((await FormAsync(id)).Asked(heats), Stop);
        var finding = told.Findings.ShouldHaveSingleItem();
        (finding.Code, finding.Severity).ShouldBe(("may-overheat", Engine.Severity.Warn));
        told.Foretold.ShouldNotBeNull().PeakC.ShouldBeLessThan(38);
        (await book.PourAsync(await FormAsync(id), "Maker")).Words.ShouldBe("");
    }

    [Fact]
    public async Task What_only_may_run_away_shows_no_number_and_a_reason_passes_it()
    {
        var id = await PieceAsync(depthMm: 20);
        await scene.ReadingAsync(23);
        var form = await FormAsync(id);
        var told = await heats.AskAsync(form.Asked(heats), Stop);
        (told.RunAway, told.Foretold).ShouldBe((false, null));
        var stop = told.Findings.ShouldHaveSingleItem();
        stop.Code.ShouldBe("may-run-away");
        stop.Message.ShouldNotContain("°C");
        var paper = (await new PourPaperBook(book, heats, new SettingsBook(studio.Factory, studio.News)).SheetAsync(id, 1)).ShouldNotBeNull();
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(paper.Content);
        string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text)).ShouldContain("It may run away");
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeFalse();
        form.Why = "A test pour with a thermometer, outdoors.";
        (await book.PourAsync(form, "Maker")).Words.ShouldBe("");
        (await scene.AllAsync<Pour>()).Single().Foretold.ShouldBeNull();
    }

    [Fact]
    public async Task A_layer_deeper_than_its_sheet_prints_is_stopped_however_cool_it_would_stay()
    {
        var id = await PieceAsync(depthMm: 3);
        await scene.ReadingAsync(23);
        await scene.ChangeAsync<Resin>(_ => true, r => r.MaxPourMm = 2.5);
        (await book.PourAsync(await FormAsync(id), "Maker")).Stops.ShouldContain(s => s.Code == "deeper-than-sheet");
    }

    [Fact]
    public async Task A_hotter_room_makes_the_layer_hotter()
    {
        var id = await PieceAsync(depthMm: 8);
        await scene.ReadingAsync(20);
        var cool = await ToldAsync(await FormAsync(id));
        var warm = await FormAsync(id);
        warm.RoomC = 26;
        (await ToldAsync(warm)).PeakC.ShouldBeGreaterThan(cool.PeakC + 4);
    }

    [Fact]
    public async Task Without_a_reading_of_the_room_it_says_so_and_the_sheet_rules()
    {
        var id = await PieceAsync(depthMm: 10);
        var form = await FormAsync(id);
        (await heats.AskAsync(form.Asked(heats), Stop)).Unknown.ShouldBe("The room's temperature is not known. Log it, and the heat is worked out.");
        (await book.PourAsync(form, "Maker")).Words.ShouldBe("");
        (await scene.AllAsync<Pour>()).Single().Foretold.ShouldBeNull();
    }

    // a block of 100 x 100 mm as water and as a mesh tell it: the round body is as hot or hotter, and says what it is
    [Theory]
    [InlineData("measured")]
    [InlineData("mesh")]
    public async Task A_mould_of_which_only_the_areas_are_known_is_foretold_too(string shape)
    {
        var id = await PieceAsync(depthMm: 8);
        await scene.ChangeAsync<Studio.Moulds.Mould>(_ => true, m => m.Dimensions = new(StringComparer.Ordinal) { ["widthMm"] = 100, ["depthMm"] = 100, ["heightMm"] = 100 });
        await scene.ReadingAsync(23);
        var drawn = await ToldAsync(await FormAsync(id));
        var obj = "v 0 0 0\nv 100 0 0\nv 100 100 0\nv 0 100 0\nv 0 0 100\nv 100 0 100\nv 100 100 100\nv 0 100 100\nf 1 4 3 2\nf 5 6 7 8\nf 1 2 6 5\nf 2 3 7 6\nf 3 4 8 7\nf 4 1 5 8\n";
        var moulds = new Studio.Moulds.MouldBook(studio.Factory, studio.Clock, studio.News, studio.Meshes, new PieceUses());
        var sent = (await moulds.ReceiveAsync(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(obj)), "block.obj", _ => { }, Stop)).Mesh!;
        await scene.ChangeAsync<Studio.Moulds.Mould>(_ => true, m => (m.Shape, m.Dimensions, m.Readings, m.Mesh) = (shape, [], [new(0, 0), new(100, 1000)], new(sent.Stored, sent.FileName, "mm", "+z")));
        var form = await FormAsync(id);
        var told = await ToldAsync(form);
        told.Model.ShouldStartWith("body of revolution with the mould's area at every height");
        told.PeakC.ShouldBeInRange(drawn.PeakC, drawn.PeakC + 1);
        told.PeakLowC.ShouldBeLessThan(drawn.PeakC);
        told.PeakHighC.ShouldBeGreaterThan(drawn.PeakC);
        (await heats.AskAsync(form.Asked(heats), Stop)).RestsOn.ShouldContain("taken as a round body with the same area at every height");
        (await book.PourAsync(form, "Maker")).Words.ShouldBe("");
    }

    [Fact]
    public async Task A_layer_entered_before_the_one_under_it_is_never_foretold()
    {
        var id = await PieceAsync(depthMm: 5, layers: 3);
        await scene.ReadingAsync(23, scene.Now.AddDays(-3));
        await scene.PourAsync(id, 0, scene.Now.AddHours(-20));
        await scene.PourAsync(id, 1, scene.Now.AddHours(-30));
        (await heats.AskAsync((await FormAsync(id)).Asked(heats), Stop)).Unknown.ShouldStartWith("A layer is entered as poured before the one under it.");
    }

    [Fact]
    public async Task What_was_foretold_stays_when_the_resin_is_fitted_anew()
    {
        var id = await PieceAsync(depthMm: 8);
        await scene.ReadingAsync(23);
        (await book.PourAsync(await FormAsync(id), "Maker")).Words.ShouldBe("");
        var before = (await scene.AllAsync<Pour>()).Single();
        var told = before.Foretold.ShouldNotBeNull();
        told.KnownCureId.ShouldBe(0); // nobody had looked at the fit
        told.PeakLowC.ShouldBeLessThanOrEqualTo(told.PeakC);
        told.PeakHighC.ShouldBeGreaterThan(told.PeakC);
        told.Curve.Max(m => m.Celsius).ShouldBe(told.PeakC, 1);

        await KnownCureScene.AddAsync(studio, before.ResinId, KnownCure.Accepted, slower: 1.5);
        var after = (await scene.AllAsync<Pour>()).Single();
        after.Foretold.ShouldNotBeNull().PeakC.ShouldBe(told.PeakC);
        after.Kinetics.ShouldBeNull();
        after.Foretold.KnownCureId.ShouldBe(0);
    }

    [Fact]
    public async Task The_pour_sheet_prints_the_peak_and_what_to_do_if_it_gets_hotter()
    {
        var id = await PieceAsync(depthMm: 8);
        await scene.ReadingAsync(23);
        var settings = new SettingsBook(studio.Factory, studio.News);
        var file = (await new PourPaperBook(book, heats, settings).SheetAsync(id, 1)).ShouldNotBeNull();
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(file.Content);
        pdf.NumberOfPages.ShouldBe(1);
        var text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        text.ShouldContain("Should reach");
        text.ShouldContain("never put a lid on it");
    }

    // one rule: the lower of the most that was foretold and of what the layer may reach, and which of both it is
    [Theory]
    [InlineData(8.0, null, "the most that was foretold")]
    [InlineData(10.0, 38.0, "the limit for Test casting resin")]
    [InlineData(14.0, 36.0, "the limit for Test casting resin, less than a hand feels as warm")]
    public async Task The_caution_names_what_is_going_wrong_and_never_more_than_the_limit(double depthMm, double? limitC, string which)
    {
        var id = await PieceAsync(depthMm, limitC);
        await scene.ReadingAsync(23);
        var told = await ToldAsync(await FormAsync(id));
        var celsius = Math.Round(Math.Min(told.PeakHighC, limitC ?? double.MaxValue));
        var file = (await new PourPaperBook(book, heats, new SettingsBook(studio.Factory, studio.News)).SheetAsync(id, 1)).ShouldNotBeNull();
        using var pdf = UglyToad.PdfPig.PdfDocument.Open(file.Content);
        var text = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords().Where(w => w.BoundingBox.Left > p.Width * 0.44)).Select(w => w.Text)).Replace('\u00a0', ' ');
        text[text.IndexOf("If it grows", StringComparison.Ordinal)..].ShouldStartWith("If it grows " + FormattableString.Invariant($"hotter than {celsius:0} °C ({which})"));
    }

    private async Task<PourForetold> ToldAsync(PourForm form) => (await heats.AskAsync(form.Asked(heats), Stop)).Foretold.ShouldNotBeNull();

    private async Task<PourForm> FormAsync(int id)
    {
        var layer = (await book.ReadAsync(id))!.ToPour!;
        return new() { PieceId = id, LayerId = layer.LayerId, Tally = [new(1, "A", layer.Plan!.PartAG), new(1, "B", layer.Plan.PartBG)] };
    }

    private async Task<int> PieceAsync(double depthMm, double? limitC = null, int layers = 2)
    {
        var id = await scene.PieceAsync(shape: "cuboid", sizeMm: 100, layers: layers);
        await scene.ChangeAsync<Resin>(_ => true, r => (r.Class, r.PotLifeMinutes, r.PotLifeMassG, r.PotLifeAtC, r.MaxPourMm, r.LimitC) = ("casting", 40, 100, 23, 15, limitC));
        await scene.ChangeAsync<PieceLayer>(_ => true, l => l.ToMm = depthMm * (l.Order + 1));
        return id;
    }
}
