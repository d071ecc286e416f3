using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Money;
using Studio.Settings;
using Studio.Tests.Quotes;

namespace Studio.Tests.Money;

/// <summary>Invented sums: the scene's price is £97.60 with half of it in advance.</summary>
public sealed class MoneyBookTests : IDisposable
{
    private readonly QuoteScene scene = new();

    private MoneyBook Book => new(scene.Database.Factory, scene.Database.Clock, new SettingsBook(scene.Database.Factory, scene.Database.News), scene.Database.News);

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task Money_that_came_is_told_once_however_often_the_form_is_sent()
    {
        var id = await AgreedAsync();
        var form = new PaymentForm { Amount = 48.80m, How = "in cash" };
        (await Book.PayAsync(id, form, "maker")).Ok.ShouldBeTrue();
        (await Book.PayAsync(id, form, "maker")).Ok.ShouldBeTrue();
        var money = await Book.ReadAsync(id);
        money.Payments.ShouldHaveSingleItem().Kind.ShouldBe("deposit");
        (money.Agreed, money.Deposit, money.Paid, money.Left, money.Next, money.NextKind).ShouldBe((97.60m, 48.80m, 48.80m, 48.80m, 48.80m, "balance"));
        (await StoryAsync()).ShouldHaveSingleItem().ShouldBe("The deposit of £48.80 came in cash.");
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    [InlineData(-5.0)]
    [InlineData(97.61)]
    public async Task An_amount_that_cannot_be_is_refused(double? amount)
    {
        var id = await AgreedAsync();
        var paid = await Book.PayAsync(id, new PaymentForm { Amount = (decimal?)amount }, "maker");
        paid.Ok.ShouldBeFalse();
        paid.Words.ShouldNotBeEmpty();
        (await Book.ReadAsync(id)).Payments.ShouldBeEmpty();
    }

    [Fact]
    public async Task Before_a_price_is_agreed_nothing_is_owed()
    {
        var sent = await scene.SentAsync();
        (await Book.PayAsync(sent.Quote.CommissionId, new PaymentForm { Amount = 10 }, "maker")).Code.ShouldBe("nothing-agreed");
        var money = await Book.ReadAsync(sent.Quote.CommissionId);
        (money.Agreed, money.Left, money.TooMuch, money.Next).ShouldBe((null, 0m, 0m, null));
    }

    [Fact]
    public async Task A_payment_taken_back_stays_in_the_story_and_frees_what_is_owed()
    {
        var id = await AgreedAsync();
        await Book.PayAsync(id, new PaymentForm { Amount = 97.60m }, "maker");
        (await Book.UnpayAsync((await Book.ReadAsync(id)).Payments.Single().Id, "maker")).Ok.ShouldBeTrue();
        (await Book.PayAsync(id, new PaymentForm { Amount = 48.80m }, "maker")).Ok.ShouldBeTrue();
        var money = await Book.ReadAsync(id);
        money.Payments.Select(p => p.Withdrawn).ShouldBe([true, false]);
        money.Left.ShouldBe(48.80m);
        (await StoryAsync()).ShouldContain("The entry of £97.60 was taken back.");
    }

    [Fact]
    public async Task Money_stays_with_the_commission_when_its_price_gets_a_new_version()
    {
        var id = await AgreedAsync();
        await Book.PayAsync(id, new PaymentForm { Amount = 48.80m }, "maker");
        await scene.Book.RenewAsync((await scene.ReadAsync(db => db.Set<Studio.Quotes.Quote>().SingleAsync())).Id, "maker");
        var tooMuch = await Book.PayAsync(id, new PaymentForm { Amount = 48.81m }, "maker");
        tooMuch.Code.ShouldBe("more-than-owed");
        tooMuch.Words.ShouldContain("£48.80");
    }

    [Fact]
    public async Task A_newer_price_that_is_agreed_replaces_the_one_before_it()
    {
        var id = await AgreedAsync();
        var first = await scene.ReadAsync(db => db.Set<Studio.Quotes.Quote>().SingleAsync());
        var renewed = (await scene.Book.ViewAsync((await scene.Book.RenewAsync(first.Id, "maker")).Id))!.Quote;
        (await scene.Book.SendAsync(renewed.Id, renewed.Version, "maker", "as agreed")).Ok.ShouldBeTrue();
        renewed = (await scene.Book.ViewAsync(renewed.Id))!.Quote;
        (await scene.Book.AcceptAsync(renewed.Id, renewed.Version, "Ansel", "by telephone", "maker")).Ok.ShouldBeTrue();
        (await Book.ReadAsync(id)).Agreed.ShouldBe(97.60m);
        (await scene.ReadAsync(db => db.Set<Studio.Quotes.Quote>().CountAsync(q => q.State == Studio.Quotes.QuoteState.Accepted))).ShouldBe(1);
    }

    private async Task<int> AgreedAsync()
    {
        var sent = await scene.SentAsync();
        (await scene.Book.AcceptAsync(sent.Quote.Id, sent.Quote.Version, "Ansel", "by telephone", "maker")).Ok.ShouldBeTrue();
        return sent.Quote.CommissionId;
    }

    private Task<List<string>> StoryAsync() => scene.ReadAsync(db => db.Set<CommissionEvent>().Where(e => e.Kind == "payment").OrderBy(e => e.Id).Select(e => e.Words).ToListAsync());
}
