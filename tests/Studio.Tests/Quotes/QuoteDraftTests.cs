using Microsoft.EntityFrameworkCore;
using Studio.Engine.Price;
using Studio.Pieces;
using Studio.Quotes;
using Studio.Resins;

namespace Studio.Tests.Quotes;

public sealed class QuoteDraftTests : IDisposable
{
    private readonly QuoteScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task A_price_is_the_hand_worked_one()
    {
        var quote = (await scene.OpenAsync()).Quote;
        // by hand: 100 × 100 × 20 mm = 200 ml, × 1.1 = 220 g; × 1.05 + 9 = 240 g mixed; of a 1000 g pack at 20.00: 4.80
        // hands: 60 min sanding and 15 + 5 min pouring at 30.00 an hour: 30.00 + 10.00; packaging 4.00: cost 48.80
        // margin 40 %: 48.80 / 0.6 = 81.3333; with 20 % tax 97.60 to the penny
        quote.Lines.Single(l => l.Kind == "resin").Cost.ShouldBe(4.80m);
        quote.Lines.Single(l => l.Kind == "hand").Cost.ShouldBe(30.00m);
        quote.Lines.Single(l => l.Kind == "pouring").Cost.ShouldBe(10.00m);
        quote.Result!.Cost.ShouldBe(48.80m);
        quote.Result.Total.ShouldBe(97.60m);
        quote.Result.Deposit.ShouldBe(48.80m);
        (quote.Result.Deposit + quote.Result.Balance).ShouldBe(quote.Result.Total);
        (quote.Result.NetPrice + quote.Result.Tax).ShouldBe(quote.Result.Total);
    }

    [Fact]
    public async Task A_price_is_the_engines_call_alone()
    {
        var quote = (await scene.OpenAsync()).Quote;
        var alone = PriceCalculation.Run(quote.Input).Value;
        (quote.Result! with { Materials = [], Labour = [], Equipment = [] }).ShouldBe(alone with { Materials = [], Labour = [], Equipment = [] });
        quote.Lines.Where(l => l.Kind is "resin").Sum(l => l.Cost).ShouldBe(alone.Materials.Sum(m => m.Cost));
    }

    [Fact]
    public async Task Each_line_says_how_it_was_computed()
    {
        var lines = (await scene.OpenAsync()).Quote.Lines;
        lines.Single(l => l.Kind == "resin").HowComputed.ShouldBe("240 g of a pack of 1,000 g at £20.00");
        lines.Single(l => l.Kind == "hand").HowComputed.ShouldBe("60 minutes at £30.00 an hour");
        lines.ShouldAllBe(l => l.HowComputed.Length > 0);
    }

    [Theory]
    [InlineData(150, "a pack of 200 g at £6.00")] // the smallest outlay that holds enough
    [InlineData(240, "a pack of 1,000 g at £20.00")]
    [InlineData(9000, "a pack of 5,000 g at £75.00")] // none holds enough: the best price by the gram
    public async Task The_pack_that_suits_is_priced(double wantedG, string pack)
    {
        await scene.ChangeAsync(db =>
        {
            db.Set<Piece>().Include(p => p.Layers).Single().WastePerBatchG = 0;
            db.Set<Piece>().Include(p => p.Layers).Single().WastePercent = 0;
            var mould = db.Set<Studio.Moulds.Mould>().Single();
            mould.Dimensions = new() { ["sides"] = 4, ["edgeMm"] = 1000, ["heightMm"] = 50 };
            db.Set<PieceLayer>().Single().ThicknessMm = wantedG / 1.1 / 1000;
        });
        (await scene.OpenAsync()).Quote.Lines.Single(l => l.Kind == "resin").HowComputed.ShouldEndWith(pack);
    }

