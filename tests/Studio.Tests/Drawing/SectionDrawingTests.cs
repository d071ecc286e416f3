using Bunit;
using Microsoft.AspNetCore.Components.Web;
using Studio.Drawing;

namespace Studio.Tests.Drawing;

public sealed class SectionDrawingTests : BunitContext
{
    public SectionDrawingTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void Small_it_is_one_picture_that_says_itself_in_words()
    {
        var drawing = Small(LayerState.Poured, LayerState.Curing);
        var svg = drawing.Find("svg");
        svg.GetAttribute("role").ShouldBe("img");
        svg.GetAttribute("aria-label").ShouldBe("Pyramid 100 mm; layer 1 of 2 poured, layer 2 curing");
        drawing.FindAll("text").ShouldBeEmpty();
    }

    [Fact]
    public void A_curing_layer_is_told_by_a_pattern_of_this_drawings_own()
    {
        var (one, two) = (Small(LayerState.Curing), Small(LayerState.Curing));
        one.Find("path.over").GetAttribute("fill").ShouldBe($"url(#{one.Find("pattern").Id})");
        one.Find("pattern").Id.ShouldNotBe(two.Find("pattern").Id);
        var before = one.Find("pattern").Id;
        one.Render(p => p.Add(d => d.Small, true));
        one.Find("pattern").Id.ShouldBe(before);
    }

    [Fact]
    public void A_colour_that_is_no_colour_never_reaches_the_page()
    {
        var view = SectionView.For(SectionViewTests.Pyramid(100, 100), [new SectionLayer("A", 0, 100, "url(javascript:alert(1))", LayerState.Poured)]);
        Render<SectionDrawing>(p => p.Add(d => d.View, view)).Find("path.band").GetAttribute("fill").ShouldBe("#cfd8d6");
    }

    // WCAG 2.2, 2.5.7 Dragging Movements: what is dragged can be done without dragging
    [Theory]
    [InlineData("ArrowUp", false, 41)]
    [InlineData("ArrowDown", false, 39)]
    [InlineData("ArrowUp", true, 50)]
    [InlineData("PageDown", false, 30)]
    public void A_line_moves_by_the_keyboard(string key, bool shift, double to)
    {
        LineMove? moved = null;
        var drawing = Editable(m => moved = m);
        drawing.FindAll(".grip")[0].KeyDown(new KeyboardEventArgs { Key = key, ShiftKey = shift });
        moved.ShouldBe(new LineMove(0, to, Last: true));
    }

    [Fact]
    public void Turned_over_up_still_moves_the_line_up_the_screen()
    {
        LineMove? moved = null;
        var drawing = Editable(m => moved = m, asStands: false);
        drawing.FindAll(".grip")[0].KeyDown(new KeyboardEventArgs { Key = "ArrowUp" });
        moved!.ToMm.ShouldBe(39);
    }

    [Fact]
    public async Task A_drag_is_read_in_millimetres_of_the_mould()
    {
        LineMove? moved = null;
        var drawing = Editable(m => moved = m);
        var sheet = new SectionLayout(drawing.Instance.View!, large: true, 620, 560, "metric");
        await drawing.InvokeAsync(() => drawing.Instance.DragAsync(0, sheet.Y(55.3), last: false));
        moved.ShouldBe(new LineMove(0, 55, Last: false));
    }

    [Fact]
    public void Every_movable_line_says_between_what_it_lies_and_how_high()
    {
        var grip = Editable(_ => { }).FindAll(".grip")[0];
        grip.GetAttribute("role").ShouldBe("slider");
        grip.GetAttribute("aria-label").ShouldBe("Line between Layer with a rather long name 1 and Layer with a rather long name 2");
        grip.GetAttribute("aria-valuetext").ShouldBe("40 mm");
        grip.GetAttribute("tabindex").ShouldBe("0");
    }

    private IRenderedComponent<SectionDrawing> Small(params LayerState[] states) => Render<SectionDrawing>(p => p
        .Add(d => d.View, SectionView.For(SectionViewTests.Pyramid(100, 100), states.Select((s, i) => new SectionLayer($"L{i}", i * 50, (i + 1) * 50, "#808080", s))))
        .Add(d => d.Small, true));

    private IRenderedComponent<SectionDrawing> Editable(Action<LineMove> moved, bool asStands = true) => Render<SectionDrawing>(p => p
        .Add(d => d.View, SectionViewTests.View(SectionViewTests.Pyramid(100, 100), [(0, 40), (40, 100)], asStands))
        .Add(d => d.Large, true).Add(d => d.Editable, true).Add(d => d.Moved, moved));
}
