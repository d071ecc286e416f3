using Bunit;
using Microsoft.Extensions.DependencyInjection;
using Studio.Tips;

namespace Studio.Tests.Tips;

public sealed class TipBookTests : BunitContext
{
    private readonly StudioDatabase database = new();
    private readonly TipBook book;

    public TipBookTests()
    {
        book = new TipBook(database.Factory, database.News);
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddSingleton(book);
    }

    [Fact]
    public void Every_tip_that_comes_with_the_program_has_a_place_and_says_where_it_is_from()
    {
        var tips = TipSeed.Read();
        tips.Select(t => t.Seed).ShouldBeUnique();
        tips.ShouldAllBe(t => TipPlaces.All.Any(p => p.Key == t.Place) && t.Source.Length > 0 && new TipValidator().Validate(TipForm.Of(t)).IsValid);
        TipPlaces.All.Select(p => p.Key).Except(tips.Select(t => t.Place)).ShouldBeEmpty();
    }

    [Fact]
    public async Task A_tip_put_away_or_rewritten_is_not_planted_again()
    {
        await PlantAsync();
        var first = (await book.ListAsync())[0];
        await book.TurnAsync(first.Id, retired: true, "Ada");
        var second = (await book.FormAsync((await book.ListAsync())[0].Id))!;
        second.Text = "My own words.";
        (await book.SaveAsync(second, "Ada")).Ok.ShouldBeTrue();

        await PlantAsync();
        (await book.ListAsync(retired: true)).Count.ShouldBe(TipSeed.Read().Count);
        (await book.ListAsync()).ShouldNotContain(t => t.Id == first.Id);
        (await book.FormAsync(second.Id))!.Text.ShouldBe("My own words.");
    }

    [Fact]
    public async Task The_makers_own_tip_comes_first_beside_its_choice()
    {
        await PlantAsync();
        (await book.SaveAsync(new TipForm { Place = TipPlaces.Scatter, Text = "Warm the heather first.", Source = "own experience" }, "Ada")).Ok.ShouldBeTrue();
        var view = Render<TradeTips>(p => p.Add(t => t.Place, TipPlaces.Scatter));
        view.WaitForAssertion(() => view.Markup.ShouldContain("Warm the heather first."));
        view.FindAll("button").Single(b => b.TextContent.Contains("Another", StringComparison.Ordinal)).Click();
        view.Markup.ShouldContain("Resin first");
    }

    [Fact]
    public async Task A_tip_put_away_on_this_device_leaves_the_next_one()
    {
        await PlantAsync();
        var view = Render<TradeTips>(p => p.Add(t => t.Place, TipPlaces.Layer));
        view.WaitForAssertion(() => view.Markup.ShouldContain("contrasting stone"));
        view.Find("button[aria-label]").Click();
        view.Markup.ShouldContain("dark layer");
        JSInterop.VerifyInvoke("studio.keepDraft").Arguments[1].ShouldBe("away");
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        database.Dispose();
    }

    private async Task PlantAsync()
    {
        await using var db = database.Open();
        await new TipSeed().PlantAsync(db);
    }
}
