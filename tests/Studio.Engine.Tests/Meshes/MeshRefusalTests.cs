using System.Buffers.Binary;
using Studio.Engine.Meshes;

namespace Studio.Engine.Tests.Meshes;

/// <summary>Meshes that cannot be used, of the kinds that public lists of broken meshes have: a sentence with what, where and what to do.</summary>
public sealed class MeshRefusalTests
{
    private static readonly TriangleMesh Box = Solids.Box(0, 0, 0, 10, 20, 30);

    [Fact]
    public void A_header_that_promises_a_billion_facets_is_refused_by_length()
    {
        var bytes = Files.Binary(Box);
        BinaryPrimitives.WriteUInt32LittleEndian(bytes.AsSpan(80), 1_000_000_000);
        var before = GC.GetAllocatedBytesForCurrentThread();
        Files.Refusal(bytes).ShouldContain("promises 1000000000 facets and ends within facet 13");
        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBeLessThan(1_000_000);
    }

    [Theory]
    [InlineData(683, "promises 12 facets and ends within facet 12: it was cut short, or it is no STL. Save or copy it again.")]
    [InlineData(100, "promises 12 facets and ends within facet 1:")]
    [InlineData(83, "83 bytes are too few")]
    [InlineData(0, "The file is empty.")]
    public void A_binary_file_cut_short_is_refused(int length, string says) => Files.Refusal(Files.Binary(Box)[..length]).ShouldContain(says);

    [Fact]
    public void Bytes_after_the_last_facet_are_refused() =>
        Files.Refusal([.. Files.Binary(Box), 1, 2, 3]).ShouldContain("promises 12 facets, yet 3 bytes follow the last of them");

    [Theory]
    [InlineData(float.NaN, "no number (x NaN, y 0, z 0)")]
    [InlineData(float.PositiveInfinity, "x Infinity")]
    [InlineData(float.NegativeInfinity, "x -Infinity")]
    public void A_coordinate_that_is_no_number_is_refused_with_its_facet(float value, string says)
    {
        var bytes = Files.Binary(Box);
        BinaryPrimitives.WriteSingleLittleEndian(bytes.AsSpan(84 + (50 * 4) + 12), value);
        Files.Refusal(bytes).ShouldContain("Facet 5 of 12: corner 1 has a coordinate that is ");
        Files.Refusal(bytes).ShouldContain(says);
    }

    [Theory]
    [InlineData("nan")]
    [InlineData("-inf")]
    [InlineData("Infinity")]
    [InlineData("1e999")]
    [InlineData("0x10")]
    [InlineData("ten")]
    public void Nor_in_text(string word)
    {
        Files.Refusal(Files.Ascii(Box).Replace("vertex 10 0 30", "vertex 10 " + word + " 30", StringComparison.Ordinal).Bytes()).ShouldContain($"line 19: '{word}' in facet 3 is no number");
        Files.Refusal(Files.Obj(Box).Replace("v 10 0 30", "v 10 " + word + " 30", StringComparison.Ordinal).Bytes(), "a.obj").ShouldContain($"line 8: vertex 6 has the coordinate '{word}'");
    }

    [Theory]
    [InlineData("solid nothing\nendsolid nothing\n", "The solid is empty: there is no facet")]
    [InlineData("solid", "where 'endsolid' should stand: it was cut short")]
    [InlineData("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\n", "line 6, facet 1, where 'vertex' should stand")]
    [InlineData("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nendloop\n", "line 6: 'vertex' should stand where 'endloop' stands, facet 1")]
    [InlineData("solid a\nfacet normal 0 0 1\nouter loop\nvertex 0 0 0\nvertex 1 0 0\nvertex 1 1 0\nvertex 0 1 0\nendloop\nendfacet\nendsolid", "line 7: facet 1 has more than three corners")]
    [InlineData("solid a\nfacet normal 0 0 1\nvertex 0 0 0\nvertex 1 0 0\nvertex 1 1 0\nendfacet\nendsolid", "'outer loop' should stand")]
    [InlineData("facet normal 0 0 1\nouter loop\n", "line 1: 'solid' should stand where 'facet' stands")]
    public void Broken_text_is_refused_with_its_line(string text, string says) => Files.Refusal(text.Bytes()).ShouldContain(says);

    [Fact]
    public void A_binary_file_without_facets_is_empty() => Files.Refusal(new byte[84]).ShouldContain("The solid is empty");

