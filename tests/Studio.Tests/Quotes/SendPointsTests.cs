using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Resins;
using Studio.Settings;
using Studio.Stores;
using Studio.Tests.Papers;

namespace Studio.Tests.Quotes;

/// <summary>What is pointed at before a quote is sent, and what is refused.</summary>
public sealed class SendPointsTests : IDisposable
{
    private readonly QuoteScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task A_settled_quote_asks_nothing() => (await scene.OpenAsync()).Points.ShouldBeEmpty();

    [Fact]
    public async Task An_open_point_asks_for_a_reason_that_stays_in_the_history()
    {
        await DeliveredAsync();
        var draft = await scene.OpenAsync();
        draft.Points.Select(p => p.Code).ShouldBe(["delivery-open"]);
        var asked = await scene.Book.SendAsync(draft.Quote.Id, draft.Quote.Version, "maker", " ");
        asked.Ok.ShouldBeFalse();
        asked.Words.ShouldContain("nobody decided what that costs");
        await scene.SentAsync("They ring us about the van");
        var told = await scene.ReadAsync(db => db.Set<CommissionEvent>().Where(e => e.Kind == "quote").Select(e => e.Words).SingleAsync());
        told.ShouldContain("nobody decided what that costs");
        told.ShouldContain("They ring us about the van.");
    }

    [Fact]
    public async Task Delivery_is_said_with_its_price_or_free_on_purpose_or_not_settled()
    {
        await DeliveredAsync();
        var id = (await scene.OpenAsync()).Quote.Id;
        (await WordsAsync(id)).ShouldContain("not settled yet");
        await KeepAsync(f => f.DeliveryAs = DeliveryTerms.Free);
        var free = (await scene.Book.ViewAsync(id))!;
        free.Points.ShouldBeEmpty();
        (await WordsAsync(id)).ShouldContain("free of charge");
        await KeepAsync(f => (f.DeliveryAs, f.Delivery) = (DeliveryTerms.Priced, 12));
        var words = await WordsAsync(id);
        words.ShouldContain("Delivery to you £12.00");
        words.ShouldNotContain("free of charge");
        (await scene.Book.ViewAsync(id))!.Points.ShouldBeEmpty();
    }

    [Fact]
    public async Task What_they_collect_has_no_line_of_delivery_and_none_in_its_price()
    {
        var id = (await scene.OpenAsync()).Quote.Id;
        var words = await WordsAsync(id);
        words.ShouldContain("You collect it");
        words.ShouldNotContain("deliver");
        await KeepAsync(f => f.Delivery = 9);
        (await scene.Book.ViewAsync(id))!.Points.Single().Code.ShouldBe("delivery-unwanted");
    }

