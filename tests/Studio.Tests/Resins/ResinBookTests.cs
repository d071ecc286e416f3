using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Stores;

namespace Studio.Tests.Resins;

public sealed class ResinBookTests : IDisposable
{
    private readonly StudioDatabase database = new();
    private readonly ResinBook book;

    public ResinBookTests() => book = new ResinBook(database.Factory, database.News, new PieceUses());

    public void Dispose() => database.Dispose();

    [Fact]
    public async Task A_sheet_comes_back_as_it_was_kept()
    {
        var form = Sheets.Casting("Clear casting");
        form.Times.Add(new ResinTimesRow { AtC = 18, DemouldHours = 36 });
        form.Times.Add(new ResinTimesRow());
        var saved = await book.SaveAsync(form, "Ada");
        var back = (await book.FormAsync(saved.Id))!;
        back.Name.ShouldBe("Clear casting");
        back.Times.Select(t => t.AtC).ShouldBe([18, 23]);
        back.Times[1].NextUntilHours.ShouldBe(24);
        back.Packs.Single().Price.ShouldBe(27.5);
    }

    [Fact]
    public async Task A_save_over_somebody_elses_newer_version_is_refused_and_loses_nothing()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var mine = (await book.FormAsync(id))!;
        var theirs = (await book.FormAsync(id))!;
        theirs.MaxPourMm = 12;
        (await book.SaveAsync(theirs, "Bo")).Ok.ShouldBeTrue();
        mine.MaxPourMm = 30;
        var saved = await book.SaveAsync(mine, "Ada");
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldBe(Saved.SomeoneElse);
        mine.MaxPourMm.ShouldBe(30);
        (await book.FormAsync(id))!.MaxPourMm.ShouldBe(12);
    }

    [Fact]
    public async Task Two_resins_of_one_name_are_refused_so_that_nobody_pours_the_wrong_one()
    {
        await book.SaveAsync(Sheets.Casting("Clear"), "Ada");
        (await book.SaveAsync(Sheets.Casting("CLEAR "), "Ada")).Words.ShouldContain("already");
    }

    [Fact]
    public async Task A_retired_resin_leaves_the_list_and_comes_back()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        await book.RetireAsync(id, "Ada");
        (await book.ListAsync()).ShouldBeEmpty();
        (await book.ListAsync(retired: true)).Single().Retired.ShouldBeTrue();
        await book.RestoreAsync(id, "Ada");
        (await book.ListAsync()).Single().Id.ShouldBe(id);
    }

    [Fact]
    public async Task A_save_tells_every_open_page_and_writes_who_changed_what()
    {
        var heard = new List<NewsOf>();
        using var ear = database.News.Listen(heard.Add);
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var form = (await book.FormAsync(id))!;
        form.MaxPourMm = 25;
        await book.SaveAsync(form, "Bo");
        heard.ShouldBe([new NewsOf(News.Stores, id), new NewsOf(News.Stores, id)]);
        await using var db = database.Open();
        var line = db.Set<AuditEntry>().Single();
        (line.By, line.Entity).ShouldBe(("Bo", "Resin"));
        line.Changes.ShouldContain("MaxPourMm");
    }

    [Fact]
    public async Task The_seed_sheets_read_as_typical_and_without_a_doubt()
    {
        await using (var db = database.Open())
        {
            await new CatalogueSeed().PlantAsync(db);
        }

        var lines = await book.ListAsync();
        lines.ShouldAllBe(l => l.Typical);
        lines.ShouldAllBe(l => l.Doubts == 0);
    }

    // 100 · vB·ρB / (vA·ρA) = 100 · 1 · 1.00 / (2 · 1.15) = 43.478 (mass = volume × density)
    [Fact]
    public async Task Parts_by_volume_are_shown_as_the_scale_needs_them()
    {
        var form = Sheets.Casting("By volume");
        (form.MixBy, form.PartsA, form.PartsB, form.DensityAGPerMl, form.DensityBGPerMl, form.DensityGPerMl) = ("volume", 2, 1, 1.15, 1.00, null);
        await book.SaveAsync(form, "Ada");
        (await book.ListAsync()).Single().PartsBPer100A!.Value.ShouldBe(43.478, 0.001);
        var glance = ResinBook.Glance(form);
        glance.GramsAOf500!.Value.ShouldBe(500 * 2.3 / 3.3, 0.001);
        (glance.GramsAOf500 + glance.GramsBOf500)!.Value.ShouldBe(500, 1e-9);
        glance.DensityGPerMl!.Value.ShouldBe(1.10, 1e-9);
    }

    [Fact]
    public async Task A_resin_in_no_piece_is_used_by_none() =>
        (await book.UsesAsync((await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id)).ShouldBe(0);

    [Fact]
    public async Task A_piece_with_two_layers_of_a_resin_uses_it_once_and_keeps_it_when_it_retires()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        await using (var db = database.Open())
        {
            db.Add(new Piece
            {
                Name = "Hive",
                Mould = new Mould { Name = "Cube", Shape = "cuboid", Dimensions = new() { ["widthMm"] = 60, ["depthMm"] = 60, ["heightMm"] = 60 } },
                Commission = new Commission { Number = "C-1", Title = "Hive", Customer = new Customer { Name = "A beekeeper" } },
                Layers = [new PieceLayer { Name = "Base", ResinId = id, ThicknessMm = 10 }, new PieceLayer { Name = "Top", Order = 1, ResinId = id, ThicknessMm = 10 }],
            });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        (await book.UsesAsync(id)).ShouldBe(1);
        (await book.RetireAsync(id, "Ada")).Ok.ShouldBeTrue();
        (await book.UsesAsync(id)).ShouldBe(1);
        (await new MouldBook(database.Factory, database.Clock, database.News, database.Meshes, new PieceUses()).UsesAsync(1)).ShouldBe(1);
    }

    [Fact]
    public async Task A_full_price_comes_from_the_best_pack()
    {
        var form = Sheets.Casting("Clear");
        form.Packs.Add(new ResinPackRow { SizeG = 5000, Price = 100 });
        await book.SaveAsync(form, "Ada");
        (await book.ListAsync()).Single().PricePerKg.ShouldBe(20m);
    }
}
