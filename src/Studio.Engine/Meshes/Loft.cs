namespace Studio.Engine.Meshes;

/// <summary>A closed surface through rings that lie one above the other.</summary>
public static class Loft
{
    /// <summary>Joins rings of as many points each, bottom and top closed by fans.</summary>
    /// <param name="rings">From the bottom up, each anticlockwise seen from above, convex or at least star-shaped about its middle.</param>
    public static TriangleMesh Through(IReadOnlyList<IReadOnlyList<Point3>> rings)
    {
        var points = rings[0].Count;
        var vertices = rings.SelectMany(r => r).Append(Middle(rings[0])).Append(Middle(rings[^1])).ToList();
        var (bottom, top) = (vertices.Count - 2, vertices.Count - 1);
        var corners = new List<int>();
        for (var k = 0; k < points; k++)
        {
            var next = (k + 1) % points;
            corners.AddRange([bottom, next, k]);
            for (var r = 0; r + 1 < rings.Count; r++)
            {
                var (low, high) = (r * points, (r + 1) * points);
                corners.AddRange([low + k, low + next, high + next, low + k, high + next, high + k]);
            }

            corners.AddRange([top, ((rings.Count - 1) * points) + k, ((rings.Count - 1) * points) + next]);
        }

        return new TriangleMesh([.. vertices.SelectMany(v => new[] { v.X, v.Y, v.Z })], [.. corners]);
    }

    private static Point3 Middle(IReadOnlyList<Point3> ring) => ring.Aggregate((a, b) => a + b) * (1.0 / ring.Count);
}
