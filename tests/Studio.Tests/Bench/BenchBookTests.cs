using Studio.Bench;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Engine.Custody;
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
        await scene.ChangeAsync<Keepsake>(_ => true, k => k.Permits = Permissions.ReturnUntouched);
        var keepsake = (await scene.AllAsync<Keepsake>()).Single();
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.Placed = [new(keepsake.Id, "brass button", 4, 8.5, null)]);
        (await book.PourAsync(await FormAsync(id), "Maker")).Stops.ShouldHaveSingleItem().Code.ShouldBe("keepsake-not-permitted");
    }

    [Fact]
    public async Task A_pour_writes_what_went_in_into_the_log_and_taking_it_back_takes_it_out_again()
    {
        var id = await scene.PieceAsync();
        var keepsake = await PlacedAsync(0);
        var saved = await book.PourAsync(await FormAsync(id), "Maker");
        saved.Ok.ShouldBeTrue(saved.Words);
        var cast = (await scene.AllAsync<Keepsake>()).Single();
        (cast.Custody, cast.Place, cast.HeldCount).ShouldBe((CustodyWhereabouts.InPiece, "", 0));
        var entry = (await scene.AllAsync<KeepsakeEvent>())[^1];
        (entry.Kind, entry.Count, entry.PieceId, entry.PourId, entry.LayerId).ShouldBe((CustodyKind.SetIn, 1, id, saved.Id, (await scene.FindAsync(id)).Layers.Single(l => l.Order == 0).Id));

        (await book.HeldAsync(saved.Id)).ShouldBe([$"{keepsake.EntryNumber}, brass button: 1 piece"]);
        (await book.WithdrawAsync(saved.Id, "wrong piece", "", "Maker")).Code.ShouldBe("place-missing");
        (await book.WithdrawAsync(saved.Id, "wrong piece", "Bench", "Maker")).Ok.ShouldBeTrue();
        var back = (await scene.AllAsync<Keepsake>()).Single();
        (back.Custody, back.Place, back.HeldCount).ShouldBe((CustodyWhereabouts.Here, "Bench", 1));
        (await scene.AllAsync<KeepsakeEvent>()).Count.ShouldBe(3, "nothing is removed");
    }

    [Fact]
    public async Task A_withdrawn_pour_gives_its_keepsake_back_whatever_the_piece_is_called_and_whatever_was_done_since()
    {
        // 0.3.0: the link was found by "into NAME", so a renamed piece kept the keepsake; and what refused was dropped
        var id = await scene.PieceAsync();
        var keepsake = await PlacedAsync(0, Permissions.EmbedPart, count: 5);
        var form = await FormAsync(id);
        form.Set = [new SetRow { KeepsakeId = keepsake.Id, Count = 2, RestPlace = "Keepsake drawer 2" }];
        var saved = await book.PourAsync(form, "Maker");
        saved.Ok.ShouldBeTrue(saved.Words);
        await scene.ChangeAsync<Piece>(_ => true, p => p.Name = "Agnes's hill");
        await scene.NoteAsync(keepsake.Id);
        (await book.WithdrawAsync(saved.Id, "wrong piece", "Bench", "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Keepsake>()).Single().HeldCount.ShouldBe(5);
    }

    [Fact]
    public async Task A_pour_asks_what_really_went_in_and_takes_no_part_for_the_whole()
    {
        var id = await scene.PieceAsync();
        var keepsake = await PlacedAsync(0, Permissions.EmbedPart, count: 5);
        var form = await FormAsync(id);
        form.Set = null;
        (await book.PourAsync(form, "Maker")).Words.ShouldStartWith($"Say what really went in of {keepsake.EntryNumber}, brass button");
        form.Set = [new SetRow { KeepsakeId = keepsake.Id, Count = 5, RestPlace = "Bench" }];
        (await book.PourAsync(form, "Maker")).Words.ShouldContain("never all of it");
        form.Set = [new SetRow { KeepsakeId = keepsake.Id, Count = 2 }];
        (await book.PourAsync(form, "Maker")).Words.ShouldContain("Say where the rest of it lies.");
        form.Set = [new SetRow { KeepsakeId = keepsake.Id, Count = 2, RestPlace = "Keepsake drawer 2" }];
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();
        var now = (await scene.AllAsync<Keepsake>()).Single();
        (now.HeldCount, now.Place, now.Custody).ShouldBe((3, "Keepsake drawer 2", CustodyWhereabouts.Here));
    }

    [Fact]
    public async Task A_keepsake_that_did_not_go_in_after_all_stays_where_it_is()
    {
        var id = await scene.PieceAsync();
        var keepsake = await PlacedAsync(0);
        var form = await FormAsync(id);
        form.Set = [new SetRow { KeepsakeId = keepsake.Id, NotIn = true }];
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Keepsake>()).Single().Custody.ShouldBe(CustodyWhereabouts.Here);
        (await scene.AllAsync<KeepsakeEvent>()).Count.ShouldBe(1);
    }

    [Fact]
    public async Task A_keepsake_of_two_layers_is_asked_for_with_each()
    {
        var id = await scene.PieceAsync();
        var keepsake = await PlacedAsync(0, Permissions.EmbedAll, count: 2, layers: 2);
        var form = await FormAsync(id, roomC: 23);
        form.Set = [new SetRow { KeepsakeId = keepsake.Id, Count = 1, RestPlace = "Bench" }];
        (await book.PourAsync(form, "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Keepsake>()).Single().HeldCount.ShouldBe(1);
        studio.Clock.Advance(TimeSpan.FromHours(7));
        (await book.PourAsync(await FormAsync(id), "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Keepsake>()).Single().Custody.ShouldBe(CustodyWhereabouts.InPiece);
    }

    [Fact]
    public async Task A_copy_that_nobody_noted_stops_the_pour_and_a_noted_one_is_written_as_a_copy()
    {
        var id = await scene.PieceAsync();
        var keepsake = await PlacedAsync(0, Permissions.CopyReturn, copy: true);
        (await book.PourAsync(await FormAsync(id), "Maker")).Stops.ShouldHaveSingleItem().Message.ShouldContain("Note first what was copied");
        await scene.NoteAsync(keepsake.Id, CustodyKind.Copied);
        (await book.PourAsync(await FormAsync(id), "Maker")).Ok.ShouldBeTrue();
        (await scene.AllAsync<KeepsakeEvent>())[^1].Kind.ShouldBe(CustodyKind.CopySetIn);
        (await scene.AllAsync<Keepsake>()).Single().Custody.ShouldBe(CustodyWhereabouts.Here, "the original stays");
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

    private async Task<Keepsake> PlacedAsync(int order, string permits = Permissions.EmbedAll, int count = 1, int layers = 1, bool copy = false)
    {
        await scene.ChangeAsync<Keepsake>(_ => true, k => (k.Permits, k.Count, k.HeldCount) = (permits, count, count));
        await scene.ChangeAsync<KeepsakeEvent>(_ => true, e => e.Count = count);
        var keepsake = (await scene.AllAsync<Keepsake>()).Single();
        await scene.ChangeAsync<PieceLayer>(l => l.Order >= order && l.Order < order + layers, l => l.Placed = [copy ? new(null, "copy of the button", 4, 1.2, null) { CopyOf = keepsake.Id } : new(keepsake.Id, "brass button", 4, 8.5, null)]);
        return keepsake;
    }

    private async Task<PourForm> FormAsync(int pieceId, double? roomC = null)
    {
        var layer = (await book.ReadAsync(pieceId))!.ToPour!;
        var batch = layer.Plan!.Batches[0];
        return new() { PieceId = pieceId, LayerId = layer.LayerId, RoomC = roomC, Tally = [new(1, "A", batch.PartAG), new(1, "B", batch.PartBG)], Set = BenchKeepsakes.Begin(layer) };
    }
}
