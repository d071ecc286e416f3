using CsCheck;
using Studio.Engine.Film;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Film;

/// <summary>Plane sections against closed forms (elementary and analytic geometry; Euclid XI-XIII, Apollonius for the cone).</summary>
public sealed class FilmCutTests
{
    // round moulds come as polygons of 180 sides, 2 parts in 10 000 smaller than the circle
    private const double Facets = 5e-4;

    [Fact]
    public void Cube_cut_corner_to_corner_is_a_rectangle_of_its_edge_by_the_diagonal_of_its_face()
    {
        var fit = Cut("cuboid", "widthMm=100 depthMm=100 heightMm=100", new() { Placement = FilmPlacement.Corner });
        fit.Cut.ShouldHaveSingleItem().Ring.Count.ShouldBe(4);
        Area(fit).ShouldBeNear(100 * 100 * Math.Sqrt(2));
        fit.Box.WidthMm.ShouldBeNear(100 * Math.Sqrt(2));
        fit.Box.HeightMm.ShouldBeNear(100);
    }

    [Fact]
    public void Pyramid_cut_corner_to_corner_is_a_triangle_as_wide_as_its_base_diagonal_and_as_high_as_itself()
    {
        var fit = Cut("pyramid", "baseMm=120 heightMm=90", new() { Placement = FilmPlacement.Corner });
        fit.Cut.ShouldHaveSingleItem().Ring.Count.ShouldBe(3);
        Area(fit).ShouldBeNear(120 * Math.Sqrt(2) * 90 / 2);
        fit.Box.WidthMm.ShouldBeNear(120 * Math.Sqrt(2));
    }

    [Fact]
    public void Pyramid_between_two_heights_gives_a_trapezium()
    {
        var fit = Cut("pyramid", "baseMm=120 heightMm=90", new() { Placement = FilmPlacement.Corner, FromMm = 30, ToMm = 60 });
        fit.Cut.ShouldHaveSingleItem().Ring.Count.ShouldBe(4);
        Area(fit).ShouldBeNear(120 * Math.Sqrt(2) * (1.0 / 3 + 2.0 / 3) / 2 * 30);
        fit.Cut[0].Ring.ShouldAllBe(p => p.VMm >= 30 - 1e-9 && p.VMm <= 60 + 1e-9);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(20)]
    [InlineData(-45)]
    public void Pyramid_cut_parallel_to_a_face_begins_where_the_plane_meets_the_face_behind_it(double depth)
    {
        const double b = 120, h = 90;
        var fit = Cut("pyramid", "baseMm=120 heightMm=90", new() { Placement = FilmPlacement.Parallel, DepthMm = depth });
        var z0 = 2 * h * Math.Abs(depth) / b;
        Area(fit).ShouldBeNear(((2 * Math.Abs(depth)) + b) / 2 * (h - z0));
        fit.Box.BottomMm.ShouldBeNear(z0);
    }

    [Fact]
    public void Depth_from_the_front_counts_inwards_from_the_foremost_edge()
    {
        var spec = new FilmSpec { Placement = FilmPlacement.Parallel, DepthFrom = "front", DepthMm = 25 };
        Area(Cut("pyramid", "baseMm=120 heightMm=90", spec)).ShouldBeNear(Area(Cut("pyramid", "baseMm=120 heightMm=90", spec with { DepthFrom = "centre", DepthMm = 35 })));
    }

    [Fact]
    public void Cone_cut_parallel_to_its_axis_is_a_branch_of_a_hyperbola()
    {
        const double k = 0.5, h = 100, d = 20; // r = k z; r² = u² + d² on the cut
        var fit = Cut("cone", "bottomDiameterMm=0 topDiameterMm=100 heightMm=100", new() { Placement = FilmPlacement.Parallel, DepthMm = d });
        foreach (var p in fit.Cut.ShouldHaveSingleItem().Ring)
        {
            Math.Sqrt((p.UMm * p.UMm) + (d * d)).ShouldBe(k * p.VMm, 50 * 2e-4);
        }

        // ∫ 2 √(k² z² − d²) dz from d/k to h
        double Whole(double z) => (z * Math.Sqrt(Math.Max(0, (k * k * z * z) - (d * d)))) - (d * d / k * Math.Log((k * z) + Math.Sqrt(Math.Max(0, (k * k * z * z) - (d * d)))));
        Area(fit).ShouldBe(Whole(h) - Whole(d / k), 3 * Facets * Area(fit));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(30)]
    [InlineData(-48)]
    public void Sphere_is_cut_in_a_circle_whose_radius_is_the_other_side_of_the_triangle(double d)
    {
        var fit = Cut("sphere", "diameterMm=100 openingDiameterMm=0.001", new() { Placement = FilmPlacement.Parallel, DepthMm = d });
        var square = (50.0 * 50) - (d * d);
        Area(fit).ShouldBe(Math.PI * square, Math.PI * 2500 * Facets * 2);
        fit.Box.WidthMm.ShouldBe(2 * Math.Sqrt(square), 0.15);
    }

