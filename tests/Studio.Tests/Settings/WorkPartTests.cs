using Bunit;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Office;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Tests.Settings;

/// <summary>The studio's hours on the settings page.</summary>
public sealed class WorkPartTests : BunitContext
{
    private readonly StudioDatabase studio = new();
    private readonly SettingsBook book;

    public WorkPartTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        book = new(studio.Factory, studio.News);
        Services.AddSingleton(studio.Factory).AddSingleton(studio.News).AddSingleton<TimeProvider>(studio.Clock).AddSingleton(book).AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
        this.AddAuthorization().SetAuthorized("Wren");
        Render<MudPopoverProvider>();
    }

    [Fact]
    public async Task Days_hours_days_off_and_the_room_are_kept_as_typed()
    {
        var page = Render<SettingsPage>();
        await Tick(page, "Saturday").ChangeAsync(new() { Value = true });
        await Tick(page, "Tuesday").ChangeAsync(new() { Value = false });
        await Field(page, "From").ChangeAsync(new() { Value = "08:30" });
        await Field(page, "Until").ChangeAsync(new() { Value = "16:15" });
        await Field(page, "Usual temperature").ChangeAsync(new() { Value = "19,5 °C" });
        await Field(page, "Minutes a day").ChangeAsync(new() { Value = "300" });
        await Field(page, "Kept in hand").ChangeAsync(new() { Value = "0" });
        await Field(page, "On the way").ChangeAsync(new() { Value = "4" });
        await Field(page, "A day on which nobody works").ChangeAsync(new() { Value = "2026-04-03" });
        await Button(page, "Add this day off").ClickAsync(new());
        page.Find(".off").TextContent.ShouldContain("Friday 3 April 2026");

        await page.Find("form").SubmitAsync();

        var kept = await book.ReadAsync();
        kept.WorkDays.ShouldBe(["mon", "wed", "thu", "fri", "sat"]);
        (kept.WorkFrom, kept.WorkUntil, kept.UsualRoomC).ShouldBe((new TimeOnly(8, 30), new TimeOnly(16, 15), 19.5));
        (kept.WorkMinutesPerDay, kept.ReserveDays, kept.DeliveryDays).ShouldBe((300, 0, 4));
        kept.DaysOff.ShouldBe([new DateOnly(2026, 4, 3)]);
        await Button(page, "Remove").ClickAsync(new());
        await page.Find("form").SubmitAsync();
        (await book.ReadAsync()).DaysOff.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_time_that_is_none_and_a_room_that_cannot_be_are_said_beside_the_field_and_nothing_is_saved()
    {
        var page = Render<SettingsPage>();
        await Field(page, "From").ChangeAsync(new() { Value = "" });
        await Field(page, "Usual temperature").ChangeAsync(new() { Value = "warm" });
        await page.Find("form").SubmitAsync();
        page.Find("[role=alert]").TextContent.ShouldContain("From: nothing stands there. Type a time of day, such as 09:00.");
        page.Find("[role=alert]").TextContent.ShouldContain("Usual temperature of the room [°C]: “warm” is not a number.");
        page.Markup.ShouldContain("Type a time of day, such as 09:00.");
        await using var db = studio.Open();
        (await db.Set<StudioSettings>().AnyAsync(Xunit.TestContext.Current.CancellationToken)).ShouldBeFalse();
    }

    [Fact]
    public async Task What_is_saved_put_back_stands_in_every_field_again()
    {
        var page = Render<SettingsPage>();
        var before = Field(page, "Minutes a day").GetAttribute("value");
        await Field(page, "Minutes a day").ChangeAsync(new() { Value = "fifty" });
        await Button(page, "Put back what is saved").ClickAsync(new());
        Field(page, "Minutes a day").GetAttribute("value").ShouldBe(before);
        await page.Find("form").SubmitAsync();
        page.FindAll("[role=alert]").ShouldBeEmpty();
    }

    [Fact]
    public async Task Two_owners_days_off_are_told_apart()
    {
        await book.SaveAsync(new StudioSettings(), "Wren");
        var page = Render<SettingsPage>();
        var theirs = await book.ReadAsync();
        theirs.DaysOff = [new DateOnly(2026, 5, 1)];
        (await book.SaveAsync(theirs, "Ash")).Ok.ShouldBeTrue();

        await Field(page, "A day on which nobody works").ChangeAsync(new() { Value = "2026-04-03" });
        await Button(page, "Add this day off").ClickAsync(new());
        await page.Find("form").SubmitAsync();

        page.FindComponent<ClashNote>().Markup.ShouldContain("3 April 2026");
        page.FindComponent<ClashNote>().Markup.ShouldContain("1 May 2026");
    }

    private static AngleSharp.Dom.IElement Tick(IRenderedComponent<SettingsPage> page, string day) => page.FindAll("label.check").First(l => l.TextContent.Contains(day, StringComparison.Ordinal)).QuerySelector("input")!;

    private static AngleSharp.Dom.IElement Button(IRenderedComponent<SettingsPage> page, string words) => page.FindAll("button").First(b => b.TextContent.Trim() == words && !b.ClassList.Contains("place"));

    private static AngleSharp.Dom.IElement Field(IRenderedComponent<SettingsPage> page, string label)
    {
        var found = page.FindAll("label").First(l => l.TextContent.StartsWith(label, StringComparison.Ordinal));
        return page.Find("#" + found.GetAttribute("for"));
    }
}
