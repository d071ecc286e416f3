using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;
using Studio.Climate;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Settings;
using Studio.Shelf;
using Studio.SignIn;
using Studio.Tests.Bench;

namespace Studio.Tests.Shelf;

public sealed class ShelfPageTests : BunitContext
{
    private readonly StudioDatabase studio = new();
    private readonly Scene scene;
    private readonly Bunit.TestDoubles.BunitAuthorizationContext signedIn;

    public ShelfPageTests()
    {
        scene = new(studio.Factory, studio.Clock);
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        Services.AddSingleton(studio.Factory).AddSingleton(studio.News).AddSingleton<TimeProvider>(studio.Clock);
        Services.AddSingleton<IPieceNames, global::Studio.Pieces.PieceNames>().AddSingleton<IPourNames, global::Studio.Clock.PourNames>().AddScoped<CustodyBook>().AddScoped<ShelfBook>().AddSingleton<global::Studio.Clock.IPromises, global::Studio.Quotes.Promises>().AddScoped<global::Studio.Clock.PieceTimeBook>().AddScoped<RoomBook>().AddScoped<SettingsBook>().AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
        signedIn = AddAuthorization().SetAuthorized("maker");
        signedIn.SetPolicies("making");
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
    public void An_empty_shelf_teaches_how_to_begin()
    {
        var page = Render<ShelfPage>();
        page.WaitForAssertion(() => page.Find(".empty").TextContent.ShouldContain("To begin"));
        page.FindAll("h1").Count.ShouldBe(1);
    }

    [Fact]
    public async Task A_pour_elsewhere_redraws_it_without_reloading()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        var page = Render<ShelfPage>();
        page.WaitForAssertion(() => page.Find("#lead").TextContent.ShouldContain("can begin"));

        await scene.PourAsync(id, 0, scene.Now);
        studio.News.Tell(News.Pour, id);
        page.WaitForAssertion(() => page.Find("#lead").TextContent.ShouldContain("until 15:00"));
    }

    [Fact]
    public async Task Its_words_move_by_themselves_as_time_goes_by()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now);
        var page = Render<ShelfPage>();
        page.WaitForAssertion(() => page.Find(".left").TextContent.ShouldBe("in 6 hours"));
        studio.Clock.Advance(TimeSpan.FromMinutes(30));
        page.WaitForAssertion(() => page.Find(".left").TextContent.ShouldBe("in 5 hours 30 minutes"));
        studio.Clock.Advance(TimeSpan.FromHours(5.5));
        page.WaitForAssertion(() => page.Find("#lead").TextContent.ShouldContain("Pour heather band into Heather pyramid"));
    }

    [Fact]
    public async Task A_makers_tag_leads_to_the_bench()
    {
        var id = await scene.PieceAsync();
        var page = Render<ShelfPage>();
        page.WaitForElement(".paper").GetAttribute("href").ShouldBe($"/pieces/{id}/bench");
        page.Find(".top .btn").TextContent.ShouldBe("Go to its bench");
    }

    // the front desk may not enter the bench: no tag of theirs leads to a closed door
    [Fact]
    public async Task The_front_desks_tag_leads_to_the_commission()
    {
        var id = await scene.PieceAsync();
        await scene.ReadingAsync(23);
        await scene.PourAsync(id, 0, scene.Now.AddHours(-8));
        signedIn.SetPolicies();
        var page = Render<ShelfPage>();
        page.WaitForElement(".paper");
        var commission = (await scene.AllAsync<Studio.Pieces.Piece>()).Single().CommissionId;
        page.FindAll(".paper, .top .btn, .day a").Select(a => a.GetAttribute("href")).ShouldBe(Enumerable.Repeat($"/commissions/{commission}", 3));
        page.Find(".top .btn").TextContent.ShouldBe("Open its commission");
    }

    [Fact]
    public async Task Two_taps_log_the_room()
    {
        await scene.ReadingAsync(18.5);
        var page = Render<ShelfPage>();
        page.WaitForElement("[aria-label='Half a degree warmer']").Click();
        page.Find("#log-room").Click();
        page.WaitForAssertion(() => page.Find(".room .now strong").TextContent.ShouldBe("19 °C"));
        (await scene.AllAsync<Reading>()).Count.ShouldBe(2);
    }
}
