using Bunit;
using FluentValidation;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Engine.Moulds;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Settings;
using Studio.SignIn;
using Studio.Tips;

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
        book = new MouldBook(database.Factory, database.Clock, database.News, database.Meshes, new PieceUses());
        Services.AddSingleton(database.Factory);
        Services.AddSingleton(database.News);
        Services.AddSingleton(book);
        Services.AddSingleton<TimeProvider>(database.Clock);
        Services.AddScoped<TipBook>();
        Services.AddScoped<SettingsBook>();
        Services.AddScoped(s => new Who(s.GetRequiredService<AuthenticationStateProvider>(), new AlwaysStands()));
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

    [Fact]
    public void Enter_goes_on_to_the_next_reading_and_a_removed_one_comes_back()
    {
        var page = Measured();
        Type(page, 0, 10, 50);
        page.Find("#reading-0").KeyDown(Key.Enter);
        page.FindAll(".fill li").Count.ShouldBe(2);
        page.Find("#reading-1").KeyDown(Key.Enter);
        page.FindAll(".fill li").Count.ShouldBe(2, "an empty row waits already");
        Type(page, 1, 20, 110);
        page.Find("#reading-0 button").Click();
        Values(page).ShouldBe(["20", "110"]);
        page.FindAll("button").Single(b => b.TextContent == "Put it back").Click();
        Values(page).ShouldBe(["10", "50", "20", "110"]);
    }

    [Fact]
    public void Water_added_and_water_in_all_say_the_same_fill()
    {
        var page = Measured();
        Type(page, 0, 10, 50);
        page.Find("#reading-0").KeyDown(Key.Enter);
        Type(page, 1, 20, 110);
        page.FindAll("input[name=fill-added]")[1].Change(true);
        Values(page).ShouldBe(["10", "50", "20", "60"]);
        page.Markup.ShouldContain("110 ml"); // what it holds stays
        page.FindAll("input[name=fill-added]")[0].Change(true);
        Values(page).ShouldBe(["10", "50", "20", "110"]);
    }

    [Fact]
    public void A_wild_reading_is_pointed_at_beside_its_row_and_kept_all_the_same()
    {
        var page = Measured();
        for (var i = 0; i < 8; i++)
        {
            Type(page, i, 15 * (i + 1), i == 3 ? 340 : 75 * (i + 1)); // a straight beaker of 5 ml a millimetre: 300 ml belong there
            page.Find(FormattableString.Invariant($"#reading-{i}")).KeyDown(Key.Enter);
        }

        page.FindAll(".fill li.wild").ShouldHaveSingleItem().Id.ShouldBe("reading-3");
        page.Find("#reading-3 .finding").TextContent.ShouldContain("they suggest about 300 ml");
        page.FindAll(".curve .ring").Count.ShouldBe(1);
    }

    [Fact]
    public async Task A_kept_mould_takes_a_fill_offers_to_scale_and_takes_it_back()
    {
        var snackbars = Render<MudSnackbarProvider>();
        var id = (await book.SaveAsync(Cube("Cube"), "Ada")).Id;
        var page = Render<MouldPage>(p => p.Add(m => m.Id, id));
        var fields = page.FindAll("#water .fields input");
        fields[0].Input("60"); // 216 ml to the rim by its measures
        page.FindAll("#water .fields input")[1].Input("226.8");
        page.Find("#water form").Submit();
        page.WaitForAssertion(() => page.Find("#water tbody").TextContent.ShouldContain("+5.0\u00a0%"));
        page.Find("#water .btn").TextContent.ShouldBe("Scale this mould’s volumes by 1.050");
        page.Find("#water .btn").Click();
        page.WaitForAssertion(() => page.Find(".holds").TextContent.ShouldContain("226.8 ml ± 3.9 ml")); // a millimetre of 3.6 ml in 216: 1.7 %
        snackbars.WaitForElement(".mud-snackbar-action-button").Click();
        page.WaitForAssertion(() => page.Find(".holds").TextContent.ShouldContain("216 ml to the rim"));
    }

    [Fact]
    public async Task The_level_part_says_how_far_a_line_runs_off()
    {
        var id = (await book.SaveAsync(Cube("Cube"), "Ada")).Id;
        var page = Render<MouldPage>(p => p.Add(m => m.Id, id));
        page.FindAll("#level .fields input")[2].Input("1");
        page.Find("#level .finding").TextContent.ShouldContain("1.48 mm"); // the cube's diagonal, 84.85 mm, times tan 1°
    }

    private IRenderedComponent<MouldPage> Measured()
    {
        var page = Render<MouldPage>();
        page.Find("input[name=shape][value=measured]").Change("measured");
        return page;
    }

    private static void Type(IRenderedComponent<MouldPage> page, int row, double height, double water)
    {
        page.FindAll(FormattableString.Invariant($"#reading-{row} input"))[0].Input(FormattableString.Invariant($"{height}"));
        page.FindAll(FormattableString.Invariant($"#reading-{row} input"))[1].Input(FormattableString.Invariant($"{water}"));
    }

    private static string?[] Values(IRenderedComponent<MouldPage> page) => [.. page.FindAll(".fill input").Select(i => i.GetAttribute("value"))];

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