    [Theory]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\n", "has no face in 4 lines")]
    [InlineData("v 0 0 0\nv 1 0\nv 0 1 0\nf 1 2 3\n", "line 2: vertex 2 has too few coordinates")]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2\n", "face 1 has 2 corners; it needs 3 or more")]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 9\n", "line 4: vertex 9 is used, but there are only 3")]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 0\n", "names the vertex '0', and there is none")]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -4\n", "names the vertex '-4', and there is none")]
    [InlineData("v 0 0 0\nv 1 0 0\nv 0 1 0\nf 1 2 -2147483648\n", "names the vertex '-2147483648', and there is none")]
    [InlineData("v 0 0 0\nf 1 2 99999999999\n", "names the vertex '99999999999', and there is none")]
    public void Broken_obj_is_refused_with_its_line(string text, string says) => Files.Refusal(text.Bytes(), "a.obj").ShouldContain(says);

    [Fact]
    public void Text_of_two_bytes_a_letter_is_refused() => Files.Refusal(System.Text.Encoding.BigEndianUnicode.GetBytes(Files.Obj(Box)), "a.obj").ShouldContain("no plain text");

    [Fact]
    public void A_missing_facet_leaves_three_open_edges_and_their_place() =>
        Refusal(Box with { Corners = Box.Corners[..^3] }).ShouldEndWith("The mesh does not close up, so it has no volume. 3 edges are open, with a facet on one side only, the first at x -5, y 0, z 15 mm as it stands. Close the gap.");

    [Fact]
    public void A_facet_there_twice_is_told_from_a_third_sheet()
    {
        Refusal(Box with { Corners = [.. Box.Corners, .. Box.Corners[..3]] }).ShouldContain("1 facet is there more than once, at x 1.667, y -3.333, z 0 mm as it stands. Delete the copies. 3 edges have more than two facets");
        // the whole box twice over: 12 copies
        Refusal(Box with { Corners = [.. Box.Corners, .. Box.Corners] }).ShouldContain("12 facets are there more than once");
    }

    [Fact]
    public void Two_boxes_on_one_edge_are_not_one_skin() =>
        Refusal(Box.With(Solids.Box(10, 20, 0, 10, 20, 30))).ShouldContain("1 edge has more than two facets, at x 0, y 0, z 15 mm as it stands. Leave one closed skin.");

    [Fact]
    public void A_facet_turned_over_is_refused_with_its_edges()
    {
        var turned = Box with { Corners = [.. Box.Corners] };
        (turned.Corners[1], turned.Corners[2]) = (turned.Corners[2], turned.Corners[1]);
        Refusal(turned).ShouldContain("3 edges have two facets wound against each other, the first at x");
    }

    [Fact]
    public void All_turned_over_is_mended_with_a_note()
    {
        var cavity = Files.CavityOf(Box.InsideOut());
        cavity.Table.WholeMm3.ShouldBe(6000, 1e-9);
        var note = cavity.Findings.ShouldHaveSingleItem();
        (note.Code, note.Severity, note.Path).ShouldBe(("mesh-turned", Severity.Note, "mould.file"));
    }

    [Fact]
    public void A_sheet_folded_flat_is_refused() => Refusal(Box.With(new TriangleMesh([20, 0, 0, 30, 0, 0, 20, 5, 5], [0, 1, 2, 0, 2, 1]))).ShouldContain("A facet is there twice, once each way");

    [Fact]
    public void What_is_flat_or_huge_or_too_small_to_tell_is_refused()
    {
        Refusal(new TriangleMesh([0, 0, 0, 1, 0, 0, 0, 1, 0, 1, 1, 0], [0, 1, 2, 0, 2, 3, 0, 3, 1, 1, 3, 2])).ShouldContain("It is flat, 1 by 1 by 0 mm");
        Files.Read(Files.Obj(Box).Bytes(), "a.obj", "m").Errors[0].Message.ShouldContain("Read in m it is 30000 mm long; 10000 mm is the most. Check the unit.");
        Refusal(Box with { Corners = [0, 0, 1, 2, 2, 3] }).ShouldContain("two corners in the same place");
        Refusal(Box.Moved(p => p * 1e300)).ShouldContain("10000 mm is the most");
    }

    [Fact]
    public void Nested_shells_count_once_or_not_at_all()
    {
        var inner = Solids.Box(2, 2, 2, 3, 4, 5);
        Files.CavityOf(Box.With(inner.InsideOut())).Table.WholeMm3.ShouldBe(6000 - 60, 1e-9);
        Files.CavityOf(Box.With(inner.InsideOut())).Findings.ShouldHaveSingleItem().Message.ShouldBe("The mesh has 2 separate pieces, 1 of them hollows whose room is taken away.");
        Files.CavityOf(Box.With(inner.InsideOut()).InsideOut()).Findings.Select(f => f.Code).ShouldBe(["mesh-turned", "mesh-shells"]);
        Refusal(Box.With(inner)).ShouldContain("Piece 2 of 2 about x -1.5, y -6, z 4.5 mm as it stands lies inside another and is wound outwards too");
        Refusal(Box.With(Solids.Box(20, 0, 0, 1, 1, 1).InsideOut())).ShouldContain("Piece 2 of 2 about x 10, y -9.5, z 0.5 mm as it stands is inside out and the others are not");
    }

    private static string Refusal(TriangleMesh mesh) => Files.Refusal(Files.Obj(mesh).Bytes(), "cavity.obj");
}
