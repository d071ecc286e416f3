namespace Studio.Engine.Meshes;

/// <summary>The edges a drawing shows.</summary>
public static class MeshEdges
{
    /// <summary>Edges at which the surface turns by more than an angle.</summary>
    /// <param name="mesh">A closed mesh.</param>
    /// <param name="degrees">From 0 (flat) to 180.</param>
    public static IReadOnlyList<(Point3 A, Point3 B)> Sharp(TriangleMesh mesh, double degrees)
    {
        var least = Math.Cos(degrees * Math.PI / 180);
        var first = new Dictionary<(Point3, Point3), Point3>();
        var sharp = new List<(Point3, Point3)>();
        for (var i = 0; i < mesh.TriangleCount; i++)
        {
            var (a, b, c) = mesh.Triangle(i);
            var normal = (b - a).Cross(c - a);
            if (normal.Length is var length && !(length > 1e-12))
            {
                continue;
            }

            normal *= 1 / length;
            foreach (var (p, q) in new[] { (a, b), (b, c), (c, a) })
            {
                // by place, not by number: facets that meet in a point or a seam may number it twice
                if (!first.Remove((q, p), out var other))
                {
                    first[(p, q)] = normal;
                }
                else if (other.Dot(normal) < least)
                {
                    sharp.Add((p, q));
                }
            }
        }

        return sharp;
    }
}
