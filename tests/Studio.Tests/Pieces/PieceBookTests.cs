using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Engine.Layers;
using Studio.Keepsakes;
using Studio.Pieces;

namespace Studio.Tests.Pieces;

public sealed class PieceBookTests : IDisposable
{
    private readonly StudioDatabase database = new();

    public void Dispose() => database.Dispose();

    [Fact]
    public async Task A_piece_begins_with_what_the_maker_chose_and_the_commission_tells_of_it()
    {
        var (_, desk) = await BegunAsync();
        desk.Piece.Layers.Select(l => l.Name).ShouldBe(["First colour", "Clear, pour 1 of 3", "Clear, pour 2 of 3", "Clear, pour 3 of 3", "Last colour"]);
        desk.Piece.WastePercent.ShouldBe(3);
        PieceBook.Figures(desk.Piece, desk.Keepsakes).Keepable.ShouldBeTrue();
        await using var db = database.Open();
        (await PieceSamples.StoryAsync(db)).Single().Words.ShouldBe("“Whistle” was begun, in the mould Pyramid.");
    }

    [Fact]
    public async Task A_kept_design_is_read_back_whole()
    {
        var (book, desk) = await BegunAsync(PieceSamples.Keepsake(5, Permissions.EmbedAll));
        var p = desk.Piece;
        Stacking.Remove(p.Layers, 1);
        p.Layers[1].Name = "Clear with the whistle";
        p.Layers[1].Placed = [new LayerPlaced(5, "Ferry whistle", 17, 8.5, null)];
        Stacking.Set(p.Layers[1], LayerMeasure.Resin, 120);
        Stacking.Insert(p.Layers, 0, new PieceLayer { Id = -1, Name = "Very first", ResinId = 1, Resin = p.Layers[0].Resin, ToMm = 9 });
        (p.Name, p.Notes) = ("Whistle pyramid", "sand to 3000");
        p.Former = new FormerSpec { OuterWidthMm = 30, OuterDepthMm = 30, FromMm = 120, WallMm = 3 };
        p.Fittings = [new PieceFitting(null, "Light string", 2)];
        p.Tasks = [new PieceTask("Sand and polish", 90)];
        (await book.KeepAsync(p, desk.ReadAs, "Mo")).Ok.ShouldBeTrue();

        var again = (await book.DeskAsync(p.Id))!.Piece;
        again.Layers.Select(l => l.Name).ShouldBe(p.Layers.Select(l => l.Name));
        again.Layers.ShouldAllBe(l => l.Id > 0);
        again.Layers[2].ResinMl.ShouldBe(120);
        again.Layers[2].Placed.ShouldBe(p.Layers[2].Placed);
        (again.Name, again.Notes, again.Former).ShouldBe((p.Name, p.Notes, p.Former));
        again.Fittings.ShouldBe(p.Fittings);
        again.Tasks.ShouldBe(p.Tasks);
        await using var db = database.Open();
        (await PieceSamples.StoryAsync(db))[^1].Words.ShouldStartWith("The design of “Whistle pyramid” was kept: 5 layers, about ");
    }

    [Fact]
    public async Task Two_people_never_overwrite_each_other_not_even_by_layers_alone()
    {
        var (book, mine) = await BegunAsync();
        var theirs = (await book.DeskAsync(mine.Piece.Id))!;
        theirs.Piece.Layers[0].ToMm = 11;
        (await book.KeepAsync(theirs.Piece, theirs.ReadAs, "Kit")).Ok.ShouldBeTrue();
        mine.Piece.Layers[0].ToMm = 12;
        (await book.KeepAsync(mine.Piece, mine.ReadAs, "Mo")).Words.ShouldBe(Saved.SomeoneElse);
        (await book.DeskAsync(mine.Piece.Id))!.Piece.Layers[0].ToMm.ShouldBe(11);
    }

