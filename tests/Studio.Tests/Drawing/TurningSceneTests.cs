using System.Runtime.InteropServices;
using Studio.Drawing;
using Studio.Engine.Layers;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Tests.Drawing;

public sealed class TurningSceneTests
{
    private static readonly FormerSpec Former = new() { OuterWidthMm = 60, OuterDepthMm = 40, FromMm = 100, WallMm = 3, FloorMm = 120 };

    [Fact]
    public void Every_layer_has_its_walls_and_a_top_of_the_moulds_own_area()
    {
        var mould = MouldShapes.Make(SectionViewTests.Pyramid(150, 150)).Value;
        var parts = TurningScene.Of(SectionView.For(mould, SectionViewTests.Layers([(0, 50), (50, 90)]))).Parts;
        parts.Count(p => p.Kind == "layer").ShouldBe(2);
        var radius = Math.Sqrt((150 * 150) * 3) / 2;
        parts.Where(p => p.Kind == "top").Select(p => Area(p) * radius * radius).ToArray().ShouldBe([mould.AreaMm2(50), mould.AreaMm2(90)], 5);
        parts.Count(p => p.Kind == "glass").ShouldBe(1);
    }

    [Fact]
    public void A_top_leaves_the_former_out_walls_alone_below_its_floor()
    {
        var mould = MouldShapes.Make(SectionViewTests.Pyramid(150, 150)).Value;
        var parts = TurningScene.Of(SectionView.For(mould, SectionViewTests.Layers([(0, 110), (110, 150)]), Former)).Parts;
        var radius = Math.Sqrt((150 * 150) * 3) / 2;
        parts.Where(p => p.Kind == "top").Select(p => Area(p) * radius * radius).ToArray()
            .ShouldBe([mould.AreaMm2(110) - ((60 * 40) - (54 * 34)), mould.AreaMm2(150) - (60 * 40)], 5);
        parts.ShouldContain(p => p.Kind == "former");
    }

    [Fact]
    public void Turned_over_it_has_left_its_mould_and_its_first_layer_is_on_top()
    {
        var view = SectionView.For(MouldShapes.Make(SectionViewTests.Pyramid(150, 150)).Value, SectionViewTests.Layers([(0, 50), (50, 90)]), asStands: false);
        var parts = TurningScene.Of(view).Parts;
        parts.ShouldNotContain(p => p.Kind == "glass");
        Heights(parts.First(p => p.Kind == "layer")).Max().ShouldBeGreaterThan(0);
        TurningScene.Key(view).ShouldNotBe(TurningScene.Key(view.TurnedOver()));
        TurningScene.Key(view).ShouldBe(TurningScene.Key(view.TurnedOver().TurnedOver()));
    }

    [Fact]
    public void A_mesh_of_too_many_triangles_is_shown_with_fewer_and_says_so()
    {
        var rings = Enumerable.Range(0, 201).Select(k => Ring(100.0 * k / 200, 30 + (5 * Math.Sin(k / 20.0)))).ToList();
        var scene = TurningScene.Of(SectionView.For(MeshShapes.Mould(Loft.Through(rings)), SectionViewTests.Layers([(0, 40)])));
        scene.Lighter.ShouldBeTrue();
        scene.Parts.Where(p => p.Kind is "layer" or "glass").Sum(p => p.Corners.Length / (p.Wide ? 12 : 6)).ShouldBeInRange(10_000, TurningScene.MostTriangles * 11 / 10);
    }

    [Fact]
    public void A_cube_has_twelve_sharp_edges_and_a_sphere_none_but_its_opening()
    {
        var cube = MouldShapes.Make(new MouldSpec("cuboid", new Dictionary<string, double> { ["widthMm"] = 50, ["depthMm"] = 50, ["heightMm"] = 50 })).Value;
        MeshEdges.Sharp(cube.Surface(), 25).Count.ShouldBe(12);
        var sphere = MouldShapes.Make(new MouldSpec("sphere", new Dictionary<string, double> { ["diameterMm"] = 100, ["openingDiameterMm"] = 30 })).Value;
        MeshEdges.Sharp(sphere.Surface(), 25).ShouldAllBe(e => Math.Abs(e.A.Z - sphere.HeightMm) < 1e-9 && Math.Abs(e.B.Z - sphere.HeightMm) < 1e-9);
    }

    private static IReadOnlyList<Point3> Ring(double z, double radius) =>
        [.. Enumerable.Range(0, 200).Select(k => 2 * Math.PI * k / 200).Select(a => new Point3(radius * Math.Cos(a), radius * Math.Sin(a), z))];

    private static IEnumerable<double> Heights(TurningPart part) => Points(part).Select(p => p.Z);

    // in radii of the scene, as sent
    private static double Area(TurningPart part)
    {
        var (points, corners) = (Points(part), MemoryMarshal.Cast<byte, ushort>(part.Corners).ToArray());
        return corners.Chunk(3).Sum(t => (points[t[1]] - points[t[0]]).Cross(points[t[2]] - points[t[0]]).Length / 2);
    }

    private static List<Point3> Points(TurningPart part) =>
        [.. MemoryMarshal.Cast<byte, short>(part.Points).ToArray().Chunk(3).Select(c => new Point3(c[0] / 32000.0, c[1] / 32000.0, c[2] / 32000.0))];
}
