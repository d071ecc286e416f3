using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Forms;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor.Services;
using Studio.Data.Files;
using Studio.Engine.Film;
using Studio.Film;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;
using Studio.Tests.Files;
using Studio.Tests.Pieces;

namespace Studio.Tests.Film;

public sealed class PhotographPartTests : BunitContext
{
    private readonly StudioDatabase database = new();
    private readonly string photos = Directory.CreateTempSubdirectory("photographs-").FullName;

    public PhotographPartTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        RenderTree.Add<CascadingValue<UnreadNumbers>>(p => p.Add(c => c.Value, new UnreadNumbers()));
        this.AddAuthorization().SetAuthorized("Mo").SetPolicies("making");
        Services.AddSingleton<TimeProvider>(database.Clock);
        Services.AddSingleton(new Studio.Tips.TipBook(database.Factory, database.News));
        Services.AddSingleton(new FilmBook(database.Factory, database.Clock, new SettingsBook(database.Factory, database.News), new PhotoStore(photos)));
        Services.AddSingleton<IStanding, AlwaysStands>().AddScoped<Who>();
    }

    [Fact]
    public async Task Plane_outside_the_mould_is_said_at_once_and_what_was_typed_stays()
    {
        var (part, session) = await PartAsync();
        Button(part, "Set a photograph into the piece").Click();
        part.Find("svg.sheet-drawing").GetAttribute("aria-label")!.ShouldContain("wide and");
        part.Find("input[type=radio][value=parallel]").Change("parallel");
        Field(part, "Depth").Input("300");
        part.WaitForAssertion(() => part.Find(".finding.stop").TextContent.ShouldContain("225 mm in front of the mould"));
        part.FindAll("svg.sheet-drawing").ShouldBeEmpty();
        Field(part, "Depth").GetAttribute("value").ShouldBe("300");
        session.Figures.Keepable.ShouldBeFalse();

        Field(part, "Depth").Input("30");
        part.WaitForAssertion(() => part.FindAll("svg.sheet-drawing").Count.ShouldBe(1));
        part.FindAll(".finding.stop").ShouldBeEmpty();
    }

    [Fact]
    public async Task Each_placement_asks_only_for_its_own_numbers()
    {
        var (part, _) = await PartAsync();
        Button(part, "Set a photograph into the piece").Click();
        string[] Labels() => [.. part.FindAll("label").Select(l => l.TextContent.Trim()).Where(t => t.StartsWith("Depth", StringComparison.Ordinal) || t.StartsWith("Leans", StringComparison.Ordinal) || t.StartsWith("From a height", StringComparison.Ordinal) || t.StartsWith("Height it lies", StringComparison.Ordinal))];
        Labels().ShouldBe(["From a height of [mm]"]);
        part.Find("input[type=radio][value=parallel]").Change("parallel");
        Labels().ShouldBe(["Depth [mm]", "From a height of [mm]"]);
        part.Find("input[type=radio][value=flat]").Change("flat");
        Labels().ShouldBe(["Height it lies at [mm]"]);
        part.Find("input[type=radio][value=free]").Change("free");
        Labels().ShouldBe(["Leans back from upright [°]", "From a height of [mm]"]);
    }

    [Fact]
    public async Task Sent_picture_is_chosen_shown_and_made_ready_step_by_step_back_and_forth()
    {
        var (part, session) = await PartAsync();
        Button(part, "Set a photograph into the piece").Click();
        using var bitmap = Pictures.Quarters(600, 400);
        part.FindComponent<InputFile>().UploadFiles(InputFileContent.CreateFromBinary(Pictures.Jpeg(bitmap), "harbour.jpg", contentType: "image/jpeg"));
        part.WaitForAssertion(() => session.Piece.Sheets[0].Picture.ShouldNotBeNull(), TimeSpan.FromSeconds(10));
        part.FindAll("svg.sheet-drawing image").Count.ShouldBe(2);

        Button(part, "Turn right").Click();
        Slider(part, "Brightness").Change("20");
        session.Piece.Sheets[0].Recipe.ShouldBe(new PictureRecipe { QuarterTurns = 1, BrightnessPercent = 20 });
        part.Find("svg.sheet-drawing image").GetAttribute("href")!.ShouldContain("/1_0_0_0_0_0_0_20_0_0.jpg");
        Button(part, "Undo").Click();
        Button(part, "Undo").Click();
        session.Piece.Sheets[0].Recipe.ShouldBe(PictureRecipe.AsItIs);
        Button(part, "Do it again").Click();
        session.Piece.Sheets[0].Recipe.ShouldBe(new PictureRecipe { QuarterTurns = 1 });
        session.Undo(); // the page's own undo takes the same steps back
        session.Piece.Sheets[0].Recipe.ShouldBe(PictureRecipe.AsItIs);
    }

    [Fact]
    public async Task Every_input_has_a_name()
    {
        var (part, _) = await PartAsync();
        Button(part, "Set a photograph into the piece").Click();
        foreach (var key in FilmPlacement.All.Select(p => p.Key))
        {
            part.Find($"input[type=radio][value={key}]").Change(key);
            part.FindAll("input, select").ShouldAllBe(i => i.Closest("label") != null || part.FindAll("label").Any(l => l.GetAttribute("for") == i.Id && i.Id != null));
        }
    }

    private async Task<(IRenderedComponent<PhotographPart> Part, DesignSession Session)> PartAsync()
    {
        var commission = await PieceSamples.CommissionAsync(database);
        var id = (await PieceSamples.Book(database).CreateAsync(commission, "Whistle", 1, PieceStart.Colours, "Mo")).Id;
        var session = new DesignSession((await PieceSamples.Book(database).DeskAsync(id))!);
        var part = Render<PhotographPart>(p => p.Add(x => x.Session, session));
        session.Changed += () => _ = part.InvokeAsync(() => part.Render(p => p.Add(x => x.Session, session)));
        return (part, session);
    }

    private static IElement Button(IRenderedComponent<PhotographPart> part, string words) => part.FindAll("button").Single(b => b.TextContent.Trim() == words);

    private static IElement Slider(IRenderedComponent<PhotographPart> part, string label) => part.FindAll("label.slide").Single(l => l.TextContent.Trim().StartsWith(label, StringComparison.Ordinal)).QuerySelector("input")!;

    private static IElement Field(IRenderedComponent<PhotographPart> part, string label)
    {
        var found = part.FindAll("label").First(l => l.TextContent.Trim().StartsWith(label, StringComparison.Ordinal));
        return part.Find("#" + found.GetAttribute("for"));
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        if (disposing)
        {
            database.Dispose();
            Directory.Delete(photos, recursive: true);
        }
    }
}
