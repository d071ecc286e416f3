using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Tests.Drawing;

/// <summary>Cavities for the drawing's tests, made of boxes whose sections anyone can work out.</summary>
internal static class MeshShapes
{
    /// <summary>Two boxes of 20 × 20 mm standing 20 mm apart, 40 mm high, on a plate 60 × 20 × 10 mm: a U from the front.</summary>
    public static TriangleMesh U() => Prism([(-30, 0), (30, 0), (30, 50), (10, 50), (10, 10), (-10, 10), (-10, 50), (-30, 50)]);

    /// <summary>A frame 60 × 60 mm with an opening 20 × 20 mm in its middle: a section with a hole.</summary>
    public static TriangleMesh Frame() => Join(Prism([(-30, 0), (30, 0), (30, 60), (-30, 60)]), Turn(Prism([(-10, 20), (10, 20), (10, 40), (-10, 40)])));

    /// <summary>A mushroom: a stem 20 mm wide, 30 mm high, with a cap 60 mm wide, 20 mm high, that overhangs it.</summary>
    public static TriangleMesh Mushroom() => Prism([(-10, 0), (10, 0), (10, 30), (30, 30), (30, 50), (-30, 50), (-30, 30), (-10, 30)]);

    /// <summary>Volume by the divergence theorem [mm³].</summary>
    public static double Volume(params TriangleMesh[] parts) => parts.Sum(m => Enumerable.Range(0, m.TriangleCount).Select(m.Triangle).Sum(t => t.A.Dot(t.B.Cross(t.C)))) / 6;

    /// <summary>A mould of any form.</summary>
    public static MouldBody Mould(TriangleMesh mesh) => new Raw(mesh);

    // a polygon in x and z, anticlockwise seen from the front, 20 mm deep, its faces cut into triangles by ears
    private static TriangleMesh Prism(IReadOnlyList<(double X, double Z)> outline)
    {
        var n = outline.Count;
        var points = new[] { -10.0, 10 }.SelectMany(y => outline.SelectMany(p => new[] { p.X, y, p.Z })).ToArray();
        var corners = new List<int>();
        for (var i = 0; i < n; i++)
        {
            var next = (i + 1) % n;
            corners.AddRange([i, n + next, next, i, n + i, n + next]);
        }

        var flat = FlatArea.Of([[.. outline.Select(p => (p.X, p.Z))]]);
        foreach (var (a, b, c) in flat.Triangles())
        {
            var (i, j, k) = (Find(a), Find(b), Find(c));
            corners.AddRange([i, j, k, n + i, n + k, n + j]);
        }

        return Wind(new TriangleMesh(points, [.. corners]));

        int Find((double U, double V) p) => Enumerable.Range(0, n).First(i => outline[i] == (p.U, p.V));
    }

    private static TriangleMesh Wind(TriangleMesh mesh) => Volume(mesh) < 0 ? Turn(mesh) : mesh;

    private static TriangleMesh Turn(TriangleMesh mesh) => mesh with { Corners = [.. mesh.Corners.Chunk(3).SelectMany(t => new[] { t[0], t[2], t[1] })] };

    private static TriangleMesh Join(TriangleMesh a, TriangleMesh b) => new([.. a.Coordinates, .. b.Coordinates], [.. a.Corners, .. b.Corners.Select(c => c + a.VertexCount)]);

    private sealed class Raw(TriangleMesh mesh) : MouldBody(MeshMould.Kind, mesh.Bounds().High.Z)
    {
        public override Outline Outline => throw new NotSupportedException("A drawing of a mesh asks its surface.");

        public override double AreaMm2(double zMm) => MeshSlab.Area(mesh, zMm).AreaMm2;

        public override double VolumeMl(double zMm) => 0;

        public override double MomentMlMm(double zMm) => 0;

        public override double FaceMarkMm(double zMm) => zMm;

        public override double ClearanceMm(double widthMm, double depthMm, double zMm) => 0;

        public override TriangleMesh Surface() => mesh;
    }
}
