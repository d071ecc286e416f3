using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Engine.Film;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Stores;
using Studio.Tests.Papers;

namespace Studio.Tests.Quotes;

/// <summary>The family's paper promises only what is priced and what the maker promised.</summary>
public sealed class QuotePaperTests : IDisposable
{
    private readonly QuoteScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task The_familys_paper_says_the_total_and_none_of_the_costs()
    {
        var words = await WordsAsync((await scene.SentAsync()).Quote.Id);
        words.ShouldContain("£97.60");
        words.ShouldContain("Isolde");
        foreach (var inner in new[] { "margin", "overhead", "remake", "profit", "break-even", "4.80", "an hour" })
        {
            words.ShouldNotContain(inner, Case.Insensitive);
        }
    }

    [Fact]
    public async Task A_draft_says_that_it_is_one()
    {
        (await WordsAsync((await scene.OpenAsync()).Quote.Id)).ShouldContain("Draft");
    }

    // 100 × 100 mm and 20 mm of resin in a mould of 50 mm
    [Fact]
    public async Task The_size_is_the_castings_and_not_the_moulds()
    {
        var words = await WordsAsync((await scene.OpenAsync()).Quote.Id);
        words.ShouldContain("About 100 mm square at the foot, 20 mm high");
        words.ShouldNotContain("50 mm");
    }

    [Fact]
    public async Task Work_by_hand_is_promised_only_where_its_hours_are_in_the_price()
    {
        (await WordsAsync((await scene.OpenAsync()).Quote.Id)).ShouldContain("sand and polish", Case.Insensitive);
        await AgainAsync(db => db.Set<Piece>().Single().Tasks = []);
        (await WordsAsync((await scene.OpenAsync()).Quote.Id)).ShouldNotContain("polish", Case.Insensitive);
    }

    [Fact]
    public async Task The_familys_wish_is_no_promise()
    {
        await scene.ChangeAsync(db => db.Set<Commission>().Single().NeededBy = new DateOnly(2026, 6, 12));
        var words = await WordsAsync((await scene.OpenAsync()).Quote.Id);
        words.ShouldNotContain("With you by");
        words.ShouldContain("You asked for it by 12 June 2026");
        words.ShouldContain("No day is promised yet");
    }

    // by the material's kind in the catalogue and by no word of its name (the warning itself: 16 CFR 1263.4)
    [Theory]
    [InlineData("Fairy lights", true, true)]
    [InlineData("Coin-sized button cell look-alike", false, false)]
    public async Task The_cell_warning_goes_by_the_catalogue_and_not_by_a_name(string name, bool cell, bool warned)
    {
        await scene.ChangeAsync(db =>
        {
            var light = db.Set<Material>().Single(m => m.Kind == "light");
            (light.Name, light.ButtonCell) = (name, cell);
            db.Set<Piece>().Single().Fittings = [new(light.Id, name, 1)];
        });
        var words = await WordsAsync((await scene.OpenAsync()).Quote.Id);
        words.Contains("Swallowed, a button cell can kill", StringComparison.Ordinal).ShouldBe(warned);
    }

    [Fact]
    public async Task What_will_be_in_it_stands_in_the_order_of_the_drawing_with_the_photograph()
    {
        await scene.ChangeAsync(db =>
        {
            var piece = db.Set<Piece>().Include(p => p.Layers).Single();
            piece.Layers[0].Name = "Amber tip";
            piece.Layers.Add(new PieceLayer { Name = "Dark foot", Order = 1, ResinId = piece.Layers[0].ResinId, ThicknessMm = 20 });
            piece.Sheets = [new PieceFilm("Isolde at the gate")];
        });
        var words = await WordsAsync((await scene.OpenAsync()).Quote.Id);
        var said = words[words.IndexOf("What will be in it", StringComparison.Ordinal)..];
        said.IndexOf("Amber tip", StringComparison.Ordinal).ShouldBeInRange(0, said.IndexOf("Dark foot", StringComparison.Ordinal));
        said.ShouldContain("Isolde at the gate");
    }

    // one print on one sheet of twenty at 14.00, and 2 × 44 × 37 × 3 mm and 2 × 38 × 37 × 3 mm of acrylic and its floor, by its mass
    [Fact]
    public async Task The_film_and_the_box_are_priced()
    {
        await scene.ChangeAsync(db =>
        {
            db.Add(new Material { Name = "Acrylic sheet", Kind = "plastic", Unit = "g", DensityGPerMl = 1.19, PackSize = 250, PackPrice = 6 });
            var piece = db.Set<Piece>().Include(p => p.Layers).Single();
            piece.Layers[0].ThicknessMm = 40;
            piece.Sheets = [new PieceFilm("Isolde at the gate") { Place = new FilmSpec { FromMm = 2, ToMm = 12 } }];
            piece.Former = new() { OuterWidthMm = 44, OuterDepthMm = 44, FromMm = 20, WallMm = 3 };
        });
        var lines = (await scene.OpenAsync()).Quote.Lines;
        lines.ShouldContain(l => l.Kind == "film" && l.Cost == 0.70m);
        lines.ShouldContain(l => l.Kind == "box" && l.Cost > 0);
    }

    [Fact]
    public async Task The_drawing_shows_the_casting_and_no_empty_mould()
    {
        // the lowest and highest line of the drawing are the casting's: of 50 mm of mould, 20 are filled; a film and a box that reach to its rim are cut
        await scene.ChangeAsync(db =>
        {
            db.Set<Piece>().Single().Sheets = [new PieceFilm("Isolde at the gate")];
            db.Set<Piece>().Single().Former = new() { OuterWidthMm = 44, OuterDepthMm = 44, FromMm = 10, WallMm = 3 };
        });
        var section = QuotePaperBook.Drawn((await scene.OpenAsync()).Piece);
        var shapes = section.ShouldNotBeNull().Shapes;
        shapes.OfType<Studio.Papers.PaperLine>().ShouldNotBeEmpty("the film is drawn by its edge");
        var points = shapes.OfType<Studio.Papers.PaperPolygon>().SelectMany(p => p.Points).Concat(shapes.OfType<Studio.Papers.PaperLine>().SelectMany(l => new[] { l.From, l.To })).ToList();
        (points.Max(p => p.ZMm) - points.Min(p => p.ZMm)).ShouldBe(20, 0.01);
    }

    [Fact]
    public async Task A_layer_is_called_as_the_family_is_told_on_drawing_and_list()
    {
        var form = QuoteScene.FormOf(await scene.OpenAsync());
        form.LayerWords["Clear"] = "Clear as the morning";
        (await scene.Book.KeepAsync(form, "maker")).Ok.ShouldBeTrue();
        var words = await WordsAsync(form.Id);
        words.Split("Clear as the morning").Length.ShouldBe(3, "once beside the drawing and once in the list");
    }

    private async Task AgainAsync(Action<Studio.Data.StudioDb> change) => await scene.ChangeAsync(db =>
    {
        db.RemoveRange(db.Set<QuoteLine>());
        db.RemoveRange(db.Set<Quote>());
        change(db);
    });

    private async Task<string> WordsAsync(int id) => PaperWords.Of((await scene.PaperAsync(id)).Content);
}
