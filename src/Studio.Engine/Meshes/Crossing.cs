namespace Studio.Engine.Meshes;

/// <summary>
/// Whether a closed mesh passes through itself: an edge of one facet pierces another that it does not belong to. What touches does not cross, and
/// what pierces by less than the tolerance is rounding.
/// </summary>
public static class Crossing
{
    private const int Most = 1000;

    // a few seconds; only fans of tens of thousands of facets about one corner come near
    private const long MostLooks = 1_000_000_000;

    /// <summary>How many pairs of facets cross, counted up to a thousand, and where one of them does.</summary>
    /// <param name="mesh">Closed.</param>
    /// <param name="tolerance">What is nearer than this to a plane or a corner touches [mm].</param>
    /// <returns>Whole is false where so many boxes meet that the search was given up.</returns>
    public static (int Pairs, Point3 At, bool Whole) Find(TriangleMesh mesh, double tolerance)
    {
        var (pairs, at, looks) = (0, default(Point3), 0L);
        new BoxTree(mesh).Pairs((f, g) =>
        {
            if (Of(mesh, f, g, tolerance) is { } place)
            {
                at = pairs++ == 0 ? place : at;
            }

            return pairs < Most && ++looks < MostLooks;
        });
        return (pairs, at, pairs > 0 || looks < MostLooks);
    }

    /// <summary>Where it does and what to do, or null; and a finding where the search was given up.</summary>
    internal static (string? Trouble, IReadOnlyList<Finding> Findings) Check(TriangleMesh mesh, double tolerance, string path)
    {
        var (pairs, at, whole) = Find(mesh, tolerance);
        return pairs > 0
            ? (FormattableString.Invariant($"It passes through itself: {(pairs < Most ? "" : "at least ")}{pairs} {(pairs == 1 ? "pair of facets crosses" : "pairs of facets cross")}, one of them at {MeshWords.Place(at)}. Join the overlapping bodies into one, or mend the fold there."), [])
            : (null, whole ? [] : [new Finding("mesh-crossing-unknown", Severity.Warn, path, "Too many facets meet in one corner to tell whether the mesh passes through itself. Its volumes hold only if it does not.", "")]);
    }

    private static Point3? Of(TriangleMesh mesh, int f, int g, double tolerance)
    {
        var mine = mesh.Corners.AsSpan(3 * f, 3);
        var other = mesh.Corners.AsSpan(3 * g, 3);
        var shared = (-1, -1);
        for (var i = 0; i < 3; i++)
        {
            var j = other.IndexOf(mine[i]);
            if (j >= 0 && shared.Item1 >= 0)
            {
                return null; // two corners in common: neighbours along an edge
            }

            shared = j >= 0 ? (i, j) : shared;
        }

        return Edges(mesh, mine, other, shared.Item1, tolerance) ?? Edges(mesh, other, mine, shared.Item2, tolerance);
    }

    // every edge of the first against the face of the second; with one corner in common, only the edge across from it can pierce
    private static Point3? Edges(TriangleMesh mesh, ReadOnlySpan<int> edges, ReadOnlySpan<int> face, int shared, double tolerance)
    {
        var (u, v, w) = (mesh.Vertex(face[0]), mesh.Vertex(face[1]), mesh.Vertex(face[2]));
        var normal = (v - u).Cross(w - u);
        var length = normal.Length;
        Span<double> height = stackalloc double[3];
        for (var k = 0; k < 3; k++)
        {
            height[k] = k == shared ? 0 : normal.Dot(mesh.Vertex(edges[k]) - u);
        }

        for (var k = 0; k < 3; k++)
        {
            var next = (k + 1) % 3;
            if (Math.Min(height[k], height[next]) < -tolerance * length && Math.Max(height[k], height[next]) > tolerance * length)
            {
                var t = height[k] / (height[k] - height[next]);
                var p = (mesh.Vertex(edges[k]) * (1 - t)) + (mesh.Vertex(edges[next]) * t);
                if (Within(p, u, v, normal, tolerance) && Within(p, v, w, normal, tolerance) && Within(p, w, u, normal, tolerance))
                {
                    return p;
                }
            }
        }

        return null;
    }

    // on the inner side of one edge of the face, the edge itself included, yet not at its corner
    private static bool Within(Point3 p, Point3 from, Point3 to, Point3 normal, double tolerance) =>
        normal.Cross(to - from).Dot(p - from) >= -1e-9 * tolerance * normal.Length * (to - from).Length && (p - from).Length > tolerance;
}
