namespace Studio.Engine.Meshes;

/// <summary>The part of a triangle between two heights.</summary>
internal static class Slab
{
    /// <summary>Its corners, up to five; none where the triangle lies elsewhere or flat in a slab without thickness.</summary>
    public static List<Point3> Cut(Point3 a, Point3 b, Point3 c, double low, double high)
    {
        if (low == high && a.Z == b.Z && b.Z == c.Z)
        {
            return [];
        }

        return Half(Half([a, b, c], low, 1), high, -1);
    }

    // what lies on one side of a level: above it for +1, below it for −1
    private static List<Point3> Half(List<Point3> polygon, double level, int side)
    {
        var kept = new List<Point3>(5);
        for (var k = 0; k < polygon.Count; k++)
        {
            var (p, q) = (polygon[k], polygon[(k + 1) % polygon.Count]);
            var (dp, dq) = ((p.Z - level) * side, (q.Z - level) * side);
            if (dp >= 0)
            {
                kept.Add(p);
            }

            if (dp >= 0 != dq >= 0)
            {
                var t = dp / (dp - dq);
                kept.Add(((p * (1 - t)) + (q * t)) with { Z = level });
            }
        }

        return kept;
    }
}
