using Studio.Engine.Meshes;
using Studio.Engine.Moulds;
using Studio.Engine.Tests.Moulds;

namespace Studio.Engine.Tests.Meshes;

public sealed class MeshVolumeTests
{
    [Theory] // closed forms of the shapes themselves (checked against the handbook in HandbookVolumeTests); heights drawn from a fixed seed
    [InlineData("cuboid", "widthMm=120 depthMm=70 heightMm=55")]
    [InlineData("cuboid", "widthMm=120 depthMm=70 heightMm=55 draftDegrees=12")]
    [InlineData("pyramid", "baseMm=150 heightMm=150")]
    [InlineData("pyramid", "sides=3 baseMm=130 heightMm=90 tipMm=11")]
    [InlineData("pyramid", "sides=8 baseMm=30 heightMm=61 tipMm=44")]
    [InlineData("prism", "sides=6 edgeMm=40 heightMm=33.3")]
    [InlineData("prism", "sides=5 edgeMm=0.4 heightMm=9000")]
    public void Straight_walls_as_a_mesh_agree_with_the_closed_form_at_1000_heights(string shape, string dimensions)
    {
        var mould = HandbookVolumeTests.Mould(shape, dimensions);
        var mesh = Mould(Files.CavityOf(mould.Surface()));
        var random = new Random(3);
        mesh.HeightMm.ShouldBe(mould.HeightMm, mould.HeightMm * 1e-15);
        for (var k = 0; k < 1000; k++)
        {
            var z = mould.HeightMm * random.NextDouble();
            mesh.VolumeMl(z).ShouldBe(mould.VolumeMl(z), mould.CapacityMl * 1e-12);
            mesh.AreaMm2(z).ShouldBe(mould.AreaMm2(z), (mould.AreaMm2(0) + mould.AreaMm2(mould.HeightMm)) * 1e-12);
            mesh.MomentMlMm(z).ShouldBe(mould.MomentMlMm(z), mould.MomentMlMm(mould.HeightMm) * 1e-12);
            mesh.HeightAtMl(mould.VolumeMl(z)).ShouldBe(z, mould.HeightMm * 1e-9);
        }
    }

    [Theory] // the same pyramid turned and laid on its side: the volume below a level is that of the pyramid, whichever way it was drawn
    [InlineData("+x")]
    [InlineData("-x")]
    [InlineData("+y")]
    [InlineData("-y")]
    [InlineData("+z")]
    [InlineData("-z")]
    public void Any_direction_can_stand_upwards_and_nothing_is_mirrored(string up)
    {
        // a corner pyramid: edges 3, 4 and 5 along x, y, z from one corner, so that no two axes look alike
        var mesh = new TriangleMesh([0, 0, 0, 3, 0, 0, 0, 4, 0, 0, 0, 5], [0, 2, 1, 0, 1, 3, 0, 3, 2, 1, 2, 3]);
        var cavity = Files.CavityOf(mesh, "cm", up);
        var along = up[1] switch { 'x' => 30.0, 'y' => 40, _ => 50 };
        cavity.HeightMm.ShouldBe(along, 1e-12);
        cavity.Findings.ShouldBeEmpty();
        cavity.Table.WholeMm3.ShouldBe(10_000, 1e-8); // 3 · 4 · 5 / 6 cm³
        // half the height from the right-angled corner leaves a tip of an eighth
        cavity.Table.VolumeMm3(along / 2).ShouldBe(up[0] == '+' ? 8750 : 1250, 1e-8);
    }

    [Fact]
    public void A_mesh_far_away_holds_as_much()
    {
        var ball = Solids.Ball(50, 3);
        var here = Files.CavityOf(ball);
        var there = Files.CavityOf(ball.Moved(p => p + new Point3(1e6, -1e6, 1e6)));
        for (var z = 5.0; z < 100; z += 5)
        {
            there.Table.VolumeMm3(z).ShouldBe(here.Table.VolumeMm3(z), here.Table.WholeMm3 * 1e-9);
        }
    }

    [Theory] // V = Σ a·(b × c)/6 over the facets, the divergence theorem, cut facet by facet at the level and closed by a lid; the mesh is crooked on purpose
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Table_agrees_with_clipping_every_facet(int seed)
    {
        var random = new Random(seed);
        var (u, v) = (new Point3(0.36, 0.48, -0.8), new Point3(-0.8, 0.6, 0));
        var mesh = Solids.Torus(40, 15, 31, 17).Moved(p => (u * p.X) + (v * p.Y) + (u.Cross(v) * (p.Z + (4 * Math.Sin(p.X / 7)))));
        mesh = mesh.Moved(p => p + (new Point3(random.NextDouble(), random.NextDouble(), random.NextDouble()) * 0.5));
        var cavity = Files.CavityOf(mesh);
        for (var k = 0; k < 200; k++)
        {
            var z = cavity.HeightMm * random.NextDouble();
            cavity.Table.VolumeMm3(z).ShouldBe(Clipped.VolumeMm3(cavity.Mesh, z), cavity.Table.WholeMm3 * 1e-12);
            Section.AtHeight(cavity.Mesh, z).Sum(p => Section.DoubleAreaMm2(p) / 2).ShouldBe(cavity.Table.AreaMm2(z), 1e-12 * 80 * 80);
        }
    }

    [Theory] // heights that agree but for rounding, as turned drawings have them, make levels a hair apart and facets all but level
    [InlineData(1e-6)]
    [InlineData(1e-9)]
    [InlineData(1e-12)]
    [InlineData(1e-14)]
    public void Levels_a_hair_apart_cost_no_digits(double hair)
    {
        var random = new Random(5);
        var mesh = Solids.Turned(48, (0, 0), (40, 0), (42, 20), (25, 20), (30, 50), (0, 50)).Moved(p => p with { Z = p.Z + (hair * random.NextDouble()) });
        var cavity = Files.CavityOf(mesh);
        for (var k = 0; k < 200; k++)
        {
            var z = cavity.HeightMm * random.NextDouble();
            cavity.Table.VolumeMm3(z).ShouldBe(Clipped.VolumeMm3(cavity.Mesh, z), cavity.Table.WholeMm3 * 1e-12);
        }
    }

    internal static MouldBody Mould(Cavity cavity) =>
        MouldShapes.Make(new MouldSpec("mesh", new Dictionary<string, double>(StringComparer.Ordinal)) { Mesh = new MeshSource("cavity.obj", "mm", "+z"), Cavity = cavity }).Value;
}
