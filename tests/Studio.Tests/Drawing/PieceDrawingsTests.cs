using Bunit;
using Studio.Drawing;
using Studio.Engine.Moulds;

namespace Studio.Tests.Drawing;

public sealed class PieceDrawingsTests : BunitContext
{
    public PieceDrawingsTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void One_drawing_shows_at_a_time_and_the_switch_says_which()
    {
        var drawings = Set();
        drawings.FindAll(".which button").Select(b => b.TextContent).ShouldBe(["Section", "Both ways up", "Plan", "Turning"]);
        Pressed(drawings).ShouldBe("Section");
        drawings.FindAll(".grip").Count.ShouldBe(2);
        Choose(drawings, "Plan");
        Pressed(drawings).ShouldBe("Plan");
        drawings.FindAll(".grip").ShouldBeEmpty();
        drawings.Find("svg").GetAttribute("aria-label")!.ShouldStartWith("Pyramid from above at the rim");
    }

    [Fact]
    public void Both_ways_up_the_captions_say_which_is_which()
    {
        var drawings = Set();
        Choose(drawings, "Both ways up");
        drawings.FindAll("figcaption").Select(c => c.TextContent).ShouldBe(["As cast", "As it will stand"]);
        drawings.FindAll("svg")[1].GetAttribute("aria-label")!.ShouldContain("turned over as it will stand");
    }

    [Fact]
    public void The_turning_view_is_a_picture_with_words_that_the_keyboard_reaches()
    {
        JSInterop.SetupModule("/turning.js").SetupModule("begin", _ => true).Setup<bool>("show", _ => true).SetResult(true);
        var drawings = Set();
        Choose(drawings, "Turning");
        var canvas = drawings.Find("canvas");
        canvas.GetAttribute("role").ShouldBe("img");
        canvas.GetAttribute("tabindex").ShouldBe("0");
        canvas.GetAttribute("aria-label").ShouldBe("In three dimensions: Pyramid 150 mm; 2 layers, none poured yet");
        drawings.FindAll("[data-act]").Count.ShouldBe(8);
    }

    [Fact]
    public void Without_three_dimensions_it_says_so_and_points_to_the_others()
    {
        var picture = JSInterop.SetupModule("/turning.js").SetupModule("begin", _ => true);
        picture.Setup<bool>("show", _ => true).SetResult(false);
        var drawings = Set();
        Choose(drawings, "Turning");
        drawings.WaitForAssertion(() => drawings.Find("p.none").TextContent.ShouldContain("The section and the plan show the same piece."));
        drawings.FindAll("[data-act]").ShouldBeEmpty();
    }

    private static string Pressed(IRenderedComponent<PieceDrawings> drawings) => drawings.Find(".which [aria-pressed=true]").TextContent;

    private static void Choose(IRenderedComponent<PieceDrawings> drawings, string words) => drawings.FindAll(".which button").First(b => b.TextContent == words).Click();

    private IRenderedComponent<PieceDrawings> Set() => Render<PieceDrawings>(p => p
        .Add(d => d.View, SectionView.For(MouldShapes.Make(SectionViewTests.Pyramid(150, 150)).Value, SectionViewTests.Layers([(0, 75), (75, 150)])))
        .Add(d => d.Editable, true));
}
