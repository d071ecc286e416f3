using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;
using Studio.Bench;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Heat;
using Studio.Pieces;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Tests.Bench;

public sealed class BenchPageTests : BunitContext
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;

    public BenchPageTests()
    {
        scene = new(studio.Factory, studio.Clock);
        JSInterop.Mode = JSRuntimeMode.Loose;
        JSInterop.SetupModule("/drawing.js").Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        Services.AddSingleton(studio.Factory).AddSingleton(studio.News).AddSingleton<TimeProvider>(studio.Clock);
        Services.AddScoped<BenchBook>().AddScoped<PourHeatBook>().AddScoped<RoomBook>().AddScoped<SettingsBook>().AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
        AddAuthorization().SetAuthorized("maker");
        SetRendererInfo(new RendererInfo("Server", isInteractive: true));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            studio.Dispose();
        }
    }

    [Fact]
    public async Task The_next_step_stays_in_its_corner_from_preparing_to_the_clock()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        var page = Page(id);
        page.WaitForElement(".things");
        Next(page);
        page.Find("#log-room");
        Next(page);
        page.Find("#next-step").HasAttribute("disabled").ShouldBeTrue();
        Type(page, page.Find("#left-A").TextContent);
        Type(page, page.Find("#left-B").TextContent);
        page.Find("[role=status].good").TextContent.ShouldContain("Both parts are in");
        Next(page);
        Next(page);
        page.WaitForAssertion(() => page.Find("#next-act").TextContent.ShouldBe("Next pour from 15:00, window closes tomorrow 09:00."));
        page.Find("#next-step").TextContent.ShouldBe("Prepare layer 2");
        (await scene.AllAsync<Pour>()).Count.ShouldBe(1);
    }

    [Fact]
    public async Task Too_much_is_said_at_once_and_taken_back_by_one_tap()
    {
        var id = await scene.PieceAsync();
        var page = Page(id);
        page.WaitForElement(".things");
        Next(page);
        Next(page);
        Type(page, "500");
        page.Find("[role=alert]").TextContent.ShouldContain("too much A");
        page.Find("#undo-reading").Click();
        page.FindAll("[role=alert]").ShouldBeEmpty();
    }

    [Fact]
    public async Task A_pour_on_another_tablet_brings_this_one_to_the_clock()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        var page = Page(id);
        page.WaitForElement(".things");
        await scene.PourAsync(id, 0, scene.Now);
        studio.News.Tell(News.Pour, id);
        page.WaitForAssertion(() => page.Find("#next-act").TextContent.ShouldStartWith("Next pour from 15:00"));
    }

    [Fact]
    public async Task The_mould_is_opened_from_the_corner_exactly_when_the_clock_allows()
    {
        var id = await scene.PieceAsync(layers: 1);
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        var page = Page(id);
        page.WaitForElement("#next-act");
        studio.Clock.Advance(TimeSpan.FromHours(24) - TimeSpan.FromMinutes(1));
        page.WaitForAssertion(() => page.FindAll("#demould").ShouldBeEmpty());
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        page.WaitForElement("#demould").Click();
        page.WaitForElement("#early-finish");
        (await scene.FindAsync(id)).Stage.ShouldBe(Making.Demoulded);
        studio.Clock.Advance(TimeSpan.FromHours(48) - TimeSpan.FromMinutes(1));
        page.WaitForAssertion(() => page.FindAll("#finish").ShouldBeEmpty());
        studio.Clock.Advance(TimeSpan.FromMinutes(1));
        page.WaitForElement("#finish");
    }

    [Fact]
    public async Task With_a_layer_still_to_pour_no_day_is_said_for_the_mould()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        Page(id).WaitForElement(".mould");
        Find(".mould").ShouldBe("When the piece leaves its mould: Not before the last layer is poured: 2 of 3 are still to pour.");
    }

    [Fact]
    public async Task A_piece_that_fails_while_the_next_pour_is_in_hand_is_said_so_on_that_screen()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now.AddHours(-8));
        var page = Page(id);
        page.WaitForElement(".things");
        for (var step = 1; step <= 3; step++)
        {
            page.FindAll("#fail-head").Count.ShouldBe(1, $"on screen {step}");
            if (step < 3)
            {
                Next(page);
            }
        }

        page.Find("#fail-why").Change("bubbles");
        await page.Find("#fail-keep").ClickAsync(new());
        page.WaitForAssertion(() => page.Find("#failed-head").TextContent.ShouldBe("It failed"));
        page.FindAll(".path").ShouldBeEmpty();
        (await scene.FindAsync(id)).Stage.ShouldBe(Making.Failed);
    }

    [Fact]
    public async Task No_two_words_of_a_thing_run_into_each_other()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now.AddHours(-8));
        var number = (await scene.AllAsync<Studio.Keepsakes.Keepsake>()).Single().EntryNumber;
        await scene.ChangeAsync<PieceLayer>(l => l.Order == 1, l => l.Placed = [new LayerPlaced(1, "brass button", null, null, 1)]);
        var page = Page(id);
        page.WaitForElement(".things");
        page.Find(".things li[data-part=place]").TextContent.ShouldContain("set by hand " + number);
        page.FindAll("button").First(b => b.TextContent == "To the clock").Click();
        page.Find(".foretold li").TextContent.ShouldContain("foretold. Log a thermometer");
        page.Find(".foretold li").TextContent.ShouldContain("base: its heat");
    }

    [Theory]
    [InlineData("""{"layerId":"heather"}""")]
    [InlineData("no draft at all")]
    public async Task A_draft_of_another_version_of_the_program_is_let_lie(string draft)
    {
        JSInterop.Setup<string?>("studio.draft", _ => true).SetResult(draft);
        var page = Page(await scene.PieceAsync());
        page.WaitForElement(".things");
        Next(page);
        page.Find("#log-room");
    }

    [Fact]
    public void A_piece_that_is_not_there_is_said_so() => Page(4711).WaitForAssertion(() => Find("h1").ShouldContain("not here"));

    private string Find(string selector) => current!.Find(selector).TextContent;

    private IRenderedComponent<BenchPage>? current;

    private IRenderedComponent<BenchPage> Page(int id) => current = Render<BenchPage>(p => p.Add(b => b.Id, id));

    private static void Next(IRenderedComponent<BenchPage> page) => page.Find("#next-step").Click();

    private static void Type(IRenderedComponent<BenchPage> page, string figure)
    {
        page.Find("#scale").Input(figure);
        page.Find("#add-reading").Click();
    }
}
