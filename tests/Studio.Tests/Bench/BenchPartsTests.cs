using System.Collections;
using Studio.Bench;
using Studio.Commissions;
using Studio.Engine.Film;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;
using Studio.Heat;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;

namespace Studio.Tests.Bench;

/// <summary>The bench knows the whole layer: whatever a design can put into it is named on its sheet.</summary>
public sealed class BenchPartsTests : IDisposable
{
    // what a design holds and a layer's sheet need not name
    private static readonly Dictionary<Type, string> NotInLayers = new()
    {
        [typeof(Commission)] = "for whom it is made",
        [typeof(Mould)] = "holds the layers; it heads the sheet",
        [typeof(PieceLayer)] = "the layer itself",
        [typeof(Resin)] = "the layer's own; its grams are the sheet's",
        [typeof(PieceFitting)] = "fitted once the piece is out of its mould",
        [typeof(PieceTask)] = "work on the piece once it is out of its mould",
        [typeof(PieceParts)] = "cut for the room for lights and fitted once the piece is out of its mould",
        [typeof(PieceRoomPlan)] = "the room, not the piece",
        [typeof(MouldSpec)] = "holds the layers; it heads the sheet",
        [typeof(LayerSpec)] = "the layer itself",
        [typeof(ResinSpec)] = "the layer's own; its grams are the sheet's",
        [typeof(WasteSpec)] = "stays in the cup and never stands in a layer",
    };

    // the engine's own name of what the design keeps
    private static readonly Dictionary<Type, Type> KeptAs = new()
    {
        [typeof(AdditionSpec)] = typeof(LayerAddition),
        [typeof(ScatterSpec)] = typeof(LayerScatter),
        [typeof(PlacedSpec)] = typeof(LayerPlaced),
    };

    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly BenchBook book;

