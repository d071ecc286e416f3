using System.Globalization;
using Studio.Engine.Meshes;

namespace Studio.Engine.Tests.Meshes;

public sealed class MeshReaderTests
{
    private static readonly TriangleMesh Box = Solids.Box(0, 0, 0, 10, 20, 30);

    [Fact]
    public void One_box_in_every_kind_of_file_is_one_box()
    {
        foreach (var (bytes, name) in new[] { (Files.Binary(Box), "a.stl"), (Files.Ascii(Box).Bytes(), "a.STL"), (Files.Obj(Box).Bytes(), "a.obj"), (Files.Ascii(Box).Bytes(), "a"), (Files.Obj(Box).Bytes(), "a.bin") })
        {
            var cavity = Files.Read(bytes, name).Value;
            cavity.Table.WholeMm3.ShouldBe(6000, 1e-9);
            cavity.Mesh.VertexCount.ShouldBe(8);
            cavity.Findings.ShouldBeEmpty();
        }
    }

    [Theory]
    [InlineData("mm", 6)]
    [InlineData("cm", 6000)]
    [InlineData("m", 6e6)]
    [InlineData("inch", 6 * 16387.064)] // an inch is 25.4 mm by definition (1959): 16 387.064 mm³
    public void The_unit_scales_it(string unit, double mm3)
    {
        var box = unit == "m" ? Solids.Box(0, 0, 0, 0.1, 0.2, 0.3) : Solids.Box(0, 0, 0, 1, 2, 3);
        Files.CavityOf(box, unit).Table.WholeMm3.ShouldBe(mm3, mm3 * 1e-12);
    }

    [Fact]
    public void A_binary_file_whose_header_says_solid_is_binary() =>
        Files.Read(Files.Binary(Box, "solid cavity\n  facet normal 0 0 1\n outer loop\n vertex 0 0 0 exported as ASCII? no")).Value.Table.WholeMm3.ShouldBe(6000, 1e-9);

    [Theory] // before the word solid: a byte order mark, empty lines, spaces; a name as long as a binary header; and no solid line's name at all
    [InlineData("\uFEFF", "cavity")]
    [InlineData("\r\n\r\n   \t", "cavity")]
    [InlineData("", "COLOR=rgba MATERIAL=....... a name that goes on for longer than the eighty bytes of a binary header, facet by facet")]
    [InlineData("", "")]
    public void An_ascii_file_that_begins_like_something_else_is_ascii(string before, string name) =>
        Files.Read((before + Files.Ascii(Box, name: name)).Bytes()).Value.Table.WholeMm3.ShouldBe(6000, 1e-9);

    [Fact]
    public void Line_ends_case_and_exponents_do_not_matter()
    {
        var text = Files.Ascii(Box, "E9").Replace("vertex", "VERTEX", StringComparison.Ordinal).Replace("outer loop", "Outer\tLoop", StringComparison.Ordinal);
        Files.Read(text.Replace("\n", "\r\n", StringComparison.Ordinal).Bytes()).Value.Table.WholeMm3.ShouldBe(6000, 1e-9);
        Files.Read(text.Replace("\n", "\r", StringComparison.Ordinal).Bytes()).Value.Table.WholeMm3.ShouldBe(6000, 1e-9);
        Files.Read(text.Replace("normal 0 0 0", "normal nan nan -nan(ind)", StringComparison.Ordinal).Bytes()).Value.Table.WholeMm3.ShouldBe(6000, 1e-9);
    }

    [Fact]
    public void A_point_is_a_point_whatever_the_language()
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Files.Read(Files.Ascii(Solids.Box(0.5, 0.5, 0.5, 1.5, 2.5, 3.5)).Bytes()).Value.Table.WholeMm3.ShouldBe(1.5 * 2.5 * 3.5, 1e-9);
            Files.Refusal(Files.Ascii(Box).Replace("vertex 10 0 0", "vertex 10,5 0 0", StringComparison.Ordinal).Bytes()).ShouldContain("'10,5' in facet");
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void Several_solids_of_one_file_are_read_together_and_told()
    {
        var cavity = Files.Read((Files.Ascii(Box) + Files.Ascii(Solids.Box(50, 0, 0, 10, 10, 10))).Bytes()).Value;
        cavity.Table.WholeMm3.ShouldBe(7000, 1e-9);
        cavity.Findings.Select(f => f.Code).ShouldBe(["mesh-solids", "mesh-shells"]);
        // one body split over two solids closes only when both are read
        var half = new TriangleMesh(Box.Coordinates, Box.Corners[..18]);
        var rest = new TriangleMesh(Box.Coordinates, Box.Corners[18..]);
        Files.Read((Files.Ascii(half) + Files.Ascii(rest)).Bytes()).Value.Table.WholeMm3.ShouldBe(6000, 1e-9);
    }

    [Fact]
    public void Obj_takes_slashes_negative_numbers_polygons_comments_and_carried_lines()
    {
        const string Cube = """
            # a cube of 2, its faces written six ways
            mtllib none.mtl
            v 0 0 0
            v 2 0 0 1.0
            v 2 2 0 0.1 0.2 0.3
            v 0 2 0
            vn 0 0 1
            vt 0 0
            f 4 3 2 1
            v 0 0 2e0
            v 2 0 +2
            v 2 2 20.0E-1
            v 0 2 2
            f 5/1 6/1 7/1 8/1
            f -8//1 -7//1 \
              -3//1 -4//1
            f 2/1/1 3/1/1 7/1/1 6/1/1 # the right
            f 3 4 8 7
            f 4 1 5 8
            l 1 2
            """;
        var cavity = Files.Read(Cube.Bytes(), "cube.obj").Value;
        cavity.Table.WholeMm3.ShouldBe(8, 1e-12);
        cavity.Mesh.TriangleCount.ShouldBe(12);
    }

    [Fact]
    public void A_vertex_that_no_face_uses_does_not_count() =>
        Files.Read((Files.Obj(Box) + "v 900 900 900\n").Bytes(), "a.obj").Value.HeightMm.ShouldBe(30);

    [Fact]
    public void Corners_rounded_differently_close_and_it_is_said()
    {
        var random = new Random(1);
        var soup = Solids.Ball(50, 2);
        var torn = new TriangleMesh([.. soup.Corners.Select(soup.Vertex).SelectMany(p => new[] { p.X, p.Y, p.Z }).Select(c => c + ((random.NextDouble() - 0.5) * 5e-4))], [.. Enumerable.Range(0, soup.Corners.Length)]);
        var cavity = Files.Read(Files.Binary(torn)).Value;
        cavity.Mesh.VertexCount.ShouldBe(soup.VertexCount);
        cavity.Table.WholeMm3.ShouldBe(Files.CavityOf(soup).Table.WholeMm3, 30);
        cavity.Findings.ShouldHaveSingleItem().Message.ShouldContain("The mesh closed once");
    }

    [Fact]
    public void A_facet_that_shrinks_to_an_edge_is_left_out()
    {
        var flat = Box with { Corners = [.. Box.Corners, 0, 0, 1, 2, 2, 2] };
        Files.Read(Files.Binary(flat)).Value.Mesh.TriangleCount.ShouldBe(12);
    }
}
