using System.Globalization;
using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Studio.Quotes;
using Studio.Resins;
using Studio.Tests.Bench;
using Studio.Tests.Shell;

namespace Studio.Tests.Quotes;

/// <summary>How the price page lays its figures out: what stands above a line that sums is in the sum.</summary>
public sealed class QuoteLayoutTests : StudioPages
{
    // by hand: 2 × 10.00 of resin, 60 min at 30.00, packaging 4.00, delivery 6.00: 60.00; the fee is 2 % of what they pay and 0.30
    private static readonly QuoteForm Form = new()
    {
        Bought = [new() { Kind = CostLines.Extra, Name = "Walnut base", Unit = "piece", Used = 2, PackSize = 1, PackPrice = 10 }],
        Work = [new() { Kind = CostLines.Equipment, Name = "Polishing wheel", Minutes = 60, RatePerHour = 30 }],
        Packaging = 4,
        Delivery = 6,
        FeePercent = 2,
        FeeFixed = 0.3m,
        MarginPercent = 40,
        RoundTo = 1,
        DepositPercent = 50,
    };

    [Fact]
    public void What_stands_above_the_total_is_in_it()
    {
        var rows = Render<QuoteRows>(p => p.Add(r => r.Form, Form).Add(r => r.Reckoning, Reckoning.Of(Form)).Add(r => r.Fixed, true));
        rows.FindAll(".lines .sum").Sum(Amount).ShouldBe(60m);
        Amount(rows.Find(".cost strong")).ShouldBe(60m);
    }

    [Fact]
    public void The_fee_stands_once_where_it_is_taken_off()
    {
        var reckoning = Reckoning.Of(Form);
        var rows = Render<QuoteRows>(p => p.Add(r => r.Form, Form).Add(r => r.Reckoning, reckoning).Add(r => r.Fixed, true));
        var totals = Render<QuoteTotals>(p => p.Add(r => r.Form, Form).Add(r => r.Reckoning, reckoning).Add(r => r.Fixed, true));
        rows.Markup.ShouldNotContain("Payment fee");
        var kept = totals.FindAll(".yours dt").Zip(totals.FindAll(".yours dd")).Where(p => p.First.TextContent != "Margin").ToDictionary(p => p.First.FirstChild!.TextContent.Trim(), p => Amount(p.Second), StringComparer.Ordinal);
        var net = totals.FindAll(".sums dd")[0];
        (Amount(net) + kept["It costs you"] + kept["Payment fee"]).ShouldBe(kept["You keep"]);
        kept["Payment fee"].ShouldBe(-reckoning.Result!.Fee);
        totals.Find(".yours").TextContent.ShouldContain("2 % of what they pay and £0.30");
    }

    [Fact]
    public async Task The_digits_that_tell_a_paper_from_another_are_folded_away()
    {
        var piece = await new Scene(House.Factory, House.Clock).PieceAsync(deposit: false, keepsakes: 0);
        await using (var db = House.Open())
        {
            db.Set<Resin>().ToList().ForEach(r => r.Packs = [new(1000, 20)]);
            await db.SaveChangesAsync(Xunit.TestContext.Current.CancellationToken);
        }

        var book = Services.GetRequiredService<QuoteBook>();
        var quote = (await book.OpenAsync(piece, "Mo")).Id;
        (await book.SendAsync(quote, (await book.ViewAsync(quote))!.Quote.Version, "Mo")).Ok.ShouldBeTrue();
        var page = Render<QuotePage>(p => p.Add(q => q.Id, quote));
        var hash = page.WaitForElement(".hash");
        hash.TextContent.Length.ShouldBe(64);
        hash.Closest("details").ShouldNotBeNull().HasAttribute("open").ShouldBeFalse();
    }

    // as the page prints it: a minus before the sign of the money
    private static decimal Amount(IElement e) => decimal.Parse(e.TextContent.Replace("£", "", StringComparison.Ordinal).Replace("−", "-", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal), CultureInfo.GetCultureInfo("en-GB"));
}
