using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Film;
using Studio.Heat;
using Studio.Pieces;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Tests.Pieces;

public sealed class PiecePageTests : BunitContext
{
    private readonly StudioDatabase database = new();

    public PiecePageTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        this.AddAuthorization().SetAuthorized("Mo").SetPolicies("making");
        Services.AddSingleton<TimeProvider>(database.Clock);
        Services.AddSingleton(database.News);
        Services.AddSingleton(PieceSamples.Book(database));
        Services.AddSingleton(new Studio.Tips.TipBook(database.Factory, database.News));
        Services.AddSingleton(new SettingsBook(database.Factory, database.News));
        Services.AddSingleton(new Studio.Clock.PieceTimeBook(database.Factory, database.Clock, new SettingsBook(database.Factory, database.News), new Studio.Quotes.Promises()));
        Services.AddSingleton(new FilmBook(database.Factory, database.Clock, new SettingsBook(database.Factory, database.News), new Studio.Data.Files.PhotoStore(Path.Combine(Path.GetTempPath(), "no-photographs-here"))));
        ComponentFactories.AddStub<HeatPart>(); // works beside the page and redraws it when it likes: what is asked here is the page's own
        Services.AddSingleton(new BubbleBook(database.Factory));
        Services.AddSingleton(new Studio.Stores.PotBook(database.Factory, database.News, database.Clock, new SettingsBook(database.Factory, database.News)));
        Services.AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
    }

    [Fact]
    public async Task A_line_moved_by_key_says_it_is_not_kept_until_it_is()
    {
        var page = await PageAsync();
        page.Find(".keeping").TextContent.ShouldBe("Kept");
        page.Find("#keep").HasAttribute("disabled").ShouldBeTrue();

        page.FindAll(".grip")[0].KeyDown(new KeyboardEventArgs { Key = "ArrowDown", ShiftKey = true });
        page.Find(".keeping").TextContent.ShouldBe("Not kept yet");
        page.FindAll(".amount strong")[^1].TextContent.ShouldBe("10 mm");

        page.Find("#keep").Click();
        page.WaitForAssertion(() => page.Find(".keeping").TextContent.ShouldBe("Kept today 09:00"));
        (await PieceSamples.Book(database).DeskAsync(page.Instance.Id))!.Piece.Layers[0].ToMm.ShouldBe(10);
    }

    [Fact]
    public async Task The_top_layer_is_on_top_as_in_the_drawing_both_ways_round()
    {
        var page = await PageAsync();
        Names(page).ShouldBe(["Last colour", "Clear, pour 3 of 3", "Clear, pour 2 of 3", "Clear, pour 1 of 3", "First colour"]);
        page.FindAll("button").Single(b => b.TextContent.StartsWith("Turn it over", StringComparison.Ordinal)).Click();
        Names(page)[0].ShouldBe("First colour");
        page.Find("svg.large g[role=img]").GetAttribute("aria-label")!.ShouldContain("turned over");
    }

    [Fact]
    public async Task What_somebody_else_kept_meanwhile_is_offered_and_mine_is_not_lost()
    {
        var page = await PageAsync();
        page.FindAll(".grip")[0].KeyDown(new KeyboardEventArgs { Key = "ArrowDown" });
        var book = PieceSamples.Book(database);
        var theirs = (await book.DeskAsync(page.Instance.Id))!;
        theirs.Piece.Layers[0].ToMm = 11;
        await book.KeepAsync(theirs.Piece, theirs.ReadAs, "Kit");

        page.Find("#keep").Click();
        page.WaitForAssertion(() => page.Find("#refused").TextContent.ShouldContain(Saved.SomeoneElse));
        page.FindAll("#refused button").Single(b => b.TextContent == "put mine over it").Click();
        page.WaitForAssertion(() => page.Find(".keeping").TextContent.ShouldBe("Not kept yet"));
        page.Find("#keep").Click();
        page.WaitForAssertion(() => page.Find(".keeping").TextContent.ShouldStartWith("Kept today"));
        (await book.DeskAsync(page.Instance.Id))!.Piece.Layers[0].ToMm.ShouldBe(19);
    }

    [Fact]
    public async Task A_page_without_changes_of_its_own_follows_what_others_keep()
    {
        var page = await PageAsync();
        var book = PieceSamples.Book(database);
        var theirs = (await book.DeskAsync(page.Instance.Id))!;
        theirs.Piece.Name = "Renamed elsewhere";
        await book.KeepAsync(theirs.Piece, theirs.ReadAs, "Kit");
        page.WaitForAssertion(() => page.Find("h1").TextContent.ShouldBe("Renamed elsewhere"));
    }

    [Fact]
    public async Task A_draft_of_before_a_lost_connection_is_taken_up()
    {
        var id = await BegunAsync();
        var desk = (await PieceSamples.Book(database).DeskAsync(id))!;
        desk.Piece.Layers[0].Name = "Heather, half typed";
        JSInterop.Setup<string?>("studio.draft", $"piece-{id}").SetResult(new DesignDraft(database.Clock.GetUtcNow().UtcDateTime, desk.ReadAs, DesignText.Write(desk.Piece)).Write());
        var page = Open(id);
        page.WaitForAssertion(() => Names(page)[^1].ShouldBe("Heather, half typed"));
        page.Markup.ShouldContain("taken up where you left them");
    }

    [Fact]
    public async Task Half_typed_or_absurd_numbers_say_what_to_do_and_empty_nothing()
    {
        var page = await PageAsync();
        page.FindAll(".layer .head")[^1].Click();
        Type(page, "twelve");
        page.WaitForAssertion(() => page.Find(".far").TextContent.ShouldContain("is not a number"));
        page.FindAll("path.band").Count.ShouldBe(5);
        Type(page, "-4 mm");
        page.WaitForAssertion(() => page.Find(".far").TextContent.ShouldContain("at least 0 mm"));
        Type(page, "0 mm");
        page.WaitForAssertion(() => page.Find(".far").TextContent.ShouldContain("above zero"));
        Type(page, "0,5 in");
        page.WaitForAssertion(() => page.FindAll(".amount strong")[^1].TextContent.ShouldBe("12.7 mm"));
    }

    [Fact]
    public async Task Folded_away_what_cannot_be_read_is_still_refused_and_still_there()
    {
        var page = await PageAsync();
        page.FindAll(".layer .head")[^1].Click();
        Type(page, "fifty");
        page.FindAll(".layer .head")[^1].Click();
        page.Find(".keeping").TextContent.ShouldBe("Not kept yet");
        page.Find("#keep").Click();
        page.WaitForAssertion(() => page.Find(".unread").TextContent.ShouldContain("“fifty” is not a number"));
        page.FindAll(".layer .head")[^1].Click();
        page.Find(".far input:not([type=radio])").GetAttribute("value").ShouldBe("fifty");
    }

    [Fact]
    public async Task Nobody_goes_on_to_the_price_past_what_cannot_be_read()
    {
        var page = await PageAsync();
        page.FindAll(".layer .head")[^1].Click();
        Type(page, "fifty");
        page.FindAll(".acts button").Single(b => b.TextContent == "Make a price").Click();
        page.WaitForAssertion(() => page.Find(".unread").TextContent.ShouldContain("“fifty” is not a number"));
        Services.GetRequiredService<Microsoft.AspNetCore.Components.NavigationManager>().Uri.ShouldNotContain("quote");
    }

    [Fact]
    public async Task A_layer_taken_out_takes_what_cannot_be_read_in_it_along()
    {
        var page = await PageAsync();
        page.FindAll(".layer .head")[0].Click();
        Type(page, "fifty");
        page.FindAll(".layer button").Single(b => b.TextContent == "Remove").Click();
        page.Find("#keep").Click();
        page.WaitForAssertion(() => page.Find(".keeping").TextContent.ShouldStartWith("Kept today"));
    }

    [Fact]
    public async Task What_is_removed_comes_back_by_undo()
    {
        var page = await PageAsync();
        page.FindAll(".layer .head")[0].Click();
        page.FindAll(".layer button").Single(b => b.TextContent == "Remove").Click();
        Names(page).Count.ShouldBe(4);
        page.FindAll(".acts button").Single(b => b.TextContent == "Undo").Click();
        Names(page)[0].ShouldBe("Last colour");
        page.Find(".keeping").TextContent.ShouldBe("Kept");
    }

    [Fact]
    public void A_piece_that_is_not_there_is_said_so() => Open(404).Find("h1").TextContent.ShouldBe("There is no such piece");

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        database.Dispose();
    }

    // the field waits a moment for the next key; the test's clock has to pass it
    private void Type(IRenderedComponent<PiecePage> page, string text)
    {
        page.Find(".far input:not([type=radio])").Input(text);
        database.Clock.Advance(TimeSpan.FromMilliseconds(300));
    }

    private static List<string> Names(IRenderedComponent<PiecePage> page) => [.. page.FindAll(".layer .what strong").Select(s => s.TextContent)];

    private async Task<IRenderedComponent<PiecePage>> PageAsync() => Open(await BegunAsync());

    private IRenderedComponent<PiecePage> Open(int id)
    {
        Render<MudPopoverProvider>();
        var page = Render<PiecePage>(p => p.Add(x => x.Id, id));
        page.WaitForElement("h1");
        return page;
    }

    private async Task<int> BegunAsync()
    {
        var commission = await PieceSamples.CommissionAsync(database, PieceSamples.Keepsake(5, Permissions.EmbedAll));
        return (await PieceSamples.Book(database).CreateAsync(commission, "Whistle", 1, PieceStart.Colours, "Mo")).Id;
    }
}
