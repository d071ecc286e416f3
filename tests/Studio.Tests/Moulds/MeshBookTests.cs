using Microsoft.EntityFrameworkCore;
using Studio.Engine.Moulds;
using Studio.Moulds;
using Studio.Pieces;
using TestContext = Xunit.TestContext;

namespace Studio.Tests.Moulds;

public sealed class MeshBookTests : IDisposable
{
    // a box of 2 by 3 by 4 in the file's own unit: 24 cubic units
    private const string Box = """
        v 0 0 0
        v 2 0 0
        v 2 3 0
        v 0 3 0
        v 0 0 4
        v 2 0 4
        v 2 3 4
        v 0 3 4
        f 1 4 3 2
        f 5 6 7 8
        f 1 2 6 5
        f 2 3 7 6
        f 3 4 8 7
        f 4 1 5 8
        """;

    private readonly StudioDatabase database = new();
    private readonly MouldBook book;

    public MeshBookTests() => book = new MouldBook(database.Factory, database.Clock, database.News, database.Meshes, new PieceUses());

    public void Dispose() => database.Dispose();

    [Fact]
    public async Task The_size_is_shown_in_every_unit_before_one_is_chosen()
    {
        var look = await book.LookAsync(await SentAsync(Box));
        look.Errors.ShouldBeEmpty();
        look.Sizes.Select(s => (s.Unit, Math.Round(s.WidthMm, 9), Math.Round(s.DepthMm, 9), Math.Round(s.HeightMm, 9), s.Likely)).ShouldBe(
        [
            ("mm", 2, 3, 4, false), ("cm", 20, 30, 40, true), ("m", 2000, 3000, 4000, false), ("inch", 50.8, 76.2, 101.6, true),
        ]);
    }

    [Fact]
    public async Task A_kept_mesh_holds_what_its_unit_says_wherever_the_mould_is_read() // 24 cubic inches of 16.387064 ml each
    {
        await KeptAsync("inch");
        (await book.ListAsync()).Single().CapacityMl!.Value.ShouldBe(24 * 16.387064, 1e-6);
        await using var db = database.Open();
        var mould = await db.Set<Studio.Moulds.Mould>().SingleAsync(TestContext.Current.CancellationToken);
        MouldShapes.Make(mould.Spec).Value.CapacityMl.ShouldBe(24 * 16.387064, 1e-6);
    }

    [Fact]
    public async Task The_folder_reaches_a_mould_that_came_with_its_piece()
    {
        var id = await KeptAsync("cm");
        await using (var db = database.Open())
        {
            db.Add(new Studio.Commissions.Commission { Number = "26-001", Customer = new() { Name = "A ferry pilot" }, Remembers = "Brass" });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
            db.Add(new Piece { Name = "Block", MouldId = id, CommissionId = 1 });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        await using var again = database.Open();
        var piece = await again.Set<Piece>().Include(p => p.Mould).AsNoTracking().SingleAsync(TestContext.Current.CancellationToken);
        MouldShapes.Make(piece.Mould!.Spec).Value.CapacityMl.ShouldBe(24, 1e-9);
    }

    [Fact]
    public async Task Another_way_up_is_another_height() =>
        (await book.LookAsync(await SentAsync(Box) with { Up = "+x" })).Sizes.Single(s => s.Unit == "cm").HeightMm.ShouldBe(20, 1e-9);

    [Fact]
    public async Task An_open_mesh_is_refused_with_what_is_wrong_and_the_form_stays()
    {
        var form = Form(await SentAsync(Box.Replace("f 5 6 7 8", "", StringComparison.Ordinal)), "cm");
        var saved = await book.SaveAsync(form, "Ada");
        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldContain("makes no mould yet");
        (await book.LookAsync(form.Mesh!)).Errors.ShouldNotBeEmpty();
        (form.Name, form.Mesh!.Name).ShouldBe(("Box", "box.obj"));
        (await book.ListAsync()).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_mesh_without_a_unit_is_not_kept_and_the_field_says_so() =>
        new MouldValidator().Validate(Form(await SentAsync(Box), "")).Errors.Select(e => e.PropertyName).ShouldBe(["mesh.unit"]);

    [Fact]
    public async Task A_mesh_file_that_was_lost_leaves_a_mould_without_figures_and_no_exception()
    {
        var id = await KeptAsync("cm");
        await using var db = database.Open();
        var mould = await db.Set<Studio.Moulds.Mould>().SingleAsync(m => m.Id == id, TestContext.Current.CancellationToken);
        mould.Mesh = mould.Mesh! with { Stored = new string('0', 64) };
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        (await book.ListAsync()).Single().CapacityMl.ShouldBeNull();
        (await book.LookAsync(mould.Mesh)).Errors.ShouldHaveSingleItem().Message.ShouldContain("no longer");
    }

    private async Task<int> KeptAsync(string unit)
    {
        var saved = await book.SaveAsync(Form(await SentAsync(Box), unit), "Ada");
        saved.Words.ShouldBe("");
        return saved.Id;
    }

    private static MouldForm Form(MouldMesh mesh, string unit) => new() { Name = "Box", Shape = "mesh", Mesh = mesh with { Unit = unit } };

    private async Task<MouldMesh> SentAsync(string obj)
    {
        var outcome = await book.ReceiveAsync(new MemoryStream(System.Text.Encoding.UTF8.GetBytes(obj)), "box.obj", _ => { }, TestContext.Current.CancellationToken);
        return new(outcome.Mesh!.Stored, outcome.Mesh.FileName, "", "+z");
    }
}