    [Fact]
    public async Task Pigment_filling_and_lights_are_priced_by_what_the_drawing_takes()
    {
        await scene.ChangeAsync(db =>
        {
            var layer = db.Set<PieceLayer>().Single();
            layer.Additions = [new(1, "Mica", 2, 2.8)];
            layer.Scatter = [new(2, "Sand", null, null, 40, 0.5)];
            db.Set<Piece>().Single().Fittings = [new(3, "Light string", 3)];
        });
        var lines = (await scene.OpenAsync()).Quote.Lines;
        // 40 ml of bulk at a packing of 0.5 is 20 ml of grains, × 2.65 = 53 g, of 1000 g at 4.00
        lines.Single(l => l.Name == "Sand").Cost.ShouldBe(0.21m);
        lines.Single(l => l.Name == "Sand").HowComputed.ShouldStartWith("53 g");
        // what is left for resin: 180 ml = r (1 + 0.02 × 1.1 / 2.8), so 178.597 ml, 196.457 g; 2 % of it is 3.93 g of mica, of 50 g at 10.00
        lines.Single(l => l.Name == "Mica").HowComputed.ShouldStartWith("3.93 g");
        lines.Single(l => l.Name == "Mica").Cost.ShouldBe(0.79m);
        lines.Single(l => l.Name == "Light string").Cost.ShouldBe(16.50m);
    }

    [Fact]
    public async Task What_has_no_price_is_said_and_the_quote_cannot_be_sent()
    {
        await scene.ChangeAsync(db => db.Set<Resin>().Single().Packs = []);
        var view = await scene.OpenAsync();
        view.Quote.Result.ShouldBeNull();
        view.Quote.Form.Missing.Single().Message.ShouldContain("Clear has no price");
        var sent = await scene.Book.SendAsync(view.Quote.Id, view.Quote.Version, "maker");
        sent.Ok.ShouldBeFalse();
        sent.Words.ShouldContain("incomplete");
    }

    [Fact]
    public async Task Delivery_costs_only_where_it_is_delivered()
    {
        (await scene.OpenAsync()).Quote.Result!.Delivery.ShouldBe(0);
        await scene.ChangeAsync(db =>
        {
            db.Set<Studio.Commissions.Commission>().Single().Handover = "delivery";
            db.RemoveRange(db.Set<QuoteLine>());
            db.RemoveRange(db.Set<Quote>());
        });
        (await scene.OpenAsync()).Quote.Result!.Delivery.ShouldBe(9);
    }

    [Fact]
    public async Task A_design_that_cannot_be_worked_out_makes_no_price()
    {
        await scene.ChangeAsync(db => db.RemoveRange(db.Set<PieceLayer>()));
        var opened = await scene.Book.OpenAsync(1, "maker");
        opened.Ok.ShouldBeFalse();
        opened.Words.ShouldContain("Mend the drawing");
    }

    [Theory]
    [InlineData(97.60, 40)] // what the form itself asks
    [InlineData(200, 70.72)] // by hand: net 166.6667, 48.80 of cost, 117.8667 kept: 70.72 %
    public async Task What_if_says_the_margin_that_a_total_leaves(double total, double margin)
    {
        var form = QuoteScene.FormOf(await scene.OpenAsync());
        ((double)Reckoning.AtTotal(form, (decimal)total).Result!.AchievedMarginPercent).ShouldBe(margin, 0.005);
    }

    [Fact]
    public async Task What_if_below_break_even_says_so()
    {
        var form = QuoteScene.FormOf(await scene.OpenAsync());
        var low = Reckoning.AtTotal(form, 50);
        low.Result.ShouldBeNull();
        low.Words.ShouldContain("£58.56"); // 48.80 with 20 % tax
    }

    [Theory]
    [InlineData(100)]
    [InlineData(-1)]
    [InlineData(1e9)]
    public async Task An_absurd_margin_is_refused_in_words(double margin)
    {
        var form = QuoteScene.FormOf(await scene.OpenAsync());
        form.MarginPercent = (decimal)margin;
        var reckoning = Reckoning.Of(form);
        reckoning.Result.ShouldBeNull();
        reckoning.Errors.ShouldNotBeEmpty();
        reckoning.Errors.ShouldAllBe(e => e.Message.Length > 10);
    }
}
