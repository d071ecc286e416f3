using AngleSharp.Dom;
using Bunit;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;
using Studio.Commissions;
using Studio.Customers;
using Studio.SignIn;
using Studio.Story;

namespace Studio.Tests.Commissions;

public sealed class EnquiryPageTests : BunitContext
{
    private readonly StudioDatabase studio = new();

    public EnquiryPageTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        Services.AddSingleton(studio.Factory).AddSingleton(studio.News).AddSingleton<TimeProvider>(studio.Clock);
        Services.AddScoped<Studio.Settings.SettingsBook>().AddScoped<Studio.Clock.PieceTimeBook>().AddSingleton<Studio.Clock.IPromises, Studio.Quotes.Promises>().AddScoped<CommissionBook>().AddScoped<CustomerBook>().AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
        this.AddAuthorization().SetAuthorized("Wren");
    }

    [Fact]
    public async Task What_is_missing_is_said_at_once_and_what_was_typed_stays()
    {
        var page = Render<EnquiryPage>();
        await Field(page, "E-mail", typedFirst: "Isla Harrow").ChangeAsync(new() { Value = "isla at home" });

        await page.Find("form").SubmitAsync();

        page.Find("[role=alert]").TextContent.ShouldContain("What do they ask for?");
        page.Find("[role=alert]").TextContent.ShouldContain("does not look like an e-mail");
        Field(page, "Customer").GetAttribute("value").ShouldBe("Isla Harrow");
        Field(page, "E-mail").GetAttribute("value").ShouldBe("isla at home");
    }

    [Fact]
    public async Task Once_refused_each_change_is_checked_again()
    {
        var page = Render<EnquiryPage>();
        await page.Find("form").SubmitAsync();
        page.Find("[role=alert]").TextContent.ShouldContain("Who is asking?");

        await Field(page, "Customer").InputAsync(new() { Value = "Isla Harrow" });
        page.Markup.ShouldNotContain("Who is asking?");
        page.Find("[role=alert]").TextContent.ShouldContain("What do they ask for?");
        await Field(page, "What they ask for").ChangeAsync(new() { Value = "A pyramid" });
        page.FindAll("[role=alert]").ShouldBeEmpty();
        page.Markup.ShouldNotContain("Not kept yet");

        // and back: what is emptied again is missed again
        await Field(page, "Customer").InputAsync(new() { Value = "" });
        page.Find("[role=alert]").TextContent.ShouldContain("Who is asking?");
    }

    [Fact]
    public async Task A_form_sent_twice_notes_one_commission_and_goes_to_its_page()
    {
        var page = Render<EnquiryPage>();
        await Field(page, "Customer").InputAsync(new() { Value = "Isla Harrow" });
        await Field(page, "What they ask for").ChangeAsync(new() { Value = "A pyramid" });

        await Task.WhenAll(page.Find("form").SubmitAsync(), page.Find("form").SubmitAsync());

        await using var db = studio.Open();
        var id = await db.Set<Commission>().Select(c => c.Id).SingleAsync(Xunit.TestContext.Current.CancellationToken);
        Services.GetRequiredService<Microsoft.AspNetCore.Components.NavigationManager>().Uri.ShouldEndWith($"/commissions/{id}");
    }

    [Fact]
    public async Task A_known_customer_is_offered_while_typing_and_chosen_once()
    {
        await new CustomerBook(studio.Factory, studio.News).SaveAsync(new Customer { Name = "Isla Harrow", Email = "isla@example.org" }, "Wren");
        var page = Render<EnquiryPage>();

        await Field(page, "Customer").InputAsync(new() { Value = "harr" });
        await page.Find(".known-list button").ClickAsync(new());

        page.Find(".known").TextContent.ShouldContain("isla@example.org");
        page.FindAll("label").Select(l => l.TextContent).ShouldNotContain("E-mail");
    }

    protected override async ValueTask DisposeAsyncCore()
    {
        await base.DisposeAsyncCore();
        studio.Dispose();
    }

    // MudBlazor ties each label to its input by id
    private static IElement Field(IRenderedComponent<EnquiryPage> page, string label, string? typedFirst = null)
    {
        if (typedFirst is not null)
        {
            Field(page, "Customer").Input(typedFirst);
        }

        var id = page.FindAll("label").First(l => l.TextContent.Trim() == label).GetAttribute("for");
        return page.Find("#" + id);
    }
}
