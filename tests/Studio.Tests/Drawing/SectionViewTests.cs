using CsCheck;
using Studio.Drawing;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Papers;

namespace Studio.Tests.Drawing;

public sealed class SectionViewTests
{
    // a square pyramid of base b and height h cut through the middle is a triangle of b·h/2; its part below z is the similar triangle (z/h)²
    [Fact]
    public void A_pyramid_half_full_shows_a_quarter_of_its_section()
    {
        var view = View(Pyramid(150, 150), [(0, 75), (75, 150)]);
        Area(view.Outline).ShouldBe(150 * 150 / 2.0, 1e-9);
        Area(view.Bands[0].Rings).ShouldBe(Area(view.Outline) / 4, 1e-9);
    }

    // the same numbers by another way: the engine's area of a square cross-section is the width squared, integrated by Simpson's rule over many strips
    [Fact]
    public void Every_layers_polygon_has_the_area_of_the_engines_section()
    {
        Gen.Select(Gen.Double[20, 400], Gen.Double[20, 400], Gen.Double[0.05, 0.95]).Sample((b, h, share) =>
        {
            var mould = MouldShapes.Make(Pyramid(b, h)).Value;
            var view = SectionView.For(mould, Layers([(0, h * share), (h * share, h)]));
            foreach (var band in view.Bands)
            {
                var expected = Simpson(z => Math.Sqrt(mould.AreaMm2(z)), band.Layer.FromMm, band.Layer.ToMm);
                Area(band.Rings).ShouldBe(expected, expected * 1e-6);
            }
        });
    }

    [Theory]
    [InlineData(80, 80, "Cylinder")]
    [InlineData(96, 100, "Sloping round")]
    [InlineData(0, 100, "Cone")]
    public void Only_a_mould_with_a_point_is_called_a_cone(double bottom, double top, string words)
    {
        var spec = new MouldSpec("cone", new Dictionary<string, double>(StringComparer.Ordinal) { ["bottomDiameterMm"] = bottom, ["topDiameterMm"] = top, ["heightMm"] = 15 });
        SectionWords.Of(View(spec, [])).ShouldStartWith(words + " 15 mm");
        SectionWords.Of(View(spec with { VolumeFactor = 1.02 }, [])).ShouldStartWith(words + " 15 mm");
        Studio.Moulds.MouldWords.Shape(spec).ShouldBe(words);
    }

    [Theory]
    [InlineData("cone", "bottomDiameterMm", 40, "topDiameterMm", 90)]
    [InlineData("cuboid", "widthMm", 80, "depthMm", 50)]
    public void A_box_and_a_cone_are_drawn_as_wide_as_they_are(string shape, string a, double x, string b, double y)
    {
        var spec = new MouldSpec(shape, new Dictionary<string, double> { [a] = x, [b] = y, ["heightMm"] = 60 });
        var view = View(spec, [(0, 20), (20, 60)]);
        var top = shape == "cone" ? y : x;
        view.WidestMm.ShouldBe(Math.Max(x, top), 1e-9);
        Area(view.Outline).ShouldBe((x + top) / 2 * 60, 1e-9);
        (Area(view.Bands[0].Rings) + Area(view.Bands[1].Rings)).ShouldBe(Area(view.Outline), 1e-9);
    }

    [Fact]
    public void Turned_over_the_first_layer_lies_on_top()
    {
        var view = View(Pyramid(150, 120), [(0, 40), (40, 120)], asStands: false);
        view.Bands[0].Rings[0].Max(p => p.ZMm).ShouldBe(120);
        view.Bands[0].Rings[0].Where(p => p.ZMm >= 120).ShouldAllBe(p => p.XMm == 0);
        view.Outline[0].Where(p => p.ZMm <= 0).Max(p => p.XMm).ShouldBe(75, 1e-9);
    }

    [Fact]
    public void A_layer_above_the_rim_is_cut_there_and_one_that_does_not_exist_has_no_outline()
    {
        var view = View(Pyramid(150, 150), [(100, 900), (double.NaN, -3)]);
        view.Bands[0].Rings[0].Max(p => p.ZMm).ShouldBe(150);
        view.Bands[1].Empty.ShouldBeTrue();
    }

    [Fact]
    public void A_hollow_box_shows_two_walls_and_the_room_above_its_floor()
    {
        var former = new FormerSpec { OuterWidthMm = 40, OuterDepthMm = 30, FromMm = 90, WallMm = 3, FloorMm = 100 };
        var view = SectionView.For(MouldShapes.Make(Pyramid(150, 150)).Value, Layers([(0, 150)]), former);
        view.Former.Count(f => !f.Open).ShouldBe(2);
        var room = view.Former.Single(f => f.Open);
        (room.RightMm - room.LeftMm, room.LowMm, room.HighMm).ShouldBe((34, 100, 150));
    }

    [Fact]
    public void The_words_say_the_mould_and_how_far_each_layer_is()
    {
        var layers = new[] { LayerState.Poured, LayerState.Curing, LayerState.Planned, LayerState.Planned }
            .Select((s, i) => new SectionLayer($"L{i}", i * 30, (i + 1) * 30, "#808080", s));
        SectionView.For(MouldShapes.Make(Pyramid(150, 150)).Value, layers).Words
            .ShouldBe("Pyramid 150 mm; layer 1 of 4 poured, layer 2 curing, layers 3 and 4 not yet poured");
    }

    [Fact]
    public void A_mould_that_cannot_be_made_has_no_view() =>
        SectionView.For(new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = -4, ["heightMm"] = 150 }), []).ShouldBeNull();

    [Fact]
    public void A_paper_gets_the_same_polygons()
    {
        var view = View(Pyramid(150, 150), [(0, 75), (75, 150)]);
        var paper = SectionPaper.Of(view);
        paper.Shapes.OfType<PaperPolygon>().Take(2).Select(p => p.Points.Select(q => new SectionPoint(q.XMm, q.ZMm)))
            .Zip(view.Bands).ShouldAllBe(pair => pair.First.SequenceEqual(pair.Second.Rings[0]));
        paper.Alt.ShouldContain("layers, none poured yet");
    }

    internal static MouldSpec Pyramid(double b, double h) => new("pyramid", new Dictionary<string, double> { ["baseMm"] = b, ["heightMm"] = h });

    internal static IEnumerable<SectionLayer> Layers((double From, double To)[] heights) =>
        heights.Select((h, i) => new SectionLayer($"Layer with a rather long name {i + 1}", h.From, h.To, "#7d6a94", LayerState.Planned, Key: i) { Movable = true });

    internal static SectionView View(MouldSpec mould, (double From, double To)[] heights, bool asStands = true) =>
        SectionView.For(mould, Layers(heights), asStands: asStands)!;

    // the shoelace formula; a hole turns the other way round than what it lies in
    internal static double Area(IReadOnlyList<IReadOnlyList<SectionPoint>> rings) => Math.Abs(rings.Sum(p =>
        Enumerable.Range(0, p.Count).Sum(i => (p[i].XMm * p[(i + 1) % p.Count].ZMm) - (p[(i + 1) % p.Count].XMm * p[i].ZMm)))) / 2;

    internal static double Simpson(Func<double, double> f, double a, double b)
    {
        const int Strips = 200;
        var h = (b - a) / Strips;
        return h / 3 * Enumerable.Range(0, Strips + 1).Sum(i => f(Math.Min(b, a + (i * h))) * (i is 0 or Strips ? 1 : i % 2 == 1 ? 4 : 2));
    }
}
