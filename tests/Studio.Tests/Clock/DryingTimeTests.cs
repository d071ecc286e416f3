using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Engine.Custody;
using Studio.Engine.Time;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.Tests.Bench;

namespace Studio.Tests.Clock;

/// <summary>Keepsakes that dry before they are cast, and the answer for an enquiry. A flower dries for 7 days (extension leaflet: 2 to 7 in silica gel).</summary>
public sealed class DryingTimeTests : IDisposable
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly PieceTimeBook book;

    public DryingTimeTests()
    {
        scene = new(studio.Factory, studio.Clock);
        var settings = new SettingsBook(studio.Factory, studio.News);
        settings.SaveAsync(new StudioSettings { UsualRoomC = 23 }, "Wren").GetAwaiter().GetResult().Ok.ShouldBeTrue();
        book = new(studio.Factory, studio.Clock, settings, new Studio.Quotes.Promises());
    }

    public void Dispose() => studio.Dispose();

    [Fact]
    public async Task A_flower_holds_its_own_layer_and_those_above()
    {
        var (piece, _) = await FlowerAsync(layer: 1);
        var result = await OfAsync(piece);
        result.Layers.Select(l => Day(l.PourAt)).ShouldBe([2, 9, 9]);
        result.Steps[0].ShouldSatisfyAllConditions(s => s.Name.ShouldBe("Dry heather"), s => s.HandsMinutes.ShouldBe(0));
        result.RestsOn.ShouldEndWith("heather: 7 days of drying (extension leaflet, reprinted: 2 to 7 days in silica gel, here the longer).");
    }

    [Fact]
    public async Task One_that_is_prepared_holds_nothing_unless_that_was_taken_back()
    {
        var (piece, keepsake) = await FlowerAsync(layer: 1);
        var noted = await EventAsync(keepsake, CustodyKind.Prepared);
        var result = await OfAsync(piece);
        Day(result.Layers[1].PourAt).ShouldBe(2);
        result.Steps[0].Done.ShouldBeTrue();
        await EventAsync(keepsake, CustodyKind.Undone, of: noted);
        Day((await OfAsync(piece)).Layers[1].PourAt).ShouldBe(9);
    }

    [Fact]
    public async Task One_that_is_set_into_no_piece_yet_holds_a_drawn_piece_from_the_first_layer_on()
    {
        var (piece, _) = await FlowerAsync(layer: null);
        Day((await OfAsync(piece)).Layers[0].PourAt).ShouldBe(9);
        // once it is in the making, what is set nowhere is not for it
        await scene.PourAsync(piece, 0, scene.Now.AddHours(-8));
        Day((await OfAsync(piece)).Layers[1].PourAt).ShouldBe(2);
    }

    [Theory]
    [InlineData("brass", Permissions.EmbedAll, CustodyWhereabouts.Here)] // nothing to dry
    [InlineData("dried-flower", Permissions.CopyReturn, CustodyWhereabouts.Here)] // a copy is cast
    [InlineData("dried-flower", Permissions.ReturnUntouched, CustodyWhereabouts.Here)]
    [InlineData("dried-flower", Permissions.EmbedAll, CustodyWhereabouts.InPiece)] // cast already
    [InlineData("dried-flower", Permissions.EmbedAll, CustodyWhereabouts.Returned)]
    public async Task What_is_not_to_be_dried_holds_nothing(string kind, string permits, string custody)
    {
        var (piece, keepsake) = await FlowerAsync(layer: 1, kind, permits);
        if (custody != CustodyWhereabouts.Here)
        {
            await EventAsync(keepsake, custody == CustodyWhereabouts.InPiece ? CustodyKind.SetIn : CustodyKind.Returned, "Heather pyramid");
        }

        Day((await OfAsync(piece)).Layers[1].PourAt).ShouldBe(2);
    }

    [Fact]
    public async Task A_flower_of_another_piece_of_the_commission_holds_only_that_one()
    {
        var (piece, _) = await FlowerAsync(layer: 0);
        await using var db = studio.Open();
        var first = await db.Set<Piece>().Include(p => p.Layers).SingleAsync(TestContext.Current.CancellationToken);
        var second = new Piece { Name = "second", CommissionId = first.CommissionId, MouldId = first.MouldId, CreatedAt = scene.Now, Layers = [new() { Name = "only", ResinId = first.Layers[0].ResinId, ToMm = 20 }] };
        db.Add(second);
        await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        Day((await OfAsync(piece)).Layers[0].PourAt).ShouldBe(9);
        Day((await OfAsync(second.Id)).Layers[0].PourAt).ShouldBe(2);
    }

    [Fact]
    public async Task An_enquiry_in_an_empty_studio_has_no_day()
    {
        var result = await book.OfTypicalAsync();
        result.EarliestOn.ShouldBeNull();
        result.FinishedAt.Reason.ShouldBe("No piece is finished yet, and there is no mould with a resin to reckon a new one with. Enter a mould and a resin in the stores.");
    }

    // its sheet says nothing from which its gel could be foretold, as the scene's; a cuboid of 60 mm; 12 mm of colour, 36 mm clear, 12 mm of colour
    [Fact]
    public async Task An_enquiry_before_the_first_finished_piece_is_reckoned_as_a_new_one_begins()
    {
        await using (var db = studio.Open())
        {
            db.Add(new Mould { Name = "Box", Shape = "cuboid", Dimensions = new(StringComparer.Ordinal) { ["widthMm"] = 50, ["depthMm"] = 50, ["heightMm"] = 60 } });
            db.Add(new Resin { Name = "Casting", PotLifeAtC = 5, Times = [.. Scene.Casting.Times] });
            await db.SaveChangesAsync(TestContext.Current.CancellationToken);
        }

        var result = await book.OfTypicalAsync(new DateOnly(2026, 3, 3), delivered: true);
        result.Layers.Count.ShouldBe(3);
        result.RestsOn.ShouldStartWith("No piece is finished yet, so it is reckoned as a new one begins: “Colour, clear, colour” in Box, 3 layers. Reckoned with 23 °C");
        // finished Friday 6 March as the three layers of PieceTimeTests, two days on the way
        result.EarliestOn.ShouldBe(new DateOnly(2026, 3, 8));
        result.Findings.ShouldContain(f => f.Code == "too-late");
    }

    [Fact]
    public async Task An_enquiry_is_reckoned_as_the_middle_of_the_last_finished_pieces_with_what_dried_for_it()
    {
        foreach (var (layers, days) in new[] { (4, 90), (1, 40), (2, 30), (2, 20), (3, 10), (1, 5) })
        {
            var id = await scene.PieceAsync($"piece of {days} days ago", layers: layers);
            await scene.PourAsync(id, 0, scene.Now.AddDays(-days - 3));
            await scene.ChangeAsync<Piece>(p => p.Id == id, p => (p.Stage, p.FinishedAt) = (days == 5 ? Making.Home : Making.Finished, scene.Now.AddDays(-days)));
        }

        // the last five have 1, 2, 2, 3 and 1 layers: 2 in the middle, the newest of them 20 days ago
        var plain = await book.OfTypicalAsync();
        plain.RestsOn.ShouldStartWith("Reckoned as “piece of 20 days ago” was made, with 2 layers: the middle of your last 5 finished pieces. Reckoned with 23 °C");
        plain.Steps.ShouldAllBe(s => !s.Done);
        plain.Layers.Select(l => Day(l.PourAt)).ShouldBe([2, 2]);

        var piece = (await scene.AllAsync<Piece>()).Single(p => p.Name == "piece of 20 days ago");
        var keepsake = await KeepsakeAsync(piece.CommissionId, "dried-flower", Permissions.EmbedAll);
        await PlaceAsync(piece.Id, 0, keepsake);
        await EventAsync(keepsake, CustodyKind.SetIn, piece.Name);
        Day((await book.OfTypicalAsync()).Layers[0].PourAt).ShouldBe(9);
    }

    private static int Day(Moment moment) => moment.At!.Value.Day;

    private async Task<TimeResult> OfAsync(int id) => (await book.OfPieceAsync(id)).ShouldNotBeNull();

    private async Task<(int Piece, int Keepsake)> FlowerAsync(int? layer, string kind = "dried-flower", string permits = Permissions.EmbedAll)
    {
        var piece = await scene.PieceAsync(keepsakes: 0);
        var keepsake = await KeepsakeAsync((await scene.FindAsync(piece)).CommissionId, kind, permits);
        if (layer is { } order)
        {
            await PlaceAsync(piece, order, keepsake);
        }

        return (piece, keepsake);
    }

    private async Task<int> KeepsakeAsync(int commissionId, string kind, string permits)
    {
        await using var db = studio.Open();
        var keepsake = new Keepsake { CommissionId = commissionId, EntryNumber = "KS-26-09001-T", Kind = kind, Description = "heather", Permits = permits, Place = "Drying box", ReceivedAt = scene.Now, SubmitKey = Guid.NewGuid().ToString("N") };
        db.Add(keepsake);
        await db.SaveChangesAsync();
        await EventAsync(keepsake.Id, CustodyKind.Received, "Drying box");
        return keepsake.Id;
    }

    private Task PlaceAsync(int piece, int order, int keepsake) =>
        scene.ChangeAsync<PieceLayer>(l => l.PieceId == piece && l.Order == order, l => l.Placed = [new(keepsake, "heather", 1, 0.6, null)]);

    private async Task<int> EventAsync(int keepsake, string kind, string place = "", int? of = null)
    {
        await using var db = studio.Open();
        var link = new KeepsakeEvent { KeepsakeId = keepsake, At = scene.Now.AddHours(-1), By = "Wren", Kind = kind, Place = place, Words = kind, RefId = of, Count = kind is CustodyKind.Received or CustodyKind.SetIn or CustodyKind.Returned ? 1 : null };
        db.Add(link);
        await db.SaveChangesAsync();
        return link.Id;
    }
}
