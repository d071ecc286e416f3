namespace Studio.Engine.Meshes;

/// <summary>Keeps what a surface has between two heights; triangles that lie flat in one of them are left to the face that closes it.</summary>
internal sealed class MeshClip(TriangleMesh mesh, double lowMm, double highMm)
{
    private readonly List<double> points = [];
    private readonly List<int> corners = [];
    private readonly Dictionary<(int A, int B, double Z), int> known = [];

    public TriangleMesh Wall()
    {
        // a vertex is its own number, or the two ends of the edge and the height at which it was cut
        var polygon = new List<(int A, int B, double Z)>(6);
        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            var (a, b, c) = (mesh.Corners[i], mesh.Corners[i + 1], mesh.Corners[i + 2]);
            var (za, zb, zc) = (Z(a), Z(b), Z(c));
            var (least, most) = (Math.Min(za, Math.Min(zb, zc)), Math.Max(za, Math.Max(zb, zc)));
            if (most <= lowMm || least >= highMm)
            {
                continue;
            }

            polygon.Clear();
            polygon.AddRange([(a, a, za), (b, b, zb), (c, c, zc)]);
            Add(Cut(Cut(polygon, lowMm, keepAbove: true), highMm, keepAbove: false));
        }

        return new TriangleMesh([.. points], [.. corners]);
    }

    // Sutherland and Hodgman 1974, against one level
    private static List<(int A, int B, double Z)> Cut(List<(int A, int B, double Z)> polygon, double level, bool keepAbove)
    {
        bool In((int A, int B, double Z) p) => keepAbove ? p.Z >= level : p.Z <= level;
        if (polygon.TrueForAll(In))
        {
            return polygon;
        }

        var kept = new List<(int A, int B, double Z)>(6);
        for (var i = 0; i < polygon.Count; i++)
        {
            var (p, q) = (polygon[i], polygon[(i + 1) % polygon.Count]);
            if (In(p))
            {
                kept.Add(p);
            }

            if (In(p) != In(q) && p.Z != level && q.Z != level)
            {
                kept.Add(Crossing(p, q, level));
            }
        }

        return kept;
    }

    // a second cut may meet an edge of the triangle that the first one shortened: it is still that edge
    private static (int A, int B, double Z) Crossing((int A, int B, double Z) p, (int A, int B, double Z) q, double level)
    {
        var (a, b) = p.A != p.B ? (p.A, p.B) : q.A != q.B ? (q.A, q.B) : (p.A, q.A);
        return a < b ? (a, b, level) : (b, a, level);
    }

    private void Add(List<(int A, int B, double Z)> polygon)
    {
        for (var i = 1; i + 1 < polygon.Count; i++)
        {
            corners.AddRange([Number(polygon[0]), Number(polygon[i]), Number(polygon[i + 1])]);
        }
    }

    private int Number((int A, int B, double Z) p)
    {
        if (!known.TryGetValue(p, out var number))
        {
            known.Add(p, number = known.Count);
            var (a, b) = (mesh.Vertex(p.A), mesh.Vertex(p.B));
            var at = p.A == p.B ? a : a + ((b - a) * ((p.Z - a.Z) / (b.Z - a.Z)));
            points.AddRange([at.X, at.Y, p.Z]);
        }

        return number;
    }

    private double Z(int vertex) => mesh.Coordinates[(3 * vertex) + 2];
}
