using AngleSharp.Dom;
using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Studio.Bench;
using Studio.Money;
using Studio.Quotes;
using Studio.Tests.Bench;

namespace Studio.Tests.Shell;

/// <summary>A wrong amount is refused, whatever stood there before.</summary>
public sealed class WrongAmountTests : StudioPages
{
    [Theory]
    [InlineData("fifty")]
    [InlineData("-50")]
    public async Task A_payment_that_is_no_amount_is_not_recorded_as_the_one_offered(string typed)
    {
        var book = Services.GetRequiredService<QuoteBook>();
        var piece = await new Scene(House.Factory, House.Clock).PieceAsync(deposit: false, keepsakes: 0);
        await PricedAsync();
        var quote = (await book.OpenAsync(piece, "Mo")).Id;
        (await book.SendAsync(quote, (await book.ViewAsync(quote))!.Quote.Version, "Mo")).Ok.ShouldBeTrue();
        (await book.AcceptAsync(quote, (await book.ViewAsync(quote))!.Quote.Version, "Isla", "in person", "Mo")).Ok.ShouldBeTrue();
        var commission = (await book.ViewAsync(quote))!.Quote.CommissionId;
        var page = Render<PaymentsPart>(p => p.Add(m => m.CommissionId, commission).Add(m => m.Money, Services.GetRequiredService<MoneyBook>().ReadAsync(commission).GetAwaiter().GetResult()).Add(m => m.Zone, TimeZoneInfo.Utc));
        page.WaitForElement("#amount").GetAttribute("value").ShouldNotBeNullOrEmpty();
        page.Find("#amount").Change(typed);
        await page.Find("form.pay").SubmitAsync();
        (await All<Payment>()).ShouldBeEmpty();
        page.Find("#amount").GetAttribute("value").ShouldBe(typed);
        page.Find("form.pay [role=alert]").TextContent.ShouldContain(typed);
    }

    [Theory]
    [InlineData("Grams of A", "fifty")]
    [InlineData("Grams of B", "-50")]
    [InlineData("Room", "warm")]
    public async Task A_pour_set_right_takes_no_figure_that_is_none_for_no_change(string label, string typed)
    {
        var scene = new Scene(House.Factory, House.Clock);
        var piece = await scene.PieceAsync();
        await scene.PourAsync(piece, 0, scene.Now.AddHours(-1));
        var page = Render<PourTrace>(p => p.Add(t => t.Sheet, Sheet(piece)).Add(t => t.Pour, Sheet(piece).Pours[0]));
        Button(page, "Set the entry right").Click();
        Field(page, "Lot").Change("L 77");
        Field(page, label).Change(typed);
        Field(page, "Why it is set right").Change("the label says so");
        var before = await KeptAsync();
        await Button(page, "Keep the correction").ClickAsync(new());
        (await KeptAsync()).ShouldBe(before);
        Field(page, label).GetAttribute("value").ShouldBe(typed);
        page.Find("[role=alert]").TextContent.ShouldContain(typed);
    }

    private BenchView Sheet(int piece) => Services.GetRequiredService<BenchBook>().ReadAsync(piece).GetAwaiter().GetResult()!;

    private async Task<List<T>> All<T>()
        where T : class => await new Scene(House.Factory, House.Clock).AllAsync<T>();

    // a pack of the test resin has a price, so that the whole can be reckoned
    private async Task PricedAsync()
    {
        await using var db = House.Open();
        foreach (var resin in db.Set<Studio.Resins.Resin>())
        {
            resin.Packs = [new(1000, 20)];
        }

        await db.SaveChangesAsync();
    }

    private static IElement Button<T>(IRenderedComponent<T> page, string words)
        where T : Microsoft.AspNetCore.Components.IComponent => page.FindAll("button").First(b => b.TextContent.Trim() == words);

    private static IElement Field<T>(IRenderedComponent<T> page, string label)
        where T : Microsoft.AspNetCore.Components.IComponent =>
        page.Find("#" + page.FindAll("label").First(l => l.TextContent.StartsWith(label, StringComparison.Ordinal)).GetAttribute("for"));
}
