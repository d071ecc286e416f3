using Bunit;
using Studio.Drawing;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Tests.Drawing;

public sealed class PlanDrawingTests : BunitContext
{
    private static readonly FormerSpec Former = new() { OuterWidthMm = 60, OuterDepthMm = 40, FromMm = 100, WallMm = 3, FloorMm = 120 };

    public PlanDrawingTests() => JSInterop.Mode = JSRuntimeMode.Loose;

    [Fact]
    public void At_the_rim_it_says_the_moulds_and_the_boxs_sizes()
    {
        var plan = PlanView.Of(Pyramid());
        plan.Words.ShouldBe("Pyramid from above at the rim: 150 × 150 mm. Layer with a rather long name 2 lies there. A box for lights in the middle, 60 × 40 mm.");
        Render<PlanDrawing>(p => p.Add(d => d.View, Pyramid())).FindAll("text").Select(t => t.TextContent).ShouldBe(["150 mm", "150 mm", "60 mm", "40 mm"]);
    }

    // a square pyramid is half as wide at half its height, and the box begins above it
    [Fact]
    public void Lower_down_the_pyramid_is_narrower_and_the_box_is_not_there_yet()
    {
        var plan = PlanView.Of(Pyramid(), 75);
        (plan.Extent.High.XMm - plan.Extent.Low.XMm).ShouldBe(75, 1e-9);
        plan.Former.ShouldBeNull();
        PlanView.Of(Pyramid(), 110).ResinInFormer.ShouldBeTrue();
    }

    [Fact]
    public void The_reader_chooses_the_height()
    {
        var drawing = Render<PlanDrawing>(p => p.Add(d => d.View, Pyramid()).Add(d => d.Choose, true));
        drawing.FindAll("option").Select(o => o.TextContent).ShouldBe(["the rim", "the top of 2 Layer with a rather long name 2, 150 mm", "the top of 1 Layer with a rather long name 1, 75 mm"]);
        drawing.Find("select").Change("1");
        drawing.Find("svg").GetAttribute("aria-label")!.ShouldStartWith("Pyramid from above at 75 mm: 75 × 75 mm. Layer with a rather long name 1 lies there");
    }

    [Fact]
    public void Everything_of_a_sphere_keeps_to_the_drawing_though_its_rim_is_small()
    {
        var view = SectionView.For(new MouldSpec("sphere", new Dictionary<string, double> { ["diameterMm"] = 120, ["openingDiameterMm"] = 60 }), SectionViewTests.Layers([(0, 60)]))!;
        var plan = PlanView.Of(view);
        (plan.Extent.High.XMm - plan.Extent.Low.XMm).ShouldBe(60, 0.01);
        (plan.Whole.High.XMm - plan.Whole.Low.XMm).ShouldBe(120, 0.05);
    }

    [Fact]
    public void A_mesh_in_two_arms_is_seen_as_two()
    {
        var view = SectionView.For(MeshShapes.Mould(MeshShapes.U()), []);
        PlanView.Of(view, 30).Outline.Count.ShouldBe(2);
        PlanView.Of(view).Outline.Count.ShouldBe(2);
        PlanView.Of(view, 0).Outline.Count.ShouldBe(1);
    }

    private static SectionView Pyramid() => SectionView.For(MouldShapes.Make(SectionViewTests.Pyramid(150, 150)).Value, SectionViewTests.Layers([(0, 75), (75, 150)]), Former);
}
