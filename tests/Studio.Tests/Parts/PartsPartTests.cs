using AngleSharp.Dom;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Engine.Parts;
using Studio.Parts;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;
using Studio.Tests.Pieces;
using Studio.Tips;

namespace Studio.Tests.Parts;

public sealed class PartsPartTests : BunitContext
{
    private readonly StudioDatabase database = new();

    public PartsPartTests()
    {
        JSInterop.Mode = JSRuntimeMode.Loose;
        Services.AddMudServices();
        RenderTree.Add<CascadingValue<UnreadNumbers>>(p => p.Add(c => c.Value, new UnreadNumbers()));
        Services.AddSingleton(new TipBook(database.Factory, database.News));
    }

    [Fact]
    public void Without_a_box_there_is_nothing_to_cut()
    {
        var piece = PieceSamples.Piece();
        Show(piece).Markup.Trim().ShouldBeEmpty();
    }

    [Fact]
    public void A_box_alone_is_drawn_and_listed_before_anything_is_said()
    {
        var piece = PartsSamples.Piece();
        piece.Parts = null;
        var part = Show(piece);
        Cells(part).ShouldBe(["80 × 41 mm", "54 × 41 mm"]);
        part.FindAll("svg.parts").Count.ShouldBe(4); // joint, two parts, one sheet
        part.Find("svg.parts").GetAttribute("aria-label")!.ShouldContain("both diagonals 100 mm");
    }

    [Fact]
    public void A_number_typed_recomputes_at_once_and_can_be_undone()
    {
        var piece = PartsSamples.Piece();
        var session = new DesignSession(PieceSamples.Desk(piece));
        var part = Show(session);
        Type(part, "Reaches beyond the opening", "20");
        Cells(part)[^1].ShouldBe("114 × 94 mm");
        session.Dirty.ShouldBeTrue();
        session.Undo();
        part.Render();
        Cells(part)[^1].ShouldBe("102 × 82 mm");
    }

    [Fact]
    public void What_cannot_be_used_is_said_at_its_field_and_the_box_stays_drawn()
    {
        var part = Show(PartsSamples.Piece());
        Type(part, "Pilot hole in the base", "0");
        part.Markup.ShouldContain("Must be above zero");
        Cells(part).ShouldBe(["80 × 41 mm", "54 × 41 mm"]);
        Type(part, "Pilot hole in the base", "two");
        part.Markup.ShouldContain("is not a number");
    }

    [Fact]
    public void A_cover_and_feet_come_by_a_tick_and_a_hole_that_cannot_stand_is_crossed_out()
    {
        var piece = PartsSamples.Piece();
        piece.Parts = null;
        var session = new DesignSession(PieceSamples.Desk(piece));
        var part = Show(session);
        part.FindAll("label.tick input").Single(i => i.ParentElement!.TextContent.Contains("A plate covers", StringComparison.Ordinal)).Change(true);
        part.Render();
        Cells(part).Count.ShouldBe(3);
        part.FindAll("path.cross").ShouldBeEmpty();
        Type(part, "Reaches beyond the opening", "4");
        part.FindAll("path.cross").Count.ShouldBe(4);
        part.FindAll(".finding").Select(f => f.TextContent).ShouldContain(t => t.Contains("at least 5 mm", StringComparison.Ordinal));
    }

    [Fact]
    public void Fittings_say_where_they_stand()
    {
        var piece = PartsSamples.Piece();
        piece.Parts = piece.Parts! with { Fittings = [new FittingSpec { Name = "Battery holder", WidthMm = 60, DepthMm = 30, HeightMm = 16 }] };
        var part = Show(piece);
        part.Find(".stands").TextContent.ShouldContain("Stands 1 mm from the left, 1 mm from the front, 1 mm above the bottom");
    }

    [Fact]
    public void Hours_of_light_come_with_what_they_rest_on()
    {
        var piece = PartsSamples.Piece();
        piece.Parts = piece.Parts! with { Light = new LightSpec { CurrentMa = 100 } };
        var words = Show(piece).Find("#light-hours").TextContent;
        words.ShouldContain("about 14 to 29 hours");
        words.ShouldContain("lygte-info.dk");
    }

    [Fact]
    public void A_box_that_pokes_through_a_face_says_so_and_cuts_nothing()
    {
        var piece = PartsSamples.Piece();
        piece.Former = piece.Former! with { OuterWidthMm = 140 };
        var part = Show(piece);
        part.Find("p.wrong").TextContent.ShouldContain("pokes through");
        part.FindAll("table").ShouldBeEmpty();
    }

    [Fact]
    public async Task What_was_chosen_is_kept_and_the_papers_show_it()
    {
        await PieceSamples.CommissionAsync(database);
        var book = PieceSamples.Book(database);
        var made = await book.CreateAsync(1, "Lamp", 1, "plain", "Mo");
        var papers = new PartsPaperBook(book, new SettingsBook(database.Factory, database.News), database.Clock);
        (await papers.PaperAsync(made.Id)).ShouldBeNull();

        var desk = (await book.DeskAsync(made.Id))!;
        (desk.Piece.Former, desk.Piece.Parts) = (PartsSamples.Piece().Former, PartsSamples.Piece().Parts! with { Fittings = [new FittingSpec { Name = "Switch", WidthMm = 9 }], Light = new LightSpec { CurrentMa = 12.5 } });
        (await book.KeepAsync(desk.Piece, desk.ReadAs, "Mo")).Ok.ShouldBeTrue();
        var kept = (await book.DeskAsync(made.Id))!.Piece.Parts!;
        (kept.Cover, kept.Feet, kept.Light, kept.Fittings.Single()).ShouldBe((new CoverSpec(), new FeetSpec(), new LightSpec { CurrentMa = 12.5 }, new FittingSpec { Name = "Switch", WidthMm = 9 }));

        (await papers.PaperAsync(made.Id))!.FileName.ShouldBe("parts-26-014.pdf");
        (await papers.SvgAsync(made.Id, 1, 1)).ShouldNotBeNull();
        (await papers.SvgAsync(made.Id, 1, 2)).ShouldBeNull();
        (await papers.SvgAsync(made.Id, 2, 1)).ShouldBeNull();
    }

    private IRenderedComponent<PartsPart> Show(Piece piece) => Show(new DesignSession(PieceSamples.Desk(piece)));

    private IRenderedComponent<PartsPart> Show(DesignSession session)
    {
        Render<MudPopoverProvider>();
        var part = Render<PartsPart>(p => p.Add(x => x.Session, session));
        session.Changed += () => part.Render();
        return part;
    }

    private static List<string> Cells(IRenderedComponent<PartsPart> part) => [.. part.FindAll("td[data-label=Size]").Select(c => c.TextContent)];

    private static void Type(IRenderedComponent<PartsPart> part, string label, string text)
    {
        var id = part.FindAll("label").First(l => l.TextContent.StartsWith(label, StringComparison.Ordinal)).GetAttribute("for");
        part.Find("#" + id).Input(text);
    }
}
