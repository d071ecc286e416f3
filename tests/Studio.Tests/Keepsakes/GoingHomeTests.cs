using Microsoft.EntityFrameworkCore;
using Studio.Data.Files;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Papers;
using Studio.Pieces;
using UglyToad.PdfPig;

namespace Studio.Tests.Keepsakes;

/// <summary>Everything left over goes back in one act: one entry each, and one paper that says what the log says.</summary>
public sealed class GoingHomeTests : IDisposable
{
    private readonly KeepsakeScene scene = new();
    private readonly string folder = Directory.CreateTempSubdirectory("going-home").FullName;

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private IssuedBook Issued => new(scene.Database.Factory, new PaperFolder(folder), scene.Database.Clock);

    private GoingHomeBook Book => new(scene.Database.Factory, scene.Database.Clock, scene.Settings, Issued, new PieceNames(), scene.Database.News);

    public void Dispose()
    {
        scene.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    [Fact]
    public async Task Everything_goes_with_one_entry_each_and_one_paper_that_says_that_nothing_remains()
    {
        var heather = await scene.TakenInAsync(massG: 12.5);
        var nails = await scene.TakenInAsync("iron", Permissions.EmbedPart, 86.5, "hive nails");
        await scene.DoneAsync(heather, new ActForm { Act = CustodyKind.SetIn, MassG = 4.5, PieceId = scene.PieceId, Place = "Drawer 1" });

        var form = await FormAsync();
        var saved = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        saved.Ok.ShouldBeTrue(saved.Words);

        foreach (var number in new[] { heather.Keepsake.EntryNumber, nails.Keepsake.EntryNumber })
        {
            var now = (await scene.ViewAsync(number)).Now;
            now.Balance.InHand.ShouldBeFalse();
            now.Balance.PiecesAddUp.ShouldBeTrue();
        }

        (await scene.EventsAsync(nails.Keepsake.Id)).Count(e => e.Kind == CustodyKind.Returned && e.Whom == "Isla Fraser").ShouldBe(1);
        var words = await WordsAsync(saved.Id);
        words.ShouldContain("Nothing of theirs remains with us.");
        words.ShouldContain(heather.Keepsake.EntryNumber);
        words.ShouldContain("8.00");
        words.ShouldContain("4.50");
        (await Book.ReadAsync(scene.CommissionId))!.Here.ShouldBeEmpty();
    }

    [Fact]
    public async Task What_is_still_to_be_cast_or_copied_is_said_so_and_not_left_over()
    {
        var heather = await scene.TakenInAsync(massG: 12.5);
        var letter = await scene.TakenInAsync("paper", Permissions.CopyReturn, description: "a letter");
        var nails = await scene.TakenInAsync("iron", Permissions.ReturnUntouched, 86.5, "hive nails");
        async Task<string> YetAsync(int id) => (await Book.ReadAsync(scene.CommissionId))!.Here.Single(l => l.Id == id).Yet;
        (await YetAsync(heather.Keepsake.Id)).ShouldBe("It is to be cast, and nothing of it is in a piece that goes to them.");
        (await YetAsync(letter.Keepsake.Id)).ShouldBe("It is to be copied, and no copy is written down.");
        (await YetAsync(nails.Keepsake.Id)).ShouldBe("");

        await scene.DoneAsync(heather, new ActForm { Act = CustodyKind.SetIn, MassG = 4.5, PieceId = scene.PieceId, Place = "Drawer 1" });
        (await YetAsync(heather.Keepsake.Id)).ShouldBe("");
        await ChangeAsync(db => db.Set<Piece>().Single(p => p.Id == scene.PieceId).Stage = Making.Failed);
        (await YetAsync(heather.Keepsake.Id)).ShouldNotBe("", "what lies in a failed piece does not go to them");
        await ChangeAsync(db => db.Set<Studio.Commissions.Commission>().Single(c => c.Id == scene.CommissionId).Stands = Studio.Commissions.Standing.LetGo);
        (await YetAsync(heather.Keepsake.Id)).ShouldBe("", "nothing is to be cast for a commission that was let go");
    }

    [Fact]
    public async Task The_piece_itself_is_in_the_parcel_or_is_said_to_remain()
    {
        await scene.TakenInAsync("iron", Permissions.ReturnUntouched, 86.5, "hive nails");
        await ChangeAsync(db => db.Set<Piece>().Single(p => p.Id == scene.PieceId).Stage = Making.Finished);
        var piece = (await Book.ReadAsync(scene.CommissionId))!.Pieces.ShouldHaveSingleItem();
        var without = await Book.GoAsync(scene.CommissionId, await FormAsync(), KeepsakeScene.Maker);
        var words = await WordsAsync(without.Id);
        words.ShouldNotContain("Nothing of theirs remains");
        words.ShouldContain($"The piece made for you, {piece.Name}: finished.");

        var form = new GoingHomeForm { Whom = "Isla Fraser", PieceIds = [piece.Id] };
        var with = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        with.Ok.ShouldBeTrue(with.Words);
        words = await WordsAsync(with.Id);
        words.ShouldContain($"With this parcel goes the piece itself: {piece.Name}.");
        words.ShouldContain("Nothing of theirs remains with us.");

        // it has left: a second parcel neither has it again nor says that it is here
        (await Book.ReadAsync(scene.CommissionId))!.Pieces.ShouldBeEmpty();
        (await Book.GoAsync(scene.CommissionId, new GoingHomeForm { Whom = "Isla Fraser", PieceIds = [piece.Id] }, KeepsakeScene.Maker)).Words.ShouldContain("not here as finished any more");

        await ChangeAsync(db => db.Set<Piece>().Single(p => p.Id == scene.PieceId).Stage = Making.Casting);
        (await Book.GoAsync(scene.CommissionId, new GoingHomeForm { Whom = "Isla Fraser", PieceIds = [piece.Id] }, KeepsakeScene.Maker)).Words.ShouldContain("not here as finished any more");
    }

    private async Task ChangeAsync(Action<Studio.Data.StudioDb> change)
    {
        await using var db = scene.Database.Open();
        change(db);
        await db.SaveChangesAsync(Cancel);
    }

    [Fact]
    public async Task What_is_not_ticked_is_named_on_the_paper_as_remaining()
    {
        var heather = await scene.TakenInAsync();
        var nails = await scene.TakenInAsync("iron", Permissions.EmbedPart, 86.5, "hive nails");
        var form = await FormAsync();
        form.Rows.Find(r => r.KeepsakeId == heather.Keepsake.Id)!.Goes = false;
        var saved = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        saved.Ok.ShouldBeTrue(saved.Words);
        var words = await WordsAsync(saved.Id);
        words.ShouldNotContain("Nothing of theirs remains");
        words.ShouldNotContain("a part");
        words.ShouldContain($"{heather.Keepsake.EntryNumber}, heather from the hill: 1 (Drawer 1).");
        (await scene.ViewAsync(nails.Keepsake.EntryNumber)).Now.Whereabouts.ShouldBe(CustodyWhereabouts.Returned);
        (await scene.ViewAsync(heather.Keepsake.EntryNumber)).Now.Whereabouts.ShouldBe(CustodyWhereabouts.Here);
    }

    [Fact]
    public async Task The_same_parcel_sent_twice_is_one_parcel()
    {
        var heather = await scene.TakenInAsync();
        var form = await FormAsync();
        var first = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        var second = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        (second.Ok, second.Id).ShouldBe((true, first.Id));
        (await scene.EventsAsync(heather.Keepsake.Id)).Count(e => e.Kind == CustodyKind.Returned).ShouldBe(1);
    }

    [Fact]
    public async Task One_amount_that_cannot_be_keeps_the_whole_parcel_back()
    {
        var heather = await scene.TakenInAsync(massG: 12.5);
        var nails = await scene.TakenInAsync("iron", Permissions.EmbedPart, 86.5, "hive nails");
        var form = await FormAsync();
        form.Rows.Find(r => r.KeepsakeId == nails.Keepsake.Id)!.Much = new ActForm { Act = CustodyKind.Returned, MassG = 90 };
        var saved = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldContain(nails.Keepsake.EntryNumber);
        (await scene.ViewAsync(heather.Keepsake.EntryNumber)).Now.Whereabouts.ShouldBe(CustodyWhereabouts.Here);
        (await Issued.OfCommissionAsync(scene.CommissionId)).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_parcel_without_anything_or_anybody_is_refused_all_at_once()
    {
        await scene.TakenInAsync();
        var form = await FormAsync();
        (form.Whom, form.Rows[0].Goes) = (" ", false);
        var saved = await Book.GoAsync(scene.CommissionId, form, KeepsakeScene.Maker);
        saved.Words.ShouldContain("Tick what goes home");
        saved.Words.ShouldContain("Say who takes it");
    }

    [Fact]
    public async Task A_reprint_is_the_stored_paper_marked_as_a_copy()
    {
        await scene.TakenInAsync();
        var saved = await Book.GoAsync(scene.CommissionId, await FormAsync(), KeepsakeScene.Maker);
        var left = (await Issued.AsItLeftAsync(saved.Id))!;
        await using (var db = scene.Database.Open())
        {
            (await db.Set<Studio.Customers.Customer>().SingleAsync(Cancel)).Name = "Somebody Else";
            await db.SaveChangesAsync(Cancel);
        }

        (await Issued.AsItLeftAsync(saved.Id))!.Content.ShouldBe(left.Content);
        var copy = Words((await Issued.CopyAsync(saved.Id))!.Content);
        copy.ShouldContain("Copy");
        copy.ShouldContain("Isla Fraser");
        copy.ShouldNotContain("Somebody Else");
    }

    [Fact]
    public async Task What_lies_in_a_piece_that_failed_remains_with_us_and_the_paper_says_so()
    {
        var heather = await scene.TakenInAsync(massG: 12.5);
        await scene.DoneAsync(heather, new ActForm { Act = CustodyKind.SetIn, MassG = 4.5, PieceId = scene.PieceId, Place = "Drawer 1" });
        await using (var db = scene.Database.Open())
        {
            (await db.Set<Piece>().SingleAsync(Cancel)).Stage = Making.Failed;
            await db.SaveChangesAsync(Cancel);
        }

        var saved = await Book.GoAsync(scene.CommissionId, await FormAsync(), KeepsakeScene.Maker);
        saved.Ok.ShouldBeTrue(saved.Words);
        var words = await WordsAsync(saved.Id);
        words.ShouldNotContain("Nothing of theirs remains");
        words.ShouldContain("cast into a piece that does not go to you");
        var view = (await Book.ReadAsync(scene.CommissionId))!;
        view.Here.ShouldBeEmpty();
        view.Staying.ShouldHaveSingleItem().ShouldContain(heather.Keepsake.EntryNumber);
    }

    private async Task<GoingHomeForm> FormAsync()
    {
        var view = (await Book.ReadAsync(scene.CommissionId))!;
        return new() { Rows = [.. view.Here.Select(l => new GoingHomeRow { KeepsakeId = l.Id })], Whom = view.Customer, Packing = "tissue, in the oak box" };
    }

    private async Task<string> WordsAsync(int paper) => Words((await Issued.AsItLeftAsync(paper))!.Content);

    private static string Words(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        return string.Join(' ', document.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
    }
}
