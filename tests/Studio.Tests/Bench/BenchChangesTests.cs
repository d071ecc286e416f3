using Studio.Bench;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Heat;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Tests.Bench;

/// <summary>Corrections, pours taken back, demoulding, finishing.</summary>
public sealed class BenchChangesTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook book;

    public BenchChangesTests()
    {
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), new PourHeatBook(studio.Factory, studio.Clock));
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task A_correction_keeps_what_it_said_what_it_says_and_why()
    {
        var id = await PouredAsync();
        var form = await CorrectionAsync(id);
        form.ActualAG = 104.5;
        form.StartedAt = scene.Now.AddMinutes(-30);
        form.Why = "Read the scale wrongly";
        (await book.CorrectAsync(form, "Maker")).Ok.ShouldBeTrue();

        var trace = await scene.AllAsync<PourCorrection>();
        trace.Select(t => t.Field).ShouldBe(["grams of A", "start"]);
        trace[0].Was.ShouldBe("100.0 g");
        trace[0].Now.ShouldBe("104.5 g");
        trace.ShouldAllBe(t => t.Why == "Read the scale wrongly" && t.By == "Maker");
        var pour = (await scene.AllAsync<Pour>()).Single();
        pour.ActualAG.ShouldBe(104.5);
        pour.StartedAt.ShouldBe(scene.Now.AddMinutes(-30));
        (await book.ReadAsync(id))!.Pours[0].Changes.Count.ShouldBe(2);
        (await scene.AllAsync<CommissionEvent>()).ShouldContain(e => e.Words.Contains("104.5 g", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_corrected_start_moves_the_clock()
    {
        var id = await PouredAsync();
        await scene.ReadingAsync(23, scene.Now.AddHours(-3));
        var form = await CorrectionAsync(id);
        form.StartedAt = scene.Now.AddHours(-2);
        form.Why = "Entered late";
        (await book.CorrectAsync(form, "Maker")).Ok.ShouldBeTrue();
        (await book.ReadAsync(id))!.Times.Layers[0].From.At.ShouldBe(scene.Now.AddHours(4));
    }

    [Fact]
    public async Task A_corrected_room_takes_the_pours_own_reading_along_and_leaves_others()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(21, scene.Now.AddHours(-1));
        var layer = (await book.ReadAsync(id))!.ToPour!;
        await book.PourAsync(new() { PieceId = id, LayerId = layer.LayerId, RoomC = 12.5, Tally = [new(1, "A", layer.Plan!.PartAG), new(1, "B", layer.Plan.PartBG)] }, "Maker");
        var form = await CorrectionAsync(id);
        form.RoomC = 21.5;
        form.Why = "12 for 21";
        (await book.CorrectAsync(form, "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Reading>()).Where(r => !r.Withdrawn).Select(r => r.Celsius).ShouldBe([21, 21.5]);
    }

    [Fact]
    public async Task Nothing_is_corrected_without_a_reason_and_all_that_is_wrong_is_said_at_once()
    {
        var id = await PouredAsync();
        var form = await CorrectionAsync(id);
        (form.ActualAG, form.ActualBG, form.RoomC, form.StartedAt, form.Why) = (-1, double.NaN, 85, scene.Now.AddDays(1), "");
        var words = (await book.CorrectAsync(form, "Maker")).Words;
        words.ShouldContain("Grams of A");
        words.ShouldContain("Grams of B");
        words.ShouldContain("85 °C");
        words.ShouldContain("future");
        words.ShouldContain("why");
        (await scene.AllAsync<PourCorrection>()).ShouldBeEmpty();
    }

    [Fact]
    public async Task Of_two_who_correct_the_same_pour_the_second_is_told()
    {
        var id = await PouredAsync();
        var (one, two) = (await CorrectionAsync(id), await CorrectionAsync(id));
        (one.ActualAG, one.Why, two.ActualAG, two.Why) = (101, "first", 102, "second");
        (await book.CorrectAsync(one, "Maker")).Ok.ShouldBeTrue();
        (await book.CorrectAsync(two, "Other")).IsStale.ShouldBeTrue();
        (await scene.AllAsync<Pour>()).Single().ActualAG.ShouldBe(101);
    }

    [Fact]
    public async Task A_pour_taken_back_stays_with_its_reason_and_counts_no_longer()
    {
        var id = await PouredAsync();
        (await book.WithdrawAsync((await scene.AllAsync<Pour>()).Single().Id, "", "", "Maker")).Ok.ShouldBeFalse();
        (await book.WithdrawAsync((await scene.AllAsync<Pour>()).Single().Id, "wrong piece", "Bench", "Maker")).Ok.ShouldBeTrue();
        var sheet = await book.ReadAsync(id);
        sheet!.Pours.ShouldHaveSingleItem().Withdrawn.ShouldBeTrue();
        sheet.ToPour!.Order.ShouldBe(0);
        sheet.Stage.ShouldBe(Making.Drawn);
        sheet.Times.Next.Kind.ShouldBe(ActKind.PourFirst);
    }

    [Fact]
    public async Task Only_the_topmost_pour_can_be_taken_back()
    {
        var id = await PouredAsync();
        await scene.PourAsync(id, 1, scene.Now);
        var lower = (await scene.AllAsync<Pour>()).Single(p => p.LayerOrder == 0);
        (await book.WithdrawAsync(lower.Id, "wrong piece", "Bench", "Maker")).Words.ShouldContain("heather band");
    }

    [Fact]
    public async Task Out_of_the_mould_only_when_the_clock_allows_or_with_a_reason_that_is_kept()
    {
        var id = await FullAsync();
        studio.Clock.Advance(TimeSpan.FromHours(23.9));
        (await book.DemouldAsync(id, "", "Maker")).Words.ShouldContain("Demould at");
        (await scene.FindAsync(id)).Stage.ShouldBe(Making.Casting);
        (await book.DemouldAsync(id, "mould is leaking", "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<CommissionEvent>()).ShouldContain(e => e.Words.Contains("before its time", StringComparison.Ordinal) && e.Words.Contains("mould is leaking", StringComparison.Ordinal));
    }

    [Fact]
    public async Task At_the_minute_the_clock_allows_no_reason_is_asked()
    {
        var id = await FullAsync();
        studio.Clock.Advance(TimeSpan.FromHours(24));
        (await book.DemouldAsync(id, "", "Maker")).Ok.ShouldBeTrue();
        (await scene.FindAsync(id)).DemouldedAt.ShouldBe(scene.Now);
    }

    [Fact]
    public async Task A_mould_with_layers_still_to_pour_is_not_opened()
    {
        var id = await PouredAsync();
        (await book.DemouldAsync(id, "please", "Maker")).Words.ShouldContain("not poured yet");
    }

    [Fact]
    public async Task When_every_piece_is_finished_the_commission_is_ready_and_undo_brings_it_back()
    {
        var id = await FullAsync();
        studio.Clock.Advance(TimeSpan.FromHours(100));
        (await book.FinishAsync(id, "", "Maker")).Ok.ShouldBeFalse();
        await book.DemouldAsync(id, "", "Maker");
        (await book.FinishAsync(id, "", "Maker")).Ok.ShouldBeTrue();
        (await scene.FindAsync(id)).Commission!.Stands.ShouldBe(Standing.Ready);
        (await book.StepBackAsync(id, Making.Finished, "Maker")).Ok.ShouldBeTrue();
        var piece = await scene.FindAsync(id);
        piece.Stage.ShouldBe(Making.Demoulded);
        piece.FinishedAt.ShouldBeNull();
        piece.Commission!.Stands.ShouldBe(Standing.Making);
    }

    private async Task<int> PouredAsync()
    {
        var id = await scene.PieceAsync();
        await scene.PourAsync(id, 0, scene.Now);
        return id;
    }

    private async Task<int> FullAsync()
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        return id;
    }

    private async Task<CorrectionForm> CorrectionAsync(int pieceId)
    {
        var pour = (await book.ReadAsync(pieceId))!.Pours[0];
        return new() { PourId = pour.Id, Version = pour.Version, ActualAG = pour.ActualAG, ActualBG = pour.ActualBG, RoomC = pour.RoomC, StartedAt = pour.StartedAt, Lot = pour.Lot };
    }
}