    public BenchPartsTests()
    {
        scene = new(studio.Factory, studio.Clock);
        book = new(studio.Factory, studio.Clock, studio.News, new SettingsBook(studio.Factory, studio.News), new PourHeatBook(studio.Factory, studio.Clock));
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public void Every_kind_of_part_that_a_design_can_hold_has_a_namer() =>
        Unnamed(typeof(Piece), typeof(PieceLayer), typeof(LayersInput), typeof(LayerSpec)).ShouldBeEmpty();

    [Fact]
    public void Nothing_is_excepted_or_named_that_no_design_holds() =>
        NotInLayers.Keys.Concat(KeptAs.Keys).Concat(BenchThings.Namers.Keys)
            .Except(new[] { typeof(Piece), typeof(PieceLayer), typeof(LayersInput), typeof(LayerSpec) }.SelectMany(Held)).ShouldBeEmpty();

    [Fact]
    public void A_part_without_a_namer_is_seen() => Unnamed(typeof(PlantedLayer)).ShouldBe([typeof(PlantedMirror)]);

    [Fact]
    public async Task Each_namer_names_a_part_of_its_kind()
    {
        var id = await BlockAsync();
        await scene.ChangeAsync<Piece>(p => p.Id == id, p =>
        {
            p.Former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 30, FromMm = 70, Solid = true };
            p.Sheets = [Film(2, 20)];
        });
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l =>
        {
            l.Additions = [new(null, "Blue pigment", 2, 1.5)];
            l.Scatter = [new(null, "Quartz", 30, 2.65, null, null)];
            l.Placed = [new(null, "Brass whistle", 17, 8.4, null)];
        });
        (await book.ReadAsync(id))!.Layers.SelectMany(l => l.Things).Select(t => t.What).Distinct().Order(StringComparer.Ordinal)
            .ShouldBe(["addition", "film", "former", "place", "scatter"]);
    }

    [Fact]
    public async Task A_film_through_three_layers_is_named_on_all_three_sheets()
    {
        var id = await BlockAsync();
        await scene.ChangeAsync<Piece>(p => p.Id == id, p => p.Sheets = [Film(15, 78)]);
        var layers = (await book.ReadAsync(id))!.Layers;

        var sheets = layers.Select(l => l.Things.Single(t => t.What == "film")).ToList();
        sheets.Count.ShouldBe(3);
        sheets.ShouldAllBe(s => s.Name == "The photograph “Mary at the loom”" && s.Amount == "from 15 mm to 78 mm");
        sheets.Select(s => s.Begins).ShouldBe([true, false, false]);

        var first = string.Join(" ", sheets[0].Notes);
        first.ShouldContain("Parallel to a face; the picture’s top up; the printed side to the back (it is mirrored on the paper)");
        first.ShouldContain("Hold it by its strip, 12 mm");
        first.ShouldContain("It goes on above this layer, up to 78 mm.");
        sheets[1].Notes.ShouldHaveSingleItem().ShouldContain("goes on above it: keep it upright by its strip until this layer has gelled");
        sheets[2].Notes.ShouldHaveSingleItem().ShouldContain("It ends in this layer, at 78 mm");
    }

    // a block of 150 × 105 mm holds 236.25 ml up to 15 mm, of 1.1 g/ml; 2 % of pigment of 1.5 g/ml shares that room with r ml of resin: r (1 + 0.02 · 1.1 / 1.5) = 236.25
    [Theory]
    [InlineData(0, 150.0 * 105 * 15 / 1000 * 1.1)]
    [InlineData(2, 236.25 / (1 + (0.02 * 1.1 / 1.5)) * 1.1 * 1.02)]
    public async Task The_stop_at_the_foot_of_the_picture_is_the_mould_s_volume_up_to_there(double pigmentPercent, double grams)
    {
        var id = await BlockAsync();
        await scene.ChangeAsync<Piece>(p => p.Id == id, p => p.Sheets = [Film(15, 78)]);
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 0, l => l.Additions = pigmentPercent > 0 ? [new(null, "Blue pigment", pigmentPercent, 1.5)] : []);
        var film = (await book.ReadAsync(id))!.Layers[0].Things.Single(t => t.What == "film");
        film.Notes[1].ShouldBe(FormattableString.Invariant($"Pour to the foot of the picture first: stop at {grams:0.0} g in the mould, at 15 mm. Set it in, then pour the rest of the layer."));
    }

    [Fact]
    public async Task A_film_that_stands_on_the_layer_below_needs_no_stop()
    {
        var id = await BlockAsync();
        await scene.ChangeAsync<Piece>(p => p.Id == id, p => p.Sheets = [Film(30, 78)]);
        var layers = (await book.ReadAsync(id))!.Layers;
        layers[0].Things.ShouldNotContain(t => t.What == "film");
        string.Join(" ", layers[1].Things.Single(t => t.What == "film").Notes).ShouldContain("Set it in before this layer is poured: its foot stands on what is below, at 30 mm.");
    }

    // Archimedes: what the box keeps out of the layer from 30 to 60 mm, times the resin's 1.1 g/ml; its own mass is the maker's to take off
    [Theory]
    [InlineData(true, null, 40 * 30 * 15 / 1000.0 * 1.1)]
    [InlineData(false, null, 40 * 30 * 15 / 1000.0 * 1.1)]
    [InlineData(false, 50.0, (((40 * 30) - (36 * 26)) * 5 / 1000.0 * 1.1) + (40 * 30 * 10 / 1000.0 * 1.1))]
    public async Task The_box_for_lights_is_held_down_against_what_it_displaces(bool solid, double? floorMm, double grams)
    {
        var id = await BlockAsync();
        await scene.ChangeAsync<Piece>(p => p.Id == id, p => p.Former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 30, FromMm = 45, Solid = solid, WallMm = solid ? null : 2, FloorMm = floorMm });
        var layers = (await book.ReadAsync(id))!.Layers;
        layers[0].Things.ShouldNotContain(t => t.What == "former");
        layers[1].Things.Single(t => t.What == "former").Notes.ShouldContain(FormattableString.Invariant($"It floats: hold it down with at least {grams:0.0} g, less what it weighs itself, until this layer has gelled."));
        layers[2].Things.Single(t => t.What == "former").Amount.ShouldBe("stands in it already");
    }

    private static List<Type> Unnamed(params Type[] designs) =>
        [.. designs.SelectMany(Held).Distinct().Where(t => !NotInLayers.ContainsKey(t) && !BenchThings.Namers.ContainsKey(KeptAs.GetValueOrDefault(t, t)))];

    // every type of ours among a design's properties, and what its lists hold
    private static IEnumerable<Type> Held(Type design) =>
        design.GetProperties().Select(p => Of(p.PropertyType)).Where(t => t is { IsClass: true } && t.Namespace!.StartsWith("Studio.", StringComparison.Ordinal));

    private static Type Of(Type type) =>
        type != typeof(string) && type.IsGenericType && type.IsAssignableTo(typeof(IEnumerable)) ? type.GetGenericArguments()[^1] : Nullable.GetUnderlyingType(type) ?? type;

    private static PieceFilm Film(double fromMm, double toMm) => new("Mary at the loom")
    {
        Place = new FilmSpec { Placement = FilmPlacement.Parallel, FromMm = fromMm, ToMm = toMm, TabMm = 12 },
        PrintMirrored = true,
    };

    // layers to 30, 60 and 100 mm in a block of 150 × 105 mm
    private async Task<int> BlockAsync()
    {
        var id = await scene.PieceAsync(shape: "cuboid", keepsakes: 0);
        double[] tops = [30, 60, 100];
        await scene.ChangeAsync<PieceLayer>(l => l.PieceId == id, l => l.ToMm = tops[l.Order]);
        return id;
    }

    private sealed class PlantedMirror;

    private sealed class PlantedLayer
    {
        public IReadOnlyList<PlantedMirror> Mirrors { get; } = [];
    }
}
