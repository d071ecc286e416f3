using Studio.Engine.Meshes;

namespace Studio.Engine.Tests.Meshes;

/// <summary>The slow way: every facet clipped at the level, and the flux of (x, y, 0)/2 through what is left, which needs no lid. Kahan's sum.</summary>
internal static class Clipped
{
    public static double VolumeMm3(TriangleMesh mesh, double z)
    {
        var (sum, lost) = (0.0, 0.0);
        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            var (a, b, c) = mesh.Triangle(f);
            List<Point3> kept = [];
            foreach (var (p, q) in new[] { (a, b), (b, c), (c, a) })
            {
                if (p.Z <= z)
                {
                    kept.Add(p);
                }

                if (p.Z <= z != q.Z <= z)
                {
                    // from the lower end, so that both facets of an edge cut it alike
                    var (low, high) = p.Z <= z ? (p, q) : (q, p);
                    kept.Add((low + ((high - low) * ((z - low.Z) / (high.Z - low.Z)))) with { Z = z });
                }
            }

            for (var k = 2; k < kept.Count; k++)
            {
                var normal = (kept[k - 1] - kept[0]).Cross(kept[k] - kept[0]) * 0.5;
                var middle = (kept[0] + kept[k - 1] + kept[k]) * (1.0 / 3);
                var part = (((middle.X * normal.X) + (middle.Y * normal.Y)) / 2) - lost;
                var next = sum + part;
                (lost, sum) = (next - sum - part, next);
            }
        }

        return sum;
    }
}
