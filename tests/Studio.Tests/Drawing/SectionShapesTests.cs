using CsCheck;
using Studio.Drawing;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Tests.Drawing;

/// <summary>Every shape's section against areas worked out by other means.</summary>
public sealed class SectionShapesTests
{
    private const double R = 50;

    // circle segment: R² acos((R − h)/R) − (R − h) √(2 R h − h²); Machinery's Handbook, Areas of Plane Figures
    [Fact]
    public void A_spheres_layer_is_a_circle_segment_and_its_wall_a_circle()
    {
        var view = View("sphere", ("diameterMm", 2 * R), ("openingDiameterMm", 40));
        foreach (var band in view.Bands)
        {
            var expected = Segment(band.Layer.ToMm) - Segment(band.Layer.FromMm);
            SectionViewTests.Area(band.Rings).ShouldBe(expected, expected * 1e-3);
            foreach (var (a, b) in band.Rings[0].Zip(band.Rings[0].Skip(1)).Where(e => e.First.XMm * e.Second.XMm > 0))
            {
                var middle = Math.Sqrt(Math.Pow((a.XMm + b.XMm) / 2, 2) + Math.Pow(((a.ZMm + b.ZMm) / 2) - R, 2));
                (R - middle).ShouldBeLessThan(0.1);
            }
        }
    }

    [Fact]
    public void A_sphere_shows_its_opening_and_its_greatest_width()
    {
        var sheet = new SectionLayout(View("sphere", ("diameterMm", 2 * R), ("openingDiameterMm", 60)), large: true, 620, 560, "metric");
        var across = sheet.Dimensions.Where(d => !d.Upright).Select(d => d.Text).ToList();
        across.ShouldBe(["60 mm", "100 mm"]);
        sheet.Dimensions.Max(d => d.Y1).ShouldBeLessThan(sheet.Height);
    }

