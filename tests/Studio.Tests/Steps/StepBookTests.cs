using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Pieces;
using Studio.Steps;
using Studio.Tests.Bench;

namespace Studio.Tests.Steps;

/// <summary>Where a commission stands, by what is written down of it. Invented pieces; times of a casting resin as in the bench's scene.</summary>
public sealed class StepBookTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;

    public StepBookTests() => scene = new(studio.Factory, studio.Clock);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private StepBook Book => new(studio.Factory, studio.Clock, studio.News);

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task It_is_not_ready_while_a_layer_is_not_poured_and_the_reason_given_against_that_stays_in_the_history()
    {
        var id = await PouredAsync(layers: 2);
        var refused = await Book.MoveAsync(id, Move(Standing.Making, Standing.Ready), "Wren");
        refused.Code.ShouldBe(StepBook.DisagreesCode);
        refused.Words.ShouldContain("layer 3, clear top, is not poured");
        (await StandsAsync(id)).ShouldBe(Standing.Making);

        (await Book.MoveAsync(id, Move(Standing.Making, Standing.Ready, "the family takes it as it is"), "Wren")).Ok.ShouldBeTrue();
        (await StandsAsync(id)).ShouldBe(Standing.Ready);
        (await LastAsync(id)).ShouldContain("layer 3, clear top, is not poured");
        (await LastAsync(id)).ShouldContain("Reason: the family takes it as it is.");
        (await Book.ReadAsync(id))!.Sentence.ShouldStartWith("Marked as ready, but:");
    }

    [Fact]
    public async Task Before_full_cure_nothing_is_ready_though_every_piece_is_called_finished()
    {
        var id = await PouredAsync(layers: 3);
        await StageAsync(id, Making.Finished);
        var view = (await Book.ReadAsync(id))!;
        view.Main!.To.ShouldBe(Standing.Ready);
        view.Main.Disagrees.ShouldContain(d => d.Contains("is fully cured", StringComparison.Ordinal) && d.Contains("not before", StringComparison.Ordinal));
        (await Book.MoveAsync(id, Move(Standing.Making, Standing.Ready), "Wren")).Ok.ShouldBeFalse();

        studio.Clock.Advance(TimeSpan.FromHours(73));
        (await Book.MoveAsync(id, Move(Standing.Making, Standing.Ready), "Wren")).Ok.ShouldBeTrue();
        (await Book.ReadAsync(id))!.Sentence.ShouldBe("Finished, fully cured, and waiting to go home.");
    }

    [Fact]
    public async Task A_room_that_nobody_read_makes_the_cure_unknown_and_unknown_is_not_ready()
    {
        var id = await PouredAsync(layers: 3, reading: null);
        await StageAsync(id, Making.Finished);
        studio.Clock.Advance(TimeSpan.FromDays(60));
        (await Book.MoveAsync(id, Move(Standing.Making, Standing.Ready), "Wren")).Words.ShouldContain("is not known");
    }

    [Fact]
    public async Task It_does_not_go_home_with_keepsakes_in_a_drawer_and_money_open_unless_somebody_says_why()
    {
        var id = await ReadyAsync(keepsakes: 2, agreed: 238, paid: 120);
        var view = (await Book.ReadAsync(id))!;
        view.Main!.Href.ShouldBe($"/commissions/{id}/going-home");
        var home = view.Others.Single(o => o.To == Standing.Home);
        home.Disagrees.ShouldContain(d => d.StartsWith("2 keepsakes are still here:", StringComparison.Ordinal) && d.Contains("Keepsake drawer 1", StringComparison.Ordinal));
        home.Disagrees.ShouldContain("£118.00 of £238.00 is open.");
        (await Book.MoveAsync(id, Move(Standing.Ready, Standing.Home), "Wren")).Code.ShouldBe(StepBook.DisagreesCode);

        (await Book.MoveAsync(id, Move(Standing.Ready, Standing.Home, "they fetch the rest on Friday"), "Wren")).Ok.ShouldBeTrue();
        var sentence = (await Book.ReadAsync(id))!.Sentence;
        sentence.ShouldContain("2 keepsakes are still here");
        sentence.ShouldContain("£118.00 is open.");
        sentence.ShouldNotContain("remains with us");
    }

    [Fact]
    public async Task With_everything_back_and_paid_it_goes_home_unasked_and_says_so_only_then()
    {
        var id = await ReadyAsync(keepsakes: 1, agreed: 120, paid: 120);
        await GoneAsync(id);
        (await Book.ReadAsync(id))!.Main!.To.ShouldBe(Standing.Home);
        (await Book.MoveAsync(id, Move(Standing.Ready, Standing.Home), "Wren")).Ok.ShouldBeTrue();
        (await Book.ReadAsync(id))!.Sentence.ShouldBe("It went home. Nothing of theirs remains with us.");
        (await PieceOfAsync(id)).Stage.ShouldBe(Making.Home);

        (await Book.UndoAsync(id, Standing.Home, Standing.Ready, "Wren")).Ok.ShouldBeTrue();
        (await PieceOfAsync(id)).Stage.ShouldBe(Making.Finished);
        (await LastAsync(id)).ShouldBe("Taken back: it stands at “Ready” again.");
    }

    [Theory]
    [InlineData(Standing.Asked, "Make the price")]
    [InlineData(Standing.Agreed, "Pour the first layer: Heather pyramid")]
    public async Task The_main_button_is_the_next_step_that_the_facts_allow(string stands, string label)
    {
        var id = await CommissionAsync(await scene.PieceAsync(stands: stands));
        (await Book.ReadAsync(id))!.Main!.Label.ShouldBe(label);
    }

    [Fact]
    public async Task Without_a_keepsake_the_first_pour_is_not_what_comes_next()
    {
        var id = await CommissionAsync(await scene.PieceAsync(keepsakes: 0));
        (await Book.ReadAsync(id))!.Main!.Label.ShouldBe("Take in their keepsakes");
    }

    [Fact]
    public async Task They_decide_against_it_in_the_making_with_the_reason_what_was_spent_and_what_is_here()
    {
        var id = await PouredAsync(layers: 1);
        (await Book.MoveAsync(id, Move(Standing.Making, Standing.LetGo), "Wren")).Ok.ShouldBeFalse();
        (await Book.MoveAsync(id, Move(Standing.Making, Standing.LetGo, "they moved away") with { Spent = 41.50m }, "Wren")).Ok.ShouldBeTrue();
        await using var db = studio.Open();
        var commission = await db.Set<Commission>().SingleAsync(c => c.Id == id, Cancel);
        (commission.EndedWhy, commission.EndedSpent).ShouldBe(("they moved away", 41.50m));
        (await LastAsync(id)).ShouldContain("Spent until then: £41.50.");
        var view = (await Book.ReadAsync(id))!;
        view.Sentence.ShouldContain("1 keepsake is still here");
        view.Main!.Href.ShouldEndWith("/going-home");
        (await PieceOfAsync(id)).Stage.ShouldBe(Making.Casting);
        (await new Studio.Shelf.ShelfBook(studio.Factory, studio.Clock).RowsAsync()).Pieces.ShouldBeEmpty("a commission that ended needs no hands");

        (await Book.UndoAsync(id, Standing.LetGo, Standing.Making, "Wren")).Ok.ShouldBeTrue();
        (await new Studio.Shelf.ShelfBook(studio.Factory, studio.Clock).RowsAsync()).Pieces.ShouldHaveSingleItem();
        (await Book.MoveAsync(id, Move(Standing.Making, Standing.LetGo, "they moved away after all"), "Wren")).Ok.ShouldBeTrue();
        (await Book.MoveAsync(id, Move(Standing.LetGo, Standing.Asked, "they asked again"), "Wren")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task What_holds_things_or_money_is_not_crossed_out_as_a_mistake_whatever_the_reason()
    {
        var held = await CommissionAsync(await scene.PieceAsync(stands: Standing.Asked, deposit: false));
        (await Book.MoveAsync(held, Move(Standing.Asked, Standing.CrossedOut, "logged twice"), "Wren")).Code.ShouldBe("no-mistake");
        var empty = await CommissionAsync(await scene.PieceAsync(stands: Standing.Asked, deposit: false, keepsakes: 0));
        (await Book.MoveAsync(empty, Move(Standing.Asked, Standing.CrossedOut), "Wren")).Ok.ShouldBeFalse();
        (await Book.MoveAsync(empty, Move(Standing.Asked, Standing.CrossedOut, "logged twice"), "Wren")).Ok.ShouldBeTrue();
        (await Book.ReadAsync(empty))!.Sentence.ShouldBe("Crossed out: it was logged by mistake. The reason: logged twice.");
    }

    [Fact]
    public async Task Two_people_moving_the_same_commission_move_it_once()
    {
        var id = await CommissionAsync(await scene.PieceAsync(stands: Standing.Asked));
        (await Book.MoveAsync(id, Move(Standing.Asked, Standing.Agreed, "said so at the door"), "Wren")).Ok.ShouldBeTrue();
        var second = await Book.MoveAsync(id, Move(Standing.Asked, Standing.LetGo, "no longer wanted"), "Ash");
        (second.Ok, second.Code).ShouldBe((false, Saved.StaleCode));
        second.Words.ShouldContain("stands at “Agreed” now");
        (await StandsAsync(id)).ShouldBe(Standing.Agreed);
    }

    [Fact]
    public async Task A_move_of_nothing_or_to_nowhere_is_refused()
    {
        (await Book.MoveAsync(77, Move(Standing.Asked, Standing.Quoted), "Wren")).Words.ShouldContain("not in the");
        (await Book.MoveAsync(77, Move(Standing.Asked, "somewhere"), "Wren")).Ok.ShouldBeFalse();
    }

    [Fact]
    public async Task A_piece_that_failed_is_owed_until_one_is_made_in_its_place()
    {
        var id = await ReadyAsync(keepsakes: 1, agreed: 120, paid: 120);
        var good = await PieceOfAsync(id);
        await using (var db = studio.Open())
        {
            db.Add(new Piece { CommissionId = id, Name = "Failed one", MouldId = good.MouldId, Stage = Making.Failed, FailedAs = "bubbles", CreatedAt = scene.Now });
            await db.SaveChangesAsync(Cancel);
        }

        (await Book.ReadAsync(id))!.Sentence.ShouldContain("Failed one failed, and none is made in its place.");
        var failed = (await scene.AllAsync<Piece>()).Single(p => p.Stage == Making.Failed).Id;
        await scene.ChangeAsync<Piece>(p => p.Id == good.Id, p => p.InPlaceOf = failed);
        (await Book.ReadAsync(id))!.Sentence.ShouldBe("Finished, fully cured, and waiting to go home.");
    }

    [Fact]
    public async Task What_is_cast_into_a_piece_that_failed_is_not_said_to_be_back()
    {
        var id = await ReadyAsync(keepsakes: 1, agreed: 120, paid: 120);
        var good = await PieceOfAsync(id);
        await using (var db = studio.Open())
        {
            var failed = new Piece { CommissionId = id, Name = "Failed one", MouldId = good.MouldId, Stage = Making.Failed, FailedAs = "bubbles", CreatedAt = scene.Now };
            db.Add(failed);
            await db.SaveChangesAsync(Cancel);
            var keepsake = await db.Set<Keepsake>().SingleAsync(Cancel);
            var set = new KeepsakeEvent { KeepsakeId = keepsake.Id, At = scene.Now, By = "Test maker", Kind = CustodyKind.SetIn, Count = 1, PieceId = failed.Id };
            db.Add(set);
            CustodyLog.Follow(keepsake, [.. await db.Set<KeepsakeEvent>().Where(e => e.KeepsakeId == keepsake.Id).ToListAsync(Cancel), set]);
            await db.SaveChangesAsync(Cancel);
        }

        await scene.ChangeAsync<Commission>(c => c.Id == id, c => c.Stands = Standing.Home);
        var sentence = (await Book.ReadAsync(id))!.Sentence;
        sentence.ShouldContain("In a piece that does not go to them");
        sentence.ShouldNotContain("Nothing of theirs remains");
    }

    [Fact]
    public async Task Every_place_to_stand_has_its_sentence_and_every_move_its_answer()
    {
        var id = await CommissionAsync(await scene.PieceAsync());
        foreach (var (key, _, _) in Standing.All)
        {
            await scene.ChangeAsync<Commission>(c => c.Id == id, c => c.Stands = key);
            var view = (await Book.ReadAsync(id))!;
            view.Sentence.ShouldNotBeEmpty();
            view.Sentence.ShouldNotContain("not known");
            view.Others.Concat(view.Elsewhere).Append(view.Main).Where(s => s is { Href: "" }).Select(s => s!.To).Distinct().Count().ShouldBe(Standing.All.Count - 1);
        }
    }

    private static MoveForm Move(string from, string to, string why = "") => new(from, to, "Moved.", why);

    private async Task<int> PouredAsync(int layers, double? reading = 23)
    {
        var piece = await scene.PieceAsync();
        if (reading is { } celsius)
        {
            await scene.ReadingAsync(celsius);
        }

        for (var i = 0; i < layers; i++)
        {
            await scene.PourAsync(piece, i, scene.Now);
        }

        return await CommissionAsync(piece);
    }

    private async Task<int> ReadyAsync(int keepsakes, decimal agreed, decimal paid)
    {
        var piece = await scene.PieceAsync(keepsakes: keepsakes, deposit: false);
        await scene.ReadingAsync(23);
        for (var i = 0; i < 3; i++)
        {
            await scene.PourAsync(piece, i, scene.Now);
        }

        var id = await CommissionAsync(piece);
        studio.Clock.Advance(TimeSpan.FromHours(80));
        await using var db = studio.Open();
        db.Add(new Studio.Quotes.Quote { CommissionId = id, PieceId = piece, VersionNo = 1, State = Studio.Quotes.QuoteState.Accepted, Currency = "GBP", Result = Price(agreed), CreatedAt = scene.Now });
        db.Add(new Payment { CommissionId = id, Amount = paid, PaidAt = scene.Now, SubmitKey = Guid.NewGuid().ToString("N") });
        await db.SaveChangesAsync(Cancel);
        await StageAsync(id, Making.Finished);
        await scene.ChangeAsync<Piece>(p => p.Id == piece, p => (p.DemouldedAt, p.FinishedAt) = (scene.Now, scene.Now));
        await scene.ChangeAsync<Commission>(c => c.Id == id, c => c.Stands = Standing.Ready);
        return id;
    }

    private static Studio.Engine.Price.PriceResult Price(decimal total) => new()
    {
        Currency = "GBP",
        Materials = [],
        Labour = [],
        Equipment = [],
        Overhead = 0,
        Making = 0,
        Remakes = 0,
        Packaging = 0,
        Delivery = 0,
        Cost = 0,
        NetPrice = total,
        Tax = 0,
        Total = total,
        Fee = 0,
        Profit = 0,
        AchievedMarginPercent = 0,
        BreakEvenTotal = 0,
        Deposit = total / 2,
        Balance = total / 2,
    };

    private async Task GoneAsync(int id)
    {
        await using var db = studio.Open();
        foreach (var k in await db.Set<Keepsake>().Where(k => k.CommissionId == id).ToListAsync())
        {
            var log = await db.Set<KeepsakeEvent>().Where(e => e.KeepsakeId == k.Id).ToListAsync();
            var back = new KeepsakeEvent { KeepsakeId = k.Id, At = scene.Now, By = "Test maker", Kind = CustodyKind.Returned, Count = 1, Whom = "the family" };
            db.Add(back);
            CustodyLog.Follow(k, [.. log, back]);
        }

        await db.SaveChangesAsync(Cancel);
    }

    private Task StageAsync(int commissionId, string stage) => scene.ChangeAsync<Piece>(p => p.CommissionId == commissionId, p => p.Stage = stage);

    private async Task<int> CommissionAsync(int pieceId) => (await scene.FindAsync(pieceId)).CommissionId;

    private async Task<Piece> PieceOfAsync(int commissionId) => (await scene.AllAsync<Piece>()).Single(p => p.CommissionId == commissionId);

    private async Task<string> StandsAsync(int id) => (await scene.AllAsync<Commission>()).Single(c => c.Id == id).Stands;

    private async Task<string> LastAsync(int id) => (await scene.AllAsync<CommissionEvent>()).Where(e => e.CommissionId == id).OrderBy(e => e.Id).Last().Words;
}
