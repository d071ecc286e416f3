using Studio.Data;
using Studio.Engine.Moulds;
using Studio.Moulds;
using Studio.Pieces;

namespace Studio.Tests.Moulds;

public sealed class MouldBookTests : IDisposable
{
    private readonly StudioDatabase database = new();
    private readonly MouldBook book;

    public MouldBookTests() => book = new MouldBook(database.Factory, database.Clock, database.News, database.Meshes, new PieceUses());

    public void Dispose() => database.Dispose();

    // a third of base area times height: Machinery's Handbook, volumes of solids
    [Fact]
    public async Task The_ledger_shows_what_a_pyramid_holds()
    {
        await book.SaveAsync(Pyramid(), "Ada");
        var line = (await book.ListAsync()).Single();
        line.CapacityMl!.Value.ShouldBe(150 * 150 * 125 / 3.0 / 1000, 1e-9);
        line.Sketch!.Wall[0].HalfWidthMm.ShouldBe(0, 1e-9);
        line.Sketch.Wall[^1].ZMm.ShouldBe(125, 1e-9);
        line.Sketch.Wall[^1].HalfWidthMm.ShouldBe(75, 1e-9);
    }

    [Fact]
    public async Task Measures_of_a_shape_that_was_given_up_are_not_kept()
    {
        var form = Pyramid();
        form.Shape = "cuboid";
        (form.Dimensions["widthMm"], form.Dimensions["depthMm"]) = (80, 60);
        var id = (await book.SaveAsync(form, "Ada")).Id;
        (await book.FormAsync(id))!.Dimensions.Keys.ShouldBe(["widthMm", "depthMm", "heightMm", "draftDegrees"], ignoreOrder: true);
    }

    [Fact]
    public void Every_shape_of_the_engine_asks_for_its_own_measures()
    {
        foreach (var shape in MouldShapes.All)
        {
            var wrong = new MouldValidator().Validate(new MouldForm { Name = "New", Shape = shape.Key }).Errors.Select(e => e.PropertyName).ToList();
            wrong.ShouldBe(shape.Needs switch
            {
                MouldNeeds.Readings => ["readings"],
                MouldNeeds.Mesh => ["mesh"],
                _ => [.. shape.Dimensions.Where(d => d.Default is null).Select(d => d.Name)],
            });
        }
    }

    [Theory]
    [InlineData("baseMm", -1)]
    [InlineData("baseMm", double.NaN)]
    [InlineData("heightMm", 0)]
    [InlineData("heightMm", 1e9)]
    [InlineData("sides", 4.5)]
    [InlineData("sides", 2)]
    public void Measures_that_make_no_mould_are_refused_at_their_field(string name, double value)
    {
        var form = Pyramid();
        form.Dimensions[name] = value;
        new MouldValidator().Validate(form).Errors.Select(e => e.PropertyName).ShouldBe([name]);
        MouldBook.Glance(form.Spec).CapacityMl.ShouldBeNull();
    }

    [Fact]
    public void Half_a_mould_cannot_be_owned()
    {
        var form = Pyramid();
        form.Owned = 1.5;
        new MouldValidator().Validate(form).Errors.Select(e => e.PropertyName).ShouldBe(["Owned"]);
    }

    [Fact]
    public void A_mould_wider_below_than_above_is_doubted() =>
        MouldBook.Glance(new MouldSpec("cone", new Dictionary<string, double>(StringComparer.Ordinal) { ["bottomDiameterMm"] = 100, ["topDiameterMm"] = 60, ["heightMm"] = 50 }))
            .Doubts.Select(f => f.Code).ShouldBe(["undercut"]);

    [Fact]
    public void Inches_typed_as_millimetres_are_doubted() =>
        MouldBook.Glance(new MouldSpec("pyramid", new Dictionary<string, double>(StringComparer.Ordinal) { ["baseMm"] = 6, ["heightMm"] = 6 })).Doubts.Select(f => f.Code).ShouldBe(["very-small"]);

    [Theory]
    [InlineData("pyramid", "sides", 4, "Square pyramid")]
    [InlineData("prism", "sides", 6, "Hexagonal prism")]
    [InlineData("prism", "sides", 7, "7-sided prism")]
    [InlineData("cone", "bottomDiameterMm", 0, "Cone")]
    [InlineData("cuboid", "widthMm", 80, "Cuboid")]
    public void A_shape_is_said_in_words(string shape, string name, double value, string words) =>
        MouldWords.Shape(new MouldSpec(shape, new Dictionary<string, double>(StringComparer.Ordinal) { [name] = value, ["topDiameterMm"] = 50 })).ShouldBe(words);

    [Fact]
    public void A_cone_as_wide_below_as_above_is_called_a_cylinder() =>
        MouldWords.Shape(new MouldSpec("cone", new Dictionary<string, double>(StringComparer.Ordinal) { ["bottomDiameterMm"] = 50, ["topDiameterMm"] = 50 })).ShouldBe("Cylinder");

    // 6 in is 152.4 mm by definition
    [Fact]
    public void Measures_are_said_in_the_studios_units()
    {
        var spec = new MouldSpec("pyramid", new Dictionary<string, double>(StringComparer.Ordinal) { ["sides"] = 4, ["baseMm"] = 152.4, ["heightMm"] = 76.2, ["tipMm"] = 0 });
        MouldWords.Sizes(spec, "metric").ShouldBe("Edge at the open top 152.4 mm, height 76.2 mm");
        MouldWords.Sizes(spec, "inch").ShouldBe("Edge at the open top 6 in, height 3 in");
    }

    [Fact]
    public async Task A_save_over_somebody_elses_newer_version_is_refused()
    {
        var id = (await book.SaveAsync(Pyramid(), "Ada")).Id;
        var (mine, theirs) = ((await book.FormAsync(id))!, (await book.FormAsync(id))!);
        theirs.Dimensions["heightMm"] = 120;
        await book.SaveAsync(theirs, "Bo");
        mine.Dimensions["heightMm"] = 110;
        (await book.SaveAsync(mine, "Ada")).Words.ShouldBe(Saved.SomeoneElse);
        (await book.FormAsync(id))!.Dimensions["heightMm"].ShouldBe(120);
    }

    [Fact]
    public async Task A_mould_in_no_piece_is_used_by_none() => (await book.UsesAsync((await book.SaveAsync(Pyramid(), "Ada")).Id)).ShouldBe(0);

    private static MouldForm Pyramid() => new() { Name = "Pyramid", Shape = "pyramid", Dimensions = new(StringComparer.Ordinal) { ["sides"] = 4, ["baseMm"] = 150, ["heightMm"] = 125 } };
}
