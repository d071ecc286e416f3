using Studio.Data.Files;
using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Engine.Film;
using Studio.Engine.Layers;
using Studio.Film;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Settings;
using Studio.Tests.Files;
using Studio.Tests.Pieces;
using UglyToad.PdfPig;

namespace Studio.Tests.Film;

public sealed class FilmBookTests : PhotoStoreTestBase, IDisposable
{
    private readonly StudioDatabase database = new();

    public new void Dispose()
    {
        database.Dispose();
        base.Dispose();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Pictures_of_the_keepsakes_come_first_then_those_sent_for_the_piece()
    {
        var commission = await PieceSamples.CommissionAsync(database, PieceSamples.Keepsake(5, Permissions.EmbedAll));
        using var other = Pictures.Quarters(300, 200);
        (await Book().TakeInAsync(commission, new MemoryStream(Pictures.Jpeg(other)), "harbour.jpg", "Mo")).Picture.ShouldNotBeNull();
        await using (var db = database.Open())
        {
            db.Add(new Photo { Hash = new string('b', 64), KeepsakeId = 5, WidthPx = 10, HeightPx = 20 });
            db.Add(new Photo { Hash = new string('c', 64), WidthPx = 10, HeightPx = 20 }); // of nobody yet
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (await Book().PicturesAsync(commission)).Select(p => (p.From, p.WidthPx, p.HeightPx)).ShouldBe([("Ferry whistle (KS-26-00005-X)", 10, 20), ("harbour.jpg", 300, 200)]);
    }

    [Fact]
    public async Task Picture_that_cannot_be_opened_is_refused_in_words_and_nothing_is_kept()
    {
        var commission = await PieceSamples.CommissionAsync(database);
        var (picture, refusal) = await Book().TakeInAsync(commission, new MemoryStream([0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8]), "IMG_1.HEIC", "Mo");
        picture.ShouldBeNull();
        refusal!.ShouldContain("HEIC");
        (await Book().PicturesAsync(commission)).ShouldBeEmpty();
    }

    [Fact]
    public async Task Design_with_a_photograph_is_kept_read_back_and_drawn_on_paper()
    {
        var (piece, picture) = await KeptAsync();
        var again = (await PieceSamples.Book(database).DeskAsync(piece.Id))!.Piece.Sheets.ShouldHaveSingleItem();
        again.ShouldBe(piece.Sheets[0]);
        again.Picture.ShouldBe(picture);

        var whole = (await Book().PaperAsync(piece.Id, new(null, null, OutlineOnly: false)))!;
        var outline = (await Book().PaperAsync(piece.Id, new(0, "Letter", OutlineOnly: true)))!;
        using var pdf = PdfDocument.Open(whole.Content);
        pdf.GetPage(1).GetImages().ShouldHaveSingleItem();
        pdf.GetPage(1).Width.ShouldBe(595.3, 0.1); // the studio's own paper, A4
        using var letter = PdfDocument.Open(outline.Content);
        letter.GetPage(1).GetImages().ShouldBeEmpty();
        letter.GetPage(1).Width.ShouldBe(612, 0.1);
        System.Text.Encoding.UTF8.GetString((await Book().SvgAsync(piece.Id, 0))!.Content).ShouldContain("<svg");
    }

    [Fact]
    public async Task Without_a_sheet_that_stands_there_is_no_paper()
    {
        var (piece, _) = await KeptAsync();
        (await Book().PaperAsync(piece.Id, new(3, null, false))).ShouldBeNull();
        (await Book().PaperAsync(999, new(null, null, false))).ShouldBeNull();
        (await Book().SvgAsync(piece.Id, 1)).ShouldBeNull();
        (await Book().SvgAsync(piece.Id, -1)).ShouldBeNull();
    }

    [Fact]
    public async Task Picture_that_is_gone_leaves_the_outline()
    {
        var (piece, _) = await KeptAsync();
        Array.ForEach(Files(), File.Delete);
        using var pdf = PdfDocument.Open((await Book().PaperAsync(piece.Id, new(null, null, false)))!.Content);
        pdf.GetPage(1).GetImages().ShouldBeEmpty();
    }

    [Fact]
    public async Task Plane_outside_the_mould_is_not_kept_and_every_number_stays_as_typed()
    {
        var (piece, _) = await KeptAsync();
        var desk = (await PieceSamples.Book(database).DeskAsync(piece.Id))!;
        desk.Piece.Sheets[0] = desk.Piece.Sheets[0] with { Place = new() { Placement = FilmPlacement.Parallel, DepthMm = 300, FromMm = 12 } };
        var saved = await PieceSamples.Book(database).KeepAsync(desk.Piece, desk.ReadAs, "Mo");
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldContain("225 mm in front of the mould");
        (desk.Piece.Sheets[0].Place.DepthMm, desk.Piece.Sheets[0].Place.FromMm).ShouldBe((300, 12));
    }

    [Fact]
    public void Sheet_stands_on_the_layer_that_ends_below_it_and_knows_the_box_for_the_lights()
    {
        var piece = PieceSamples.Piece();
        var result = PieceBook.Figures(piece).Result!;
        piece.Sheets.Add(FilmStart.In(piece, result));
        piece.Sheets[0].Place.FromMm.ShouldBe(result.Layers[0].ToMm);
        piece.Sheets[0].Place.Over.ShouldBeTrue(); // a pyramid is cast on its head
        var figures = PieceBook.Figures(piece).Sheets.ShouldHaveSingleItem();
        figures.Fit!.Edges.ShouldContain(e => e.Meets == EdgeMeets.Layer);

        piece.Former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 40, FromMm = 120, Solid = true };
        PieceBook.Figures(piece).Findings.ShouldContain(f => f.Code == "sheet-meets-former" && f.Severity == Severity.Stop && f.Path == "sheets[0].toMm");
        FilmStart.In(piece, result).Place.ToMm.ShouldBe(120);
    }

    [Fact]
    public void Film_larger_than_any_page_is_said_and_one_colour_is_asked_for()
    {
        var piece = PieceSamples.Piece();
        piece.Mould = PieceSamples.Pyramid(300, 300);
        piece.Sheets.Add(new("Large") { Place = new() { Ink = "toner-black" }, Picture = new("x", 3000, 3000, "") });
        PieceBook.Figures(piece).Sheets[0].Findings.Select(f => f.Code).ShouldBe(["face-not-flat", "few-pixels", "larger-than-page", "not-one-colour"]);
    }

    private FilmBook Book() => new(database.Factory, database.Clock, new SettingsBook(database.Factory, database.News), Store);

    private async Task<(Piece Piece, FilmPicture Picture)> KeptAsync()
    {
        var commission = await PieceSamples.CommissionAsync(database);
        var book = PieceSamples.Book(database);
        var id = (await book.CreateAsync(commission, "Whistle", 1, PieceStart.Colours, "Mo")).Id;
        using var bitmap = Pictures.Quarters(900, 600);
        var picture = (await Book().TakeInAsync(commission, new MemoryStream(Pictures.Jpeg(bitmap)), "harbour.jpg", "Mo")).Picture!;
        var desk = (await book.DeskAsync(id))!;
        desk.Piece.Sheets.Add(FilmStart.In(desk.Piece, null) with { Picture = picture, Recipe = new PictureRecipe { QuarterTurns = 1, CropLeft = 0.1 } });
        (await book.KeepAsync(desk.Piece, desk.ReadAs, "Mo")).Words.ShouldBe("");
        return (desk.Piece, picture);
    }
}