    // a round mould's section at a height is as wide as the circle of the engine's area: 2 √(A/π), integrated by strips
    [Theory]
    [InlineData("dome")]
    [InlineData("cone")]
    [InlineData("measured")]
    public void A_round_moulds_layers_have_the_area_of_the_engines_section(string shape)
    {
        var mould = MouldShapes.Make(shape switch
        {
            "dome" => new MouldSpec("dome", new Dictionary<string, double> { ["diameterMm"] = 90 }),
            "cone" => new MouldSpec("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = 20, ["topDiameterMm"] = 70, ["heightMm"] = 60 }),
            _ => new MouldSpec("measured", new Dictionary<string, double>()) { Readings = [new(0, 0), new(10, 20), new(25, 90), new(40, 130), new(60, 260)] },
        }).Value;
        var h = mould.HeightMm;
        foreach (var band in SectionView.For(mould, SectionViewTests.Layers([(0, h * 0.3), (h * 0.3, h * 0.8), (h * 0.8, h)])).Bands)
        {
            var expected = SectionViewTests.Simpson(z => 2 * Math.Sqrt(mould.AreaMm2(z) / Math.PI), band.Layer.FromMm, band.Layer.ToMm);
            SectionViewTests.Area(band.Rings).ShouldBe(expected, expected * 2e-3);
        }
    }

    [Fact]
    public void A_measured_mould_says_that_its_outline_is_not_known()
    {
        var view = SectionView.For(new MouldSpec("measured", new Dictionary<string, double>()) { Readings = [new(0, 0), new(10, 20), new(30, 90)] }, [])!;
        view.Caveat.ShouldContain("its outline is not known");
        view.Words.ShouldBe("Measured with water 30 mm, drawn round because its outline is not known; no layers yet");
    }

    [Fact]
    public void A_small_drawing_of_a_sphere_needs_few_points()
    {
        var sphere = MouldShapes.Make(new MouldSpec("sphere", new Dictionary<string, double> { ["diameterMm"] = 100, ["openingDiameterMm"] = 30 })).Value;
        SectionView.For(sphere, [], toleranceMm: SectionView.SmallMm).Outline[0].Count.ShouldBeLessThan(44);
        SectionView.For(sphere, []).Outline[0].Count.ShouldBeLessThan(200);
    }

    [Fact]
    public void A_meshs_islands_stand_apart_and_join_where_they_meet()
    {
        var view = SectionView.For(MeshShapes.Mould(MeshShapes.U()), SectionViewTests.Layers([(0, 10), (10, 30), (5, 50)]));
        view.Bands.Select(b => b.Rings.Count).ShouldBe([1, 2, 1]);
        view.Bands.Select(b => SectionViewTests.Area(b.Rings)).ShouldBe([600, 2 * 20 * 20, 300 + (2 * 20 * 40)], 1e-9);
        view.SpansMm(20).ShouldBe([(-30.0, -10.0), (10.0, 30.0)]);
        view.SpansMm(5).ShouldBe([(-30.0, 30.0)]);
        view.SpanMm(50).ShouldBe((-30.0, 30.0));
    }

    [Fact]
    public void A_meshs_overhang_and_a_hole_are_drawn_as_they_are()
    {
        SectionView.For(MeshShapes.Mould(MeshShapes.Mushroom()), SectionViewTests.Layers([(0, 30), (30, 50), (20, 40)]))
            .Bands.Select(b => SectionViewTests.Area(b.Rings)).ShouldBe([600, 1200, 200 + 600], 1e-9);
        var frame = SectionView.For(MeshShapes.Mould(MeshShapes.Frame()), SectionViewTests.Layers([(0, 60), (25, 35), (0, 30)]));
        frame.Bands.Select(b => b.Rings.Count).ShouldBe([2, 2, 1]);
        frame.Bands.Select(b => SectionViewTests.Area(b.Rings)).ShouldBe([3600 - 400, 400, 1800 - 200], 1e-9);
    }

    // any convex solid cut in the middle: the cone of the engine against the same cone as facets
    [Fact]
    public void A_mesh_of_a_known_mould_is_cut_as_that_mould()
    {
        var cone = MouldShapes.Make(new MouldSpec("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = 20, ["topDiameterMm"] = 70, ["heightMm"] = 60 })).Value;
        Gen.Double[1, 59].Sample(z =>
        {
            var mesh = SectionView.For(MeshShapes.Mould(cone.Surface()), SectionViewTests.Layers([(0, z)]));
            SectionViewTests.Area(mesh.Bands[0].Rings).ShouldBe(SectionViewTests.Area(SectionView.For(cone, SectionViewTests.Layers([(0, z)])).Bands[0].Rings), 0.02 * 60);
        }, iter: 30);
    }

    // volumes by the divergence theorem against boxes counted by hand
    [Fact]
    public void A_slab_of_a_mesh_is_a_closed_solid_of_the_right_volume()
    {
        static double Between(TriangleMesh mesh, double low, double high) => MeshSlab.Between(mesh, low, high) is var s ? MeshShapes.Volume(s.Wall, s.Floor, s.Top) : 0;
        Between(MeshShapes.U(), 5, 20).ShouldBe(20 * ((60 * 5) + (40 * 10)), 1e-9);
        Between(MeshShapes.U(), 10, 50).ShouldBe(20 * 40 * 40, 1e-9);
        Between(MeshShapes.Mushroom(), 0, 30).ShouldBe(20 * 20 * 30, 1e-9);
        Between(MeshShapes.Mushroom(), 30, 50).ShouldBe(20 * 60 * 20, 1e-9);
        Between(MeshShapes.Frame(), 10, 30).ShouldBe(20 * ((60 * 20) - (20 * 10)), 1e-9);
    }

    [Theory]
    [InlineData("pyramid", "baseMm", 150, "heightMm", 150, 1e-9)]
    [InlineData("sphere", "diameterMm", 100, "openingDiameterMm", 40, 1e-3)]
    [InlineData("cuboid", "widthMm", 80, "depthMm", 50, 1e-9)]
    public void Slabs_of_the_engines_surface_hold_what_the_engine_says(string shape, string a, double x, string b, double y, double facets)
    {
        var sizes = new Dictionary<string, double> { [a] = x, [b] = y };
        if (shape == "cuboid")
        {
            sizes["heightMm"] = 60;
            sizes["draftDegrees"] = 5;
        }

        var mould = MouldShapes.Make(new MouldSpec(shape, sizes)).Value;
        var surface = mould.Surface();
        Gen.Select(Gen.Double[0, 1], Gen.Double[0, 1]).Where((s, t) => Math.Abs(s - t) > 0.01).Sample((s, t) =>
        {
            var (low, high) = (Math.Min(s, t) * mould.HeightMm, Math.Max(s, t) * mould.HeightMm);
            var slab = MeshSlab.Between(surface, low, high);
            var expected = (mould.VolumeMl(high) - mould.VolumeMl(low)) * 1000;
            MeshShapes.Volume(slab.Wall, slab.Floor, slab.Top).ShouldBe(expected, (mould.CapacityMl * 1000 * facets) + 1e-6);
        }, iter: 30);
    }

    [Fact]
    public void A_thinned_mesh_keeps_its_shape()
    {
        var sphere = MouldShapes.Make(new MouldSpec("sphere", new Dictionary<string, double> { ["diameterMm"] = 100, ["openingDiameterMm"] = 30 })).Value.Surface();
        var thin = MeshThinning.ToAtMost(sphere, 4000);
        thin.TriangleCount.ShouldBeInRange(1000, 4000);
        MeshShapes.Volume(thin).ShouldBe(MeshShapes.Volume(sphere), MeshShapes.Volume(sphere) * 0.03);
        MeshThinning.ToAtMost(thin, 4000).ShouldBeSameAs(thin);
    }

    [Fact]
    public void A_sheet_is_a_line_on_edge_and_an_area_from_its_face()
    {
        Point3[] along = [new(-30, 5, 10), new(30, 5, 10), new(30, 5, 60), new(-30, 5, 60)];
        Point3[] onEdge = [new(12, -30, 10), new(12, 30, 10), new(12, 30, 60), new(12, -30, 60)];
        var view = SectionView.For(MouldShapes.Make(SectionViewTests.Pyramid(150, 150)).Value, [], sheets: [new DrawnFilm("Meadow", [along]), new DrawnFilm("Hive", [onEdge])], asStands: false);
        view.Sheets[0].Filled.ShouldBeTrue();
        SectionViewTests.Area(view.Sheets[0].Rings).ShouldBe(60 * 50, 1e-9);
        view.Sheets[1].Filled.ShouldBeFalse();
        view.Sheets[1].Points.Select(p => p.ZMm).Order().ShouldBe([90, 140]);
        view.Words.ShouldEndWith("Meadow seen from its face; Hive seen on edge");
        var plan = PlanView.Of(view);
        plan.Sheets.ShouldAllBe(s => !s.Filled && s.Rings.Single().Count == 2);
    }

    [Fact]
    public void Turned_over_and_back_it_is_the_same_drawing()
    {
        var view = SectionViewTests.View(SectionViewTests.Pyramid(150, 120), [(0, 40), (40, 120)]);
        var back = view.TurnedOver().TurnedOver();
        back.Outline[0].ShouldBe(view.Outline[0]);
        back.Bands.Select(b => b.Layer).ShouldBe(view.Bands.Select(b => b.Layer));
    }

    private static double Segment(double h) => (R * R * Math.Acos((R - h) / R)) - ((R - h) * Math.Sqrt(Math.Max(0, (2 * R * h) - (h * h))));

    private static SectionView View(string shape, params (string Name, double Value)[] sizes)
    {
        var mould = MouldShapes.Make(new MouldSpec(shape, sizes.ToDictionary(s => s.Name, s => s.Value))).Value;
        return SectionView.For(mould, SectionViewTests.Layers([(0, 20), (20, 55), (55, mould.HeightMm)]));
    }
}
