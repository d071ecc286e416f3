using Studio.Engine.Meshes;

namespace Studio.Engine.Tests.Meshes;

public sealed class CrossingTests
{
    [Theory] // by overlap along one, two or three axes; the edges of the first pierce the second in its middle, on its diagonal, on its edge
    [InlineData(1, 1, 1)]
    [InlineData(0.5, 0.7, 0.9)]
    [InlineData(1, 1, 0)]
    [InlineData(1, 0, 0)]
    [InlineData(-1.5, 0.25, 0)]
    public void Overlapping_boxes_are_refused_with_a_place(double x, double y, double z)
    {
        var message = Files.Refusal(Files.Obj(Solids.Box(0, 0, 0, 2, 2, 2).With(Solids.Box(x, y, z, 2, 2, 2))).Bytes(), "cavity.obj");
        message.ShouldContain("It passes through itself: ");
        message.ShouldContain("mm as it stands. Join the overlapping bodies into one, or mend the fold there.");
    }

    [Fact]
    public void The_place_lies_on_both_surfaces()
    {
        var mesh = Solids.Ball(10, 3).With(Solids.Ball(10, 3).Moved(p => p + new Point3(12, 0.3, 0.7)));
        var (pairs, at, _) = Crossing.Find(mesh, 1e-4);
        pairs.ShouldBeGreaterThan(50);
        at.Length.ShouldBe(10, 0.1);
        (at - new Point3(12, 0.3, 0.7)).Length.ShouldBe(10, 0.1);
    }

    [Fact]
    public void A_wall_pushed_through_the_opposite_one_is_found_within_one_shell()
    {
        var dented = Solids.Ball(10, 3).Moved(p => p.Z > 9 ? p with { Z = p.Z - 22 } : p);
        Files.Refusal(Files.Obj(dented).Bytes(), "cavity.obj").ShouldContain("It passes through itself");
        // facets that share one corner can cross too: a flap through its neighbour across the corner
        Crossing.Find(new TriangleMesh([0, 0, 0, 4, -1, 0, 4, 1, 0, 3, 0, -1, 3, 0, 1], [0, 1, 2, 0, 3, 4]), 1e-4).Pairs.ShouldBe(1);
    }

    public static TheoryData<string> Sound => [.. SoundMeshes().Keys];

    [Theory]
    [MemberData(nameof(Sound))]
    public void What_only_touches_itself_is_not_refused(string name)
    {
        var mesh = SoundMeshes()[name];
        Crossing.Find(mesh, 1e-5 * (mesh.Bounds().High - mesh.Bounds().Low).Length).Pairs.ShouldBe(0);
        // as single precision has it
        var rough = mesh.Moved(p => new Point3((float)p.X, (float)p.Y, (float)p.Z));
        Crossing.Find(rough, 1e-5 * (mesh.Bounds().High - mesh.Bounds().Low).Length).Pairs.ShouldBe(0);
    }

    private static Dictionary<string, TriangleMesh> SoundMeshes() => new(StringComparer.Ordinal)
    {
        ["ball"] = Solids.Ball(50, 5),
        ["torus"] = Solids.Torus(40, 15, 120, 60),
        ["turned, with fans of slivers"] = Solids.Turned(150, (0, 0), (40, 0), (40.001, 1e-3), (30, 60), (0, 60)),
        ["tilted torus"] = Solids.Torus(40, 15, 90, 45).Moved(p => new Point3((0.6 * p.X) - (0.8 * p.Z), p.Y, (0.8 * p.X) + (0.6 * p.Z))),
        ["a ball a hair inside another"] = Solids.Ball(50, 4).With(Solids.Ball(49.99, 4).InsideOut()),
        ["boxes face to face"] = Solids.Box(0, 0, 0, 10, 10, 10).With(Solids.Box(10, 3, 3, 4, 4, 4)),
        ["a corner on an edge, closed by a sliver"] = Sliver(),
    };

    // a box whose top front edge has a corner in its middle for the top's facets only; a facet without area closes the gap
    private static TriangleMesh Sliver()
    {
        var box = Solids.Box(0, 0, 0, 10, 10, 10);
        return new TriangleMesh([.. box.Coordinates, 5, 0, 10], [.. box.Corners[..6], 4, 8, 7, 8, 5, 6, 8, 6, 7, .. box.Corners[12..], 4, 5, 8]);
    }
}
