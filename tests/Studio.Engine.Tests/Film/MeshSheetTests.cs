using Studio.Engine.Film;
using Studio.Engine.Moulds;
using Studio.Engine.Tests.Meshes;

namespace Studio.Engine.Tests.Film;

/// <summary>Sheets in moulds that are meshes: the same outlines as the shape's own, several pieces, and holes.</summary>
public sealed class MeshSheetTests
{
    private static readonly FilmSpec Bare = new() { MarginMm = 0, TabMm = 0 };

    [Theory]
    [InlineData("pyramid", "baseMm=120 heightMm=90")]
    [InlineData("cuboid", "widthMm=120 depthMm=90 heightMm=55 draftDegrees=12")]
    public void Mesh_of_a_shape_is_cut_as_the_shape_is(string shape, string dimensions)
    {
        var mould = FilmCutTests.Make(shape, dimensions);
        var mesh = MeshVolumeTests.Mould(Files.CavityOf(mould.Surface()));
        foreach (var spec in (FilmSpec[])[Bare with { Placement = FilmPlacement.Free, TurnDegrees = 33, LeanDegrees = 20, OffsetMm = 7 }, Bare with { Placement = FilmPlacement.Parallel, DepthMm = 11 }, Bare with { Placement = FilmPlacement.Flat, HeightMm = 40 }])
        {
            Area(mesh, spec).ShouldBe(Area(mould, spec), 1e-6);
        }
    }

    [Fact]
    public void Torus_cut_upright_through_its_middle_is_two_pieces_and_cut_flat_a_ring_with_a_hole()
    {
        // rings of 32 corners around 64 places: the plane runs through two of them; half way up lie polygons of 64 corners of radius 50 and 30
        var torus = MeshVolumeTests.Mould(Files.CavityOf(Solids.Torus(40, 10, 64, 32)));
        var upright = FilmCut.Fit(torus, Bare with { Placement = FilmPlacement.Parallel }, FilmSurroundings.Nothing).Value;
        upright.Body.Count.ShouldBe(2);
        upright.Body.ShouldAllBe(a => Math.Abs(a.AreaMm2 - (32 / 2.0 * Math.Sin(2 * Math.PI / 32) * 100)) < 1e-3);
        upright.Findings.ShouldContain(f => f.Code == "sheet-in-pieces");

        var flat = FilmCut.Fit(torus, Bare with { Placement = FilmPlacement.Flat, HeightMm = torus.HeightMm / 2 }, FilmSurroundings.Nothing).Value;
        flat.Body.ShouldHaveSingleItem().Holes.ShouldHaveSingleItem();
        flat.AreaMm2.ShouldBe(64 / 2.0 * Math.Sin(2 * Math.PI / 64) * ((50 * 50) - (30 * 30)), 1e-3);
    }

    [Fact]
    [Trait("Slow", "meshes")]
    public void Every_sheet_of_a_thousand_planes_lies_inside_the_wall() =>
        Enumerable.Range(0, 1000).ToList().ForEach(i =>
        {
            var random = new Random(i);
            var torus = SphereOrTorus[i % 2];
            var spec = Bare with { Placement = FilmPlacement.Free, TurnDegrees = (random.NextDouble() * 360) - 180, LeanDegrees = (random.NextDouble() * 160) - 80, OffsetMm = (random.NextDouble() * 100) - 50, MarginMm = random.NextDouble() * 3, TabMm = 0 };
            var fit = FilmCut.Fit(torus, spec, FilmSurroundings.Nothing).Value;
            fit.AreaMm2.ShouldBeLessThanOrEqualTo(fit.Cut.Sum(a => a.AreaMm2) + 1e-6, $"plane {i}");
            (fit.Stands || fit.Findings.Any(f => f.Severity == Severity.Stop)).ShouldBeTrue($"plane {i}");
            fit.Body.SelectMany(a => a.Ring).Select(fit.Plane.At).ShouldAllBe(p => p.Z > -1e-6 && p.Z < torus.HeightMm + 1e-6);
        });

    private static readonly MouldBody[] SphereOrTorus = [MeshVolumeTests.Mould(Files.CavityOf(Solids.Ball(30, 3))), MeshVolumeTests.Mould(Files.CavityOf(Solids.Torus(40, 10, 32, 16)))];

    private static double Area(MouldBody mould, FilmSpec spec) => FilmCut.Fit(mould, spec, FilmSurroundings.Nothing).Value.Cut.Sum(a => a.AreaMm2);
}