    [Fact]
    public async Task The_clocks_own_notes_do_not_spoil_a_design_in_the_making()
    {
        var (book, mine) = await BegunAsync();
        await using (var db = database.Open())
        {
            (await db.Set<Piece>().SingleAsync(TestContext.Current.CancellationToken)).ClockSaid = "next-pour";
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        mine.Piece.Layers[0].ToMm = 12;
        (await book.KeepAsync(mine.Piece, mine.ReadAs, "Mo")).Ok.ShouldBeTrue();
        (await book.DeskAsync(mine.Piece.Id))!.Piece.ClockSaid.ShouldBe("next-pour");
    }

    [Fact]
    public async Task A_design_with_mistakes_or_with_what_the_family_forbade_is_not_kept()
    {
        var (book, desk) = await BegunAsync(PieceSamples.Keepsake(5, Permissions.ReturnUntouched));
        desk.Piece.Layers[0].ToMm = -2;
        desk.Piece.Layers[1].Placed = [new LayerPlaced(5, "Ferry whistle", 17, 8.5, null)];
        var saved = await book.KeepAsync(desk.Piece, desk.ReadAs, "Mo");
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldContain("needs another look");
        saved.Words.ShouldContain("back untouched");
    }

    [Fact]
    public async Task A_poured_layer_stays_as_it_was_poured_and_those_above_may_change()
    {
        var (book, desk) = await BegunAsync();
        await PourAsync(desk.Piece, 0, withdrawn: false);
        var now = (await book.DeskAsync(desk.Piece.Id))!;
        now.Poured.Select(p => p.LayerId).ShouldBe([now.Piece.Layers[0].Id]);
        now.Poured.Single().Curing.ShouldBeTrue();
        now.Piece.Layers[0].ToMm = 15;
        (await book.KeepAsync(now.Piece, now.ReadAs, "Mo")).Words.ShouldContain("is poured already");

        now = (await book.DeskAsync(desk.Piece.Id))!;
        now.Piece.Layers[0].Name = "Renamed";
        now.Piece.Layers[1].ToMm = 48;
        (await book.KeepAsync(now.Piece, now.ReadAs, "Mo")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task A_pour_that_was_taken_back_settles_nothing()
    {
        var (book, desk) = await BegunAsync();
        await PourAsync(desk.Piece, 0, withdrawn: true);
        desk.Piece.Layers[0].ToMm = 15;
        (await book.KeepAsync(desk.Piece, desk.ReadAs, "Mo")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task Drawn_once_more_a_piece_leaves_the_keepsakes_with_the_first()
    {
        var (book, desk) = await BegunAsync(PieceSamples.Keepsake(5, Permissions.EmbedAll));
        desk.Piece.Layers[1].Placed = [new LayerPlaced(5, "Ferry whistle", 17, 8.5, null), new LayerPlaced(null, "Film of the harbour", null, null, 0)];
        await book.KeepAsync(desk.Piece, desk.ReadAs, "Mo");
        var copy = (await book.DeskAsync((await book.DuplicateAsync(desk.Piece.Id, "Mo")).Id))!;
        copy.Piece.Name.ShouldBe("Whistle, again");
        copy.Piece.Layers[1].Placed.Select(p => p.Name).ShouldBe(["Film of the harbour"]);
        copy.Keepsakes.Elsewhere[5].ShouldBe("Whistle");
    }

    [Fact]
    public async Task A_piece_let_go_can_be_taken_up_again()
    {
        var (book, desk) = await BegunAsync();
        (await book.LetGoAsync(desk.Piece.Id, "Mo")).Ok.ShouldBeTrue();
        (await book.DeskAsync(desk.Piece.Id))!.Piece.Stage.ShouldBe(Making.LetGo);
        await book.TakeUpAsync(desk.Piece.Id, "Mo");
        (await book.DeskAsync(desk.Piece.Id))!.Piece.Stage.ShouldBe(Making.Drawn);
    }

    [Fact]
    public async Task What_is_not_there_is_said_and_not_thrown()
    {
        var book = PieceSamples.Book(database);
        (await book.DeskAsync(404)).ShouldBeNull();
        (await book.ChoicesAsync(404)).ShouldBeNull();
        (await book.CreateAsync(404, "x", 404, PieceStart.Empty, "Mo")).Ok.ShouldBeFalse();
        (await book.CreateAsync(404, " ", 404, PieceStart.Empty, "Mo")).Words.ShouldContain("name");
        (await book.LetGoAsync(404, "Mo")).Ok.ShouldBeFalse();
    }

    [Fact]
    public async Task Open_pages_hear_of_a_kept_design()
    {
        var (book, desk) = await BegunAsync();
        var heard = new List<NewsOf>();
        using var ear = database.News.Listen(heard.Add);
        desk.Piece.Notes = "x";
        await book.KeepAsync(desk.Piece, desk.ReadAs, "Mo");
        heard.ShouldBe([new NewsOf(News.Piece, desk.Piece.Id)]);
    }

    private async Task<(PieceBook Book, PieceDesk Desk)> BegunAsync(params Keepsake[] keepsakes)
    {
        var commission = await PieceSamples.CommissionAsync(database, keepsakes);
        var book = PieceSamples.Book(database);
        var saved = await book.CreateAsync(commission, " Whistle ", 1, PieceStart.Colours, "Mo");
        saved.Ok.ShouldBeTrue();
        return (book, (await book.DeskAsync(saved.Id))!);
    }

    private async Task PourAsync(Piece piece, int layer, bool withdrawn)
    {
        await using var db = database.Open();
        var l = piece.Layers[layer];
        db.Add(new Pour { PieceId = piece.Id, LayerId = l.Id, LayerOrder = layer, LayerName = l.Name, ResinId = l.ResinId, ToMm = l.ToMm!.Value, Withdrawn = withdrawn, SubmitKey = "p", StartedAt = db.Now });
        await db.SaveChangesAsync();
    }
}