    [Fact]
    public void Cone_cut_flat_is_a_circle_and_a_leaning_cut_of_a_cylinder_an_ellipse()
    {
        Area(Cut("cone", "bottomDiameterMm=0 topDiameterMm=100 heightMm=100", new() { Placement = FilmPlacement.Flat, HeightMm = 60 })).ShouldBe(Math.PI * 900, Math.PI * 900 * Facets);
        Area(Cut("cone", "bottomDiameterMm=60 topDiameterMm=60 heightMm=200", new() { Placement = FilmPlacement.Free, LeanDegrees = 60, TurnDegrees = 17 }))
            .ShouldBe(Math.PI * 900 / Math.Sin(Math.PI / 3), Math.PI * 900 * 2 * Facets);
    }

    [Fact]
    public void Cube_cut_square_to_its_longest_diagonal_is_a_regular_hexagon()
    {
        var lean = Math.Asin(1 / Math.Sqrt(3)) * 180 / Math.PI;
        var fit = Cut("cuboid", "widthMm=80 depthMm=80 heightMm=80", new() { Placement = FilmPlacement.Free, TurnDegrees = 45, LeanDegrees = lean });
        fit.Cut.ShouldHaveSingleItem().Ring.Count.ShouldBe(6);
        Area(fit).ShouldBeNear(3 * Math.Sqrt(3) / 4 * 80 * 80);
        fit.Edges.Select(e => e.LengthMm).ShouldAllBe(l => Math.Abs(l - (80 / Math.Sqrt(2))) < 1e-9);
    }

    [Fact]
    [Trait("Slow", "meshes")]
    public void Slices_across_any_direction_add_up_to_the_volume() => // Cavalieri
        (from turn in Gen.Double[-180, 180]
         from lean in Gen.Double[-60, 60]
         from sides in Gen.Int[3, 8]
         select (turn, lean, sides)).Sample(t =>
        {
            var mould = Make("pyramid", $"sides={t.sides} baseMm=60 tipMm=20 heightMm=70");
            const double step = 0.5;
            var sum = 0.0;
            for (var offset = -150.0; offset <= 150; offset += step)
            {
                var fit = FilmCut.Fit(mould, new() { Placement = FilmPlacement.Free, TurnDegrees = t.turn, LeanDegrees = t.lean, OffsetMm = offset / Math.Cos(t.lean * Math.PI / 180), MarginMm = 0, TabMm = 0 }, FilmSurroundings.Nothing);
                sum += fit.Value.Cut.Sum(a => a.AreaMm2) * step;
            }

            (sum / 1000).ShouldBe(mould.CapacityMl, mould.CapacityMl * 2e-3);
        }, iter: 12, threads: 1);

    [Fact]
    public void Hexagonal_prism_offers_its_longest_diagonals_and_six_faces()
    {
        var mould = Make("prism", "sides=6 edgeMm=40 heightMm=50");
        Area(Cut("prism", "sides=6 edgeMm=40 heightMm=50", new() { Placement = FilmPlacement.Corner, TurnDegrees = 5 })).ShouldBeNear(80 * 50);
        FilmPlane.FaceTurns(mould).ShouldBe([0, 60, 120, 180, 240, 300]);
        FilmPlane.FaceTurns(Make("cone", "bottomDiameterMm=1 topDiameterMm=2 heightMm=3")).ShouldBeEmpty();
    }

    [Fact]
    public void Turned_over_the_sheet_is_the_same_upside_down()
    {
        var (one, other) = (Cut("pyramid", "baseMm=120 heightMm=90", new()), Cut("pyramid", "baseMm=120 heightMm=90", new() { Over = true }));
        Area(other).ShouldBeNear(Area(one));
        other.Box.TopMm.ShouldBe(-one.Box.BottomMm, 1e-9);
        (other.Plane.Normal - one.Plane.Normal).Length.ShouldBeLessThan(1e-12); // seen from the same side
    }

    private static double Area(FilmFit fit) => fit.Cut.Sum(a => a.AreaMm2);

    internal static FilmFit Cut(string shape, string dimensions, FilmSpec spec, FilmSurroundings? around = null) =>
        FilmCut.Fit(Make(shape, dimensions), around is null ? spec with { MarginMm = 0, TabMm = 0 } : spec, around ?? FilmSurroundings.Nothing).Value;

    internal static MouldBody Make(string shape, string dimensions) => MouldShapes.Make(new MouldSpec(
        shape, dimensions.Split(' ').Select(d => d.Split('=')).ToDictionary(d => d[0], d => double.Parse(d[1], System.Globalization.CultureInfo.InvariantCulture), StringComparer.Ordinal))).Value;
}
