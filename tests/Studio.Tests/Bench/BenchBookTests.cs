using Studio.Bench;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Heat;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;

namespace Studio.Tests.Bench;

public sealed class BenchBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook book;

    public BenchBookTests()
    {
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), new PourHeatBook(studio.Factory, studio.Clock));
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task A_first_pour_keeps_what_was_planned_and_weighed_and_starts_everything()
    {
        var id = await scene.PieceAsync();
        var form = await FormAsync(id, roomC: 18.5);
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();

        var pour = (await scene.AllAsync<Pour>()).ShouldHaveSingleItem();
        pour.PlannedAG.ShouldBe(2 * pour.PlannedBG, 1e-9);
        pour.ActualAG.ShouldBe(form.ActualAG);
        pour.RoomC.ShouldBe(18.5);
        pour.StartedAt.ShouldBe(scene.Now);
        pour.Sheet.Times.ShouldHaveSingleItem().DemouldHours.ShouldBe(24);
        pour.Tally.Count.ShouldBe(2);
        var piece = await scene.FindAsync(id);
        piece.Stage.ShouldBe(Making.Casting);
        piece.Commission!.Stands.ShouldBe(Standing.Making);
        (await scene.AllAsync<Reading>()).ShouldHaveSingleItem().Celsius.ShouldBe(18.5);
        (await scene.AllAsync<CommissionEvent>()).ShouldContain(e => e.Kind == "piece" && e.Words.Contains("clear base", StringComparison.Ordinal));
        (await book.ReadAsync(id))!.Times.Next.Kind.ShouldBe(ActKind.WaitForWindow);
    }

    [Fact]
    public async Task A_double_tap_adds_nothing()
    {
        var id = await scene.PieceAsync();
        var form = await FormAsync(id);
        var both = await Task.WhenAll(book.PourAsync(form, "Maker"), book.PourAsync(form, "Maker"));
        both.ShouldAllBe(s => s.Ok);
        both[0].Id.ShouldBe(both[1].Id);
        (await scene.AllAsync<Pour>()).Count.ShouldBe(1);
    }

    [Fact]
    public async Task Of_two_tablets_that_pour_the_same_layer_only_one_is_kept()
    {
        var id = await scene.PieceAsync();
        var (one, two) = (await FormAsync(id), await FormAsync(id));
        var both = await Task.WhenAll(book.PourAsync(one, "Maker"), book.PourAsync(two, "Maker"));
        both.Count(s => s.Ok).ShouldBe(1);
        both.Single(s => !s.Ok).Words.ShouldNotBeEmpty();
        (await scene.AllAsync<Pour>()).Count.ShouldBe(1);
    }

    [Fact]
    public async Task A_pour_before_the_window_is_refused_until_there_is_a_reason_and_the_reason_is_kept()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        studio.Clock.Advance(TimeSpan.FromHours(5.9));
        var form = await FormAsync(id);
        var refused = await book.PourAsync(form, "Maker");
        refused.Ok.ShouldBeFalse();
        refused.Stops.ShouldHaveSingleItem().Code.ShouldBe("before-window");
        refused.Words.ShouldContain("15:00");
        (await scene.AllAsync<Pour>()).Count.ShouldBe(1);

        form.Why = "Thin flash coat, wanted to sink in";
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();
        var trace = (await scene.AllAsync<PourCorrection>()).ShouldHaveSingleItem();
        trace.Field.ShouldBe("before-window");
        trace.Why.ShouldBe("Thin flash coat, wanted to sink in");
    }

    [Fact]
    public async Task At_the_minute_the_window_opens_no_reason_is_asked()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        studio.Clock.Advance(TimeSpan.FromHours(6));
        (await book.PourAsync(await FormAsync(id), "Maker")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task After_the_window_closed_the_surface_must_be_spoken_for()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        studio.Clock.Advance(TimeSpan.FromHours(24));
        var form = await FormAsync(id);
        (await book.PourAsync(form, "Maker")).Stops.ShouldHaveSingleItem().Code.ShouldBe("window-closed");
        form.Why = "Abraded and cleaned the surface before the pour.";
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task A_pour_entered_late_is_judged_by_when_it_was_poured()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        studio.Clock.Advance(TimeSpan.FromHours(30));
        var form = await FormAsync(id);
        form.StartedAt = scene.Now.AddHours(-10);
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task Layers_are_poured_from_the_lowest_up_and_no_reason_helps()
    {
        var id = await scene.PieceAsync();
        var sheet = await book.ReadAsync(id);
        var form = await FormAsync(id);
        form.LayerId = sheet!.Layers[2].LayerId;
        form.Why = "I want to";
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeFalse();
        (await scene.AllAsync<Pour>()).ShouldBeEmpty();
    }

    [Theory]
    [InlineData(2, "future")]
    [InlineData(-60 * 24 * 61, "60 days")]
    public async Task A_start_that_cannot_be_is_refused(int minutes, string said)
    {
        var id = await scene.PieceAsync();
        var form = await FormAsync(id);
        form.StartedAt = scene.Now.AddMinutes(minutes);
        (await book.PourAsync(form, "Maker")).Words.ShouldContain(said);
    }

    [Fact]
    public async Task A_start_before_the_layer_below_is_refused()
    {
        var id = await scene.PieceAsync();
        await scene.PourAsync(id, 0, scene.Now.AddHours(-8));
        var form = await FormAsync(id);
        form.StartedAt = scene.Now.AddHours(-9);
        (await book.PourAsync(form, "Maker")).Words.ShouldContain("before clear base was poured");
    }

    [Fact]
    public async Task Nothing_weighed_and_a_sensors_error_are_refused()
    {
        var id = await scene.PieceAsync();
        var form = await FormAsync(id);
        form.Tally.Clear();
        (await book.PourAsync(form, "Maker")).Words.ShouldContain("both parts");
        form = await FormAsync(id, roomC: 85);
        (await book.PourAsync(form, "Maker")).Words.ShouldContain("85 °C");
        (await scene.AllAsync<Pour>()).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_wrong_ratio_asks_for_a_reason()
    {
        var id = await scene.PieceAsync();
        var form = await FormAsync(id);
        form.Tally[1] = form.Tally[1] with { Grams = form.Tally[1].Grams * 0.9 };
        (await book.PourAsync(form, "Maker")).Stops.ShouldHaveSingleItem().Code.ShouldBe("ratio-off");
    }

    [Fact]
    public async Task A_keepsake_that_must_go_back_untouched_stops_the_pour()
    {
        var id = await scene.PieceAsync();
        await scene.ChangeAsync<Keepsake>(_ => true, k => k.Permits = Permission.ReturnUntouched);
        var keepsake = (await scene.AllAsync<Keepsake>()).Single();
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.Placed = [new(keepsake.Id, "brass button", 4, 8.5, null)]);
        (await book.PourAsync(await FormAsync(id), "Maker")).Stops.ShouldHaveSingleItem().Code.ShouldBe("keepsake-not-permitted");
    }

    [Fact]
    public async Task A_pour_writes_its_keepsakes_into_their_chain_and_taking_it_back_takes_that_back()
    {
        var id = await scene.PieceAsync();
        var keepsake = (await scene.AllAsync<Keepsake>()).Single();
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.Placed = [new(keepsake.Id, "brass button", 4, 8.5, null)]);
        var saved = await book.PourAsync(await FormAsync(id), "Maker");
        saved.Ok.ShouldBeTrue(saved.Words);
        saved.Notices.ShouldBeEmpty();
        var cast = (await scene.AllAsync<Keepsake>()).Single();
        cast.Custody.ShouldBe(CustodyChain.InPiece);
        cast.Place.ShouldBe("In Heather pyramid");

        (await book.WithdrawAsync(saved.Id, "wrong piece", "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Keepsake>()).Single().Custody.ShouldBe(CustodyChain.Here);
        (await scene.AllAsync<KeepsakeEvent>()).Count.ShouldBe(2);
    }

    [Fact]
    public async Task A_keepsake_set_in_two_layers_is_all_cast_with_the_last()
    {
        var id = await scene.PieceAsync();
        var keepsake = (await scene.AllAsync<Keepsake>()).Single();
        await scene.ChangeAsync<PieceLayer>(l => l.Order < 2, l => l.Placed = [new(keepsake.Id, "brass button", 4, 8.5, null)]);
        await book.PourAsync(await FormAsync(id, roomC: 23), "Maker");
        CustodyChain.Now(await scene.AllAsync<KeepsakeEvent>()).LeftOver.ShouldBeTrue();
        studio.Clock.Advance(TimeSpan.FromHours(7));
        (await book.PourAsync(await FormAsync(id), "Maker")).Ok.ShouldBeTrue();
        CustodyChain.Now(await scene.AllAsync<KeepsakeEvent>()).InHand.ShouldBeFalse();
    }

    [Fact]
    public async Task A_copy_that_nobody_noted_is_poured_and_told()
    {
        var id = await scene.PieceAsync();
        await scene.ChangeAsync<Keepsake>(_ => true, k => k.Permits = Permission.CopyReturn);
        var keepsake = (await scene.AllAsync<Keepsake>()).Single();
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.Placed = [new(keepsake.Id, "copy of the letter", 4, 1.2, null)]);
        var saved = await book.PourAsync(await FormAsync(id), "Maker");
        saved.Ok.ShouldBeTrue(saved.Words);
        saved.Notices.ShouldHaveSingleItem().ShouldContain(keepsake.EntryNumber);
        (await scene.AllAsync<Keepsake>()).Single().Custody.ShouldBe("here");
    }

    [Fact]
    public async Task A_later_edit_of_the_resin_never_moves_an_old_clock()
    {
        var id = await scene.PieceAsync();
        (await book.PourAsync(await FormAsync(id, roomC: 23), "Maker")).Ok.ShouldBeTrue();
        var before = (await book.ReadAsync(id))!.Times.Layers[0].From.At;
        await scene.ChangeAsync<Resin>(_ => true, r => r.Times = [.. Scene.DeepPour.Times]);
        (await book.ReadAsync(id))!.Times.Layers[0].From.At.ShouldBe(before);
    }

    private async Task<PourForm> FormAsync(int pieceId, double? roomC = null)
    {
        var layer = (await book.ReadAsync(pieceId))!.ToPour!;
        var batch = layer.Plan!.Batches[0];
        return new() { PieceId = pieceId, LayerId = layer.LayerId, RoomC = roomC, Tally = [new(1, "A", batch.PartAG), new(1, "B", batch.PartBG)] };
    }
}
