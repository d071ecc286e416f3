using Bunit;
using FluentValidation;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Engine.Moulds;
using Studio.Moulds;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Tests.Moulds;

public sealed class MouldPagesTests : BunitContext
{
    private readonly StudioDatabase database = new();
    private readonly MouldBook book;

    public MouldPagesTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        this.AddAuthorization().SetAuthorized("maker");
        book = new MouldBook(database.Factory, database.News);
        Services.AddSingleton(database.Factory);
        Services.AddSingleton(database.News);
        Services.AddSingleton(book);
        Services.AddScoped<SettingsBook>();
        Services.AddScoped(s => new Who(s.GetRequiredService<AuthenticationStateProvider>()));
        Services.AddSingleton<IValidator<MouldForm>>(new MouldValidator());
        Render<MudPopoverProvider>();
    }

    [Fact]
    public void The_form_asks_for_the_measures_of_whichever_shape_is_chosen()
    {
        var page = Render<MouldPage>();
        foreach (var shape in MouldShapes.All)
        {
            page.Find($"input[name=shape][value={shape.Key}]").Change(shape.Key);
            var labels = page.FindAll("label").Select(l => l.TextContent).ToList();
            shape.Dimensions.ShouldAllBe(d => labels.Any(l => l.StartsWith(d.Label, StringComparison.Ordinal)));
        }
    }

    [Fact]
    public async Task A_retired_mould_leaves_the_ledger_and_Undo_brings_it_back()
    {
        await book.SaveAsync(Cube("Cube"), "Ada");
        await book.SaveAsync(Cube("Block"), "Ada");
        var snackbars = Render<MudSnackbarProvider>();
        var page = Render<MouldsPage>();
        page.FindAll("tbody tr").Count.ShouldBe(2);
        page.FindAll("tbody tr button")[0].Click();
        page.WaitForAssertion(() => page.FindAll("tbody tr").Count.ShouldBe(1));
        snackbars.WaitForElement(".mud-snackbar-action-button").Click();
        page.WaitForAssertion(() => page.FindAll("tbody tr").Count.ShouldBe(2));
    }

    [Fact]
    public async Task Every_word_of_a_search_must_be_somewhere_in_name_or_shape()
    {
        await book.SaveAsync(Cube("Tall cube"), "Ada");
        await book.SaveAsync(Cube("Low cube"), "Ada");
        Services.GetRequiredService<NavigationManager>().NavigateTo("/stores/moulds?q=cuboid+TALL");
        var page = Render<MouldsPage>();
        page.FindAll("tbody tr").ShouldHaveSingleItem().TextContent.ShouldContain("Tall cube");
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            database.Dispose();
        }
    }

    private static MouldForm Cube(string name) => new() { Name = name, Shape = "cuboid", Dimensions = new(StringComparer.Ordinal) { ["widthMm"] = 60, ["depthMm"] = 60, ["heightMm"] = 60 } };
}