    [Theory]
    [InlineData(null, "“String of lamps”", "cell-unknown")]
    [InlineData(false, "", "")]
    [InlineData(true, "", "")]
    public async Task A_light_whose_cells_nobody_knows_is_asked_for_by_name(bool? cell, string said, string code)
    {
        await scene.ChangeAsync(db =>
        {
            var light = db.Set<Material>().Single(m => m.Kind == "light");
            light.ButtonCell = cell;
            db.Set<Piece>().Single().Fittings = [new(light.Id, "String of lamps", 1)];
        });
        var points = (await scene.OpenAsync()).Points;
        string.Concat(points.Select(p => p.Code)).ShouldBe(code);
        string.Concat(points.Select(p => p.Words)).ShouldContain(said);
        points.ShouldAllBe(p => p.Link.StartsWith("/stores/materials/", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_film_that_came_after_the_price_is_pointed_at()
    {
        await scene.OpenAsync();
        await scene.ChangeAsync(db =>
        {
            db.Set<Piece>().Single().Sheets = [new PieceFilm("Isolde at the gate")];
        });
        (await scene.OpenAsync()).Points.Select(p => p.Code).ShouldContain("film-not-priced");
    }

    [Fact]
    public async Task Prices_that_the_catalogue_invented_are_pointed_at_until_they_are_the_makers()
    {
        await scene.ChangeAsync(db =>
        {
            db.Set<Resin>().Single().Typical = true;
            var mica = db.Set<Material>().Single(m => m.Kind == "pigment");
            db.Set<PieceLayer>().Single().Additions = [new(mica.Id, mica.Name, 2, 2.8)];
            db.Add(new AuditEntry { At = db.Now, By = "catalogue", Entity = nameof(Material), EntityId = FormattableString.Invariant($"{mica.Id}"), Act = CatalogueSeed.Act, Changes = """{"PackPrice":[null,"invented"]}""" });
        });
        (await scene.OpenAsync()).Points.Select(p => p.Link).ShouldBe(["/stores/resins/1", "/stores/materials/1"], ignoreOrder: true);
        await scene.ChangeAsync(db =>
        {
            db.Set<Resin>().Single().Packs = [new(1000, 21)];
            db.Set<Material>().Single(m => m.Kind == "pigment").PackPrice = 11;
        });
        (await scene.OpenAsync()).Points.ShouldNotContain(p => p.Code == "price-invented");
    }

    [Fact]
    public async Task A_day_earlier_than_it_can_be_is_named_before_it_is_sent()
    {
        await ReckonedAsync();
        var draft = await scene.OpenAsync();
        var earliest = draft.Time!.EarliestOn.ShouldNotBeNull();
        draft.Time.PromiseOn!.Value.ShouldBeGreaterThanOrEqualTo(earliest);
        await KeepAsync(f => f.PromiseOn = draft.Time.PromiseOn);
        (await scene.OpenAsync()).Points.ShouldBeEmpty();
        (await WordsAsync(draft.Quote.Id)).ShouldContain("We promise it for " + draft.Time.PromiseOn.Value.ToString("d MMMM yyyy", System.Globalization.CultureInfo.GetCultureInfo("en-GB")));
        await KeepAsync(f => f.PromiseOn = earliest.AddDays(-1));
        var early = (await scene.OpenAsync()).Points.Single();
        early.Code.ShouldBe("promise-early");
        early.Refuses.ShouldBeFalse();
    }

    [Fact]
    public async Task What_would_be_untrue_on_paper_is_refused_whatever_the_reason()
    {
        await scene.OpenAsync();
        await KeepAsync(f => f.PromiseOn = new DateOnly(2026, 3, 1));
        var draft = await scene.OpenAsync();
        draft.Points.Single(p => p.Refuses).Code.ShouldBe("promise-past");
        var sent = await scene.Book.SendAsync(draft.Quote.Id, draft.Quote.Version, "maker", "because");
        sent.Ok.ShouldBeFalse();
        sent.Words.ShouldContain("1 March 2026");
        (await scene.Book.ViewAsync(draft.Quote.Id))!.Quote.State.ShouldBe(QuoteState.Draft);
    }

    private Task DeliveredAsync() => scene.ChangeAsync(db =>
    {
        db.Set<Commission>().Single().Handover = "delivery";
        db.Set<StudioSettings>().Single().DeliveryCost = 0;
    });

    // a resin that says when it cures, in a room that was read
    private Task ReckonedAsync() => scene.ChangeAsync(db =>
    {
        db.Set<Resin>().Single().Times = [new() { AtCelsius = 23, GelHours = 3, NextPourFromHours = 6, NextPourUntilHours = 24, DemouldHours = 24, FullCureHours = 72 }];
        db.Add(new Reading { At = db.Now, Place = RoomBook.CastingRoom, Celsius = 23, By = "maker" });
        db.Set<StudioSettings>().Single().UsualRoomC = 23;
    });

    private async Task KeepAsync(Action<QuoteForm> change)
    {
        var form = QuoteScene.FormOf(await scene.OpenAsync());
        change(form);
        var kept = await scene.Book.KeepAsync(form, "maker");
        kept.Ok.ShouldBeTrue(kept.Words);
    }

    private async Task<string> WordsAsync(int id) => PaperWords.Of((await scene.PaperAsync(id)).Content);

    [Fact]
    public async Task A_keepsake_that_is_to_be_cast_and_is_drawn_in_nothing_is_pointed_at()
    {
        await scene.ChangeAsync(db => db.Add(new Studio.Keepsakes.Keepsake { CommissionId = 1, EntryNumber = "KS-26-00009-H", Description = "hive nails", Permits = "embed-part", Custody = "here", ReceivedAt = db.Now, SubmitKey = "k" }));
        var draft = await scene.OpenAsync();
        draft.Points.Single(p => p.Code == "keepsake-not-drawn").Words.ShouldStartWith("hive nails (KS-26-00009-H) is to be cast, so the paper says that it is in the piece");
        await scene.ChangeAsync(db => db.Set<Studio.Keepsakes.Keepsake>().Single().Permits = "return-untouched");
        (await scene.Book.ViewAsync(draft.Quote.Id))!.Points.ShouldNotContain(p => p.Code == "keepsake-not-drawn");
    }
}
