using Bunit;
using FluentValidation;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Calibration;
using Studio.Data;
using Studio.Pieces;
using Studio.Resins;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Tests.Resins;

public sealed class ResinPageTests : BunitContext
{
    private readonly StudioDatabase database = new();
    private readonly ResinBook book;

    public ResinPageTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        this.AddAuthorization().SetAuthorized("maker");
        book = new ResinBook(database.Factory, database.News, new PieceUses());
        Services.AddSingleton<IDbContextFactory<StudioDb>>(database.Factory);
        Services.AddSingleton(database.News);
        Services.AddSingleton(book);
        Services.AddScoped<SettingsBook>();
        Services.AddScoped(s => new Who(s.GetRequiredService<AuthenticationStateProvider>(), new AlwaysStands()));
        Services.AddSingleton(new CureBook(database.Factory, database.Clock, database.News, new LogPours()));
        Services.AddSingleton<TimeProvider>(database.Clock);
        Services.AddSingleton<IValidator<ResinForm>>(new ResinValidator());
        Render<MudPopoverProvider>();
    }

    [Fact]
    public void Keeping_an_empty_sheet_marks_every_field_and_keeps_nothing()
    {
        var page = Render<ResinPage>();
        page.Find("#resin-form").Submit();
        page.Find("#refused").TextContent.ShouldContain("4 fields need a look");
        page.Markup.ShouldContain("Give the resin a name");
        page.Markup.ShouldContain("how many parts of B");
        database.Open().Set<Resin>().Count().ShouldBe(0);
    }

    [Fact]
    public void A_mended_field_loses_its_complaint_at_once()
    {
        var page = Render<ResinPage>();
        page.Find("#resin-form").Submit();
        Input(page, "Parts of B").Change("1");
        page.Markup.ShouldNotContain("how many parts of B");
        page.Markup.ShouldContain("how many parts of A");
    }

    [Fact]
    public async Task An_unreadable_number_stops_the_save_and_stays_as_typed()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        Input(page, "Deepest pour").Change("two");
        page.Find("#resin-form").Submit();
        page.Find("#refused").TextContent.ShouldContain("Deepest pour");
        Input(page, "Deepest pour").GetAttribute("value").ShouldBe("two");
        (await book.FormAsync(id))!.MaxPourMm.ShouldBe(20);
    }

    [Fact]
    public async Task A_newer_version_elsewhere_leaves_what_was_typed_and_offers_to_load_it()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        Input(page, "Deepest pour").Change("30");
        var theirs = (await book.FormAsync(id))!;
        theirs.MaxPourMm = 12;
        await book.SaveAsync(theirs, "Bo");
        page.Find("#resin-form").Submit();
        page.Find("#refused").TextContent.ShouldContain("Someone else changed this");
        Input(page, "Deepest pour").GetAttribute("value").ShouldBe("30");
        page.Find("#refused button").Click();
        Input(page, "Deepest pour").GetAttribute("value").ShouldBe("12");
    }

    [Fact]
    public async Task A_doubt_stands_beside_its_field_and_does_not_stop_the_save()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        Input(page, "Full cure").Change("7");
        page.Find(".rowdoubts .finding").TextContent.ShouldContain("7 days");
        page.Find("#resin-form").Submit();
        (await book.FormAsync(id))!.Times[0].FullCureHours.ShouldBe(7);
    }

    [Fact]
    public async Task What_was_typed_and_not_kept_is_offered_again()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var typed = (await book.FormAsync(id))!;
        typed.MaxPourMm = 33;
        JSInterop.Setup<string?>("studio.draft", $"resin:{id}").SetResult(JsonColumn.Write(typed));
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        Input(page, "Deepest pour").GetAttribute("value").ShouldBe("20");
        page.WaitForElement(".finding .linklike").Click();
        Input(page, "Deepest pour").GetAttribute("value").ShouldBe("33");
    }

    [Fact]
    public async Task A_sheet_is_fitted_beside_the_form_and_taken_over_only_by_a_click()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        database.Clock.Advance(TimeSpan.FromSeconds(1));
        page.WaitForAssertion(() => page.Find(".cures .example").TextContent.ShouldContain("20 mm, the deepest that the sheet prints"), TimeSpan.FromSeconds(60));
        page.Find(".cures table").TextContent.ShouldContain("Pot life of the cup");
        database.Open().Set<KnownCure>().Count().ShouldBe(0);
        page.FindAll(".cures button").Single(b => b.TextContent == "Take it over").Click();
        page.WaitForAssertion(() => page.Find(".cures .history").TextContent.ShouldContain("In use"));
        database.Open().Set<KnownCure>().Single().Standing.ShouldBe(KnownCure.Accepted);
    }

    [Fact]
    public async Task A_fit_of_a_sheet_that_is_not_kept_yet_cannot_be_taken_over()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        Input(page, "Pot life").Change("50");
        database.Clock.Advance(TimeSpan.FromSeconds(1));
        page.WaitForAssertion(() => page.Find(".cures").TextContent.ShouldContain("Keep this sheet first"), TimeSpan.FromSeconds(60));
        page.FindAll(".cures button").ShouldNotContain(b => b.TextContent == "Take it over");
    }

    [Fact]
    public async Task A_row_can_be_added_for_another_temperature()
    {
        var id = (await book.SaveAsync(Sheets.Casting("Clear"), "Ada")).Id;
        var page = Render<ResinPage>(p => p.Add(x => x.Id, id));
        page.FindAll("button").Single(b => b.TextContent.Contains("another temperature", StringComparison.Ordinal)).Click();
        page.FindAll(".timesrow").Count.ShouldBe(2);
        page.Find("#f-Times-1-AtC input").Change("64 °F");
        page.Find("#f-Times-1-DemouldHours input").Change("2 days");
        page.Find("#resin-form").Submit();
        var kept = (await book.FormAsync(id))!.Times[0];
        kept.AtC!.Value.ShouldBe(17.78, 0.01);
        kept.DemouldHours.ShouldBe(48);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            database.Dispose();
        }
    }

    private static AngleSharp.Dom.IElement Input(IRenderedComponent<ResinPage> page, string label)
    {
        var found = page.FindAll("label").First(l => l.TextContent.StartsWith(label, StringComparison.Ordinal));
        return page.Find("#" + found.GetAttribute("for"));
    }
}
