using Studio.Engine.Moulds;
using Studio.Engine.Tests.Moulds;

namespace Studio.Engine.Tests.Meshes;

public sealed class MeshMouldTests
{
    [Theory] // the mould's own closed forms
    [InlineData("pyramid", "baseMm=150 heightMm=150")]
    [InlineData("pyramid", "baseMm=100 tipMm=20 heightMm=60")]
    [InlineData("cuboid", "widthMm=120 depthMm=90 heightMm=55 draftDegrees=12")]
    [InlineData("prism", "sides=4 edgeMm=80 heightMm=100")]
    public void Face_mark_width_and_clearance_are_those_of_the_same_shape(string shape, string dimensions)
    {
        var mould = HandbookVolumeTests.Mould(shape, dimensions);
        var mesh = MeshVolumeTests.Mould(Files.CavityOf(mould.Surface()));
        for (var z = mould.HeightMm / 20; z <= mould.HeightMm; z += mould.HeightMm / 20)
        {
            mesh.FaceMarkMm(z).ShouldBe(mould.FaceMarkMm(z), 1e-9);
            mesh.Outline.HalfWidthMm(z).ShouldBe(mould.Outline.HalfWidthMm(z), 1e-9);
            (mesh.ClearanceMm(21, 31, z) < 0).ShouldBe(mould.ClearanceMm(21, 31, z) < 0);
            if (mould.ClearanceMm(21, 31, z) > 0)
            {
                // near the floor the wall ends before the foot of the perpendicular, and the true distance is a little longer than to the wall's plane
                mesh.ClearanceMm(21, 31, z, mould.HeightMm).ShouldBeInRange(mould.ClearanceMm(21, 31, z) - 1e-4, mould.ClearanceMm(21, 31, z) * (z < mould.HeightMm / 4 ? 1.02 : 1.00001));
            }
        }

        mesh.CapacityMl.ShouldBe(mould.CapacityMl, mould.CapacityMl * 1e-12);
    }

    [Fact]
    public void A_box_near_a_dent_half_way_up_is_measured_there()
    {
        // waist of radius 30 at half height between rims of 50: 30 cos(π/64) to the facets' middles, the box's corner at 20 √2
        var mesh = MeshVolumeTests.Mould(Files.CavityOf(Solids.Turned(64, (0, 0), (50, 0), (30, 40), (50, 80), (0, 80))));
        var lean = 40 / Math.Sqrt((20 * 20) + (40 * 40));
        mesh.ClearanceMm(40, 40, 0, 80).ShouldBe(30 - (20 * Math.Sqrt(2)), 0.05);
        mesh.ClearanceMm(40, 40, 0, 0.001).ShouldBe((50 - (20 * Math.Sqrt(2))) * lean, 0.1);
        mesh.ClearanceMm(60, 60, 0, 80).ShouldBeLessThan(-5);
        mesh.ClearanceMm(60, 60, 0).ShouldBeGreaterThan(0);
    }

    [Fact]
    public void A_box_in_the_hole_of_a_torus_stands_outside() =>
        MeshVolumeTests.Mould(Files.CavityOf(Solids.Torus(40, 10, 64, 32))).ClearanceMm(10, 10, 5, 15).ShouldBeLessThan(0);

    [Fact]
    public void Plan_and_section_are_real_polygons()
    {
        var mesh = MeshVolumeTests.Mould(Files.CavityOf(Solids.Box(3, 4, 5, 60, 40, 20)));
        var plan = mesh.Outline.PlanAt(20);
        plan.Min(p => p.XMm).ShouldBe(-30);
        plan.Max(p => p.YMm).ShouldBe(20);
        mesh.Outline.PlanAt(0).Count.ShouldBe(plan.Count);
        var section = mesh.Outline.SectionMm.ShouldNotBeNull().ShouldHaveSingleItem();
        section.Max(p => p.XMm).ShouldBe(30);
        section.Max(p => p.YMm).ShouldBe(20);
        // anticlockwise: twice the area by the corners
        section.Select((p, k) => (p, q: section[(k + 1) % section.Count])).Sum(e => (e.p.XMm * e.q.YMm) - (e.p.YMm * e.q.XMm)).ShouldBe(2 * 60 * 20, 1e-9);
    }

    [Fact]
    public void Without_a_file_it_says_so()
    {
        var made = MouldShapes.Make(new MouldSpec("mesh", new Dictionary<string, double>(StringComparer.Ordinal)));
        made.Errors.ShouldHaveSingleItem().ShouldBe(new InputError("mould.file", "A mesh mould needs its file. Choose an STL or OBJ file."));
    }
}
