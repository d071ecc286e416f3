using Microsoft.EntityFrameworkCore;
using Studio.Bench;
using Studio.Commissions;
using Studio.Engine.Custody;
using Studio.Heat;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Settings;
using Studio.Steps;

namespace Studio.Tests.Bench;

/// <summary>A piece that failed: its reason, its cost, what stays in it, and the one in its place.</summary>
public sealed class BenchFailTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook book;

    public BenchFailTests()
    {
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), new PourHeatBook(studio.Factory, studio.Clock));
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task What_is_in_it_stays_in_it_and_the_new_one_waits_for_what_is_not_here()
    {
        var id = await FailedSceneAsync();
        var saved = await book.FailAsync(id, new FailForm { Reason = "bubbles", Words = "a cloud over the heather", Cost = 41.5m }, "Wren");
        saved.Ok.ShouldBeTrue(saved.Words);

        var failed = await scene.FindAsync(id);
        (failed.Stage, failed.FailedAs, failed.FailedWords, failed.FailedCost, failed.FailedAt).ShouldBe((Making.Failed, "bubbles", "a cloud over the heather", 41.5m, scene.Now));
        var anew = await scene.FindAsync(saved.Id);
        (anew.InPlaceOf, anew.Stage, anew.CommissionId).ShouldBe((id, Making.Drawn, failed.CommissionId));
        anew.Layers.Select(l => (l.Order, l.Name, l.ToMm, l.ResinId)).ShouldBe(failed.Layers.Select(l => (l.Order, l.Name, l.ToMm, l.ResinId)), ignoreOrder: true);
        var keepsakes = (await scene.AllAsync<Keepsake>()).OrderBy(k => k.Id).ToList();
        keepsakes.ConvertAll(k => k.Custody).ShouldBe([CustodyWhereabouts.InPiece, CustodyWhereabouts.Here]);
        anew.Layers.SelectMany(l => l.Placed).Select(p => p.KeepsakeId).ShouldBe(keepsakes.Select(k => (int?)k.Id), ignoreOrder: true);

        // nothing is filled with resin in the place of what is lost: it waits until somebody draws it without
        (await new global::Studio.Clock.ClockBook(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News)).OfPieceAsync(anew.Id))!.Next.Wants
            .ShouldBe($"brass button ({keepsakes[0].EntryNumber}) is not here: it is in “Heather pyramid”, which failed. Ask the family, or draw the piece without it.");

        var told = (await scene.AllAsync<CommissionEvent>()).Single(e => e.Words.Contains("failed", StringComparison.Ordinal)).Words;
        told.ShouldBe($"Heather pyramid failed: bubbles. a cloud over the heather. It cost £41.50. In it stay: {keepsakes[0].EntryNumber}, brass button: 1 piece. “Heather pyramid, again” is drawn in its place.");
        failed.Commission!.Stands.ShouldBe(Standing.Making);
    }

    [Fact]
    public async Task A_failure_has_a_reason_and_one_without_a_name_is_described()
    {
        var id = await FailedSceneAsync();
        (await book.FailAsync(id, new FailForm(), "Wren")).Words.ShouldContain("Choose why it failed");
        (await book.FailAsync(id, new FailForm { Reason = Failing.Other }, "Wren")).Words.ShouldContain("what happened");
        (await book.FailAsync(id, new FailForm { Reason = "stuck", Cost = -1 }, "Wren")).Ok.ShouldBeFalse();
        (await scene.FindAsync(id)).Stage.ShouldBe(Making.Casting);
        var drawn = await scene.PieceAsync("Not begun");
        (await book.FailAsync(drawn, new FailForm { Reason = "stuck" }, "Wren")).Words.ShouldContain("Nothing of this piece is poured");
    }

    [Fact]
    public async Task A_failure_marked_by_mistake_is_taken_back_to_where_the_piece_was()
    {
        var id = await FailedSceneAsync();
        await book.FailAsync(id, new FailForm { Reason = "stuck", Anew = false }, "Wren");
        (await scene.AllAsync<Piece>()).Count.ShouldBe(1);
        (await book.ReadAsync(id))!.Failed.ShouldContain("stuck to the mould");
        (await book.StepBackAsync(id, Making.Failed, "Wren")).Ok.ShouldBeTrue();
        var piece = await scene.FindAsync(id);
        (piece.Stage, piece.FailedAs, piece.FailedAt).ShouldBe((Making.Casting, "", null));
        (await book.StepBackAsync(id, Making.Failed, "Wren")).Ok.ShouldBeFalse("somebody took it back already");

        await book.FailAsync(id, new FailForm { Reason = "stuck" }, "Wren");
        (await book.StepBackAsync(id, Making.Failed, "Wren")).Ok.ShouldBeTrue();
        (await scene.AllAsync<Piece>()).Single(p => p.InPlaceOf == id).Stage.ShouldBe(Making.LetGo, "the one in its place is not made");
    }

    [Fact]
    public async Task A_commission_that_was_ready_is_in_the_making_again_when_its_piece_failed()
    {
        var id = await FailedSceneAsync();
        await scene.ChangeAsync<Piece>(p => p.Id == id, p => (p.Stage, p.DemouldedAt, p.FinishedAt) = (Making.Finished, scene.Now, scene.Now));
        await scene.ChangeAsync<Commission>(_ => true, c => c.Stands = Standing.Ready);
        await book.FailAsync(id, new FailForm { Reason = "film-moved" }, "Wren");
        (await scene.FindAsync(id)).Commission!.Stands.ShouldBe(Standing.Making);
    }

    [Fact]
    public async Task Finished_before_full_cure_asks_why_and_makes_nothing_ready()
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        studio.Clock.Advance(TimeSpan.FromHours(30));
        (await book.DemouldAsync(id, "", "Wren")).Ok.ShouldBeTrue();
        var refused = await book.FinishAsync(id, "", "Wren");
        (refused.Ok, refused.Code).ShouldBe((false, StepBook.DisagreesCode));
        (await book.FinishAsync(id, "only its foot was sanded", "Wren")).Ok.ShouldBeTrue();
        (await scene.FindAsync(id)).Commission!.Stands.ShouldBe(Standing.Making);
        (await scene.AllAsync<CommissionEvent>()).ShouldContain(e => e.Words.Contains("before its time", StringComparison.Ordinal) && e.Words.Contains("only its foot was sanded", StringComparison.Ordinal));
    }

    // one keepsake in the poured layer, one still to go in
    private async Task<int> FailedSceneAsync()
    {
        var id = await scene.PieceAsync(keepsakes: 2);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        await using var db = studio.Open();
        var keepsakes = await db.Set<Keepsake>().OrderBy(k => k.Id).ToListAsync();
        var layers = await db.Set<PieceLayer>().Where(l => l.PieceId == id).OrderBy(l => l.Order).ToListAsync();
        (layers[0].Placed, layers[1].Placed) = ([new(keepsakes[0].Id, "button", null, null, null)], [new(keepsakes[1].Id, "button", null, null, null)]);
        var set = new KeepsakeEvent { KeepsakeId = keepsakes[0].Id, At = scene.Now, By = "Wren", Kind = CustodyKind.SetIn, Count = 1, PieceId = id, LayerId = layers[0].Id };
        db.Add(set);
        CustodyLog.Follow(keepsakes[0], [.. await db.Set<KeepsakeEvent>().Where(e => e.KeepsakeId == keepsakes[0].Id).ToListAsync(), set]);
        await db.SaveChangesAsync();
        return id;
    }
}
