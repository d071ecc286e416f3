namespace Studio.Engine.Meshes;

/// <summary>Which shell lies inside which, for shells that do not cross: a vertex of one looks straight up and counts the walls of each other.</summary>
internal static class Nesting
{
    /// <summary>How many other shells each lies in: even where it bounds the cavity, odd where it is a hollow in it.</summary>
    public static int[] Depths(TriangleMesh mesh, int[] shellOf, IReadOnlyList<Shell> shells)
    {
        var depths = new int[shells.Count];
        var around = new int[shells.Count];
        for (var s = 0; s < shells.Count && shells.Count > 1; s++)
        {
            Array.Clear(around);
            var from = mesh.Vertex(shells[s].Vertex);
            if (shells.Any(o => o != shells[s] && Holds(o, from)))
            {
                Count(mesh, shellOf, s, from, around);
            }

            depths[s] = around.Count(w => w != 0);
        }

        return depths;
    }

    private static bool Holds(Shell shell, Point3 p) =>
        p.X >= shell.Low.X && p.X <= shell.High.X && p.Y >= shell.Low.Y && p.Y <= shell.High.Y && p.Z >= shell.Low.Z && p.Z <= shell.High.Z;

    private static void Count(TriangleMesh mesh, int[] shellOf, int own, Point3 from, int[] around)
    {
        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            var shell = shellOf[mesh.Corners[3 * f]];
            var (a, b, c) = mesh.Triangle(f);
            if (shell == own || Math.Max(a.Z, Math.Max(b.Z, c.Z)) <= from.Z || !(Crosses(from, a, b) ^ Crosses(from, b, c) ^ Crosses(from, c, a)))
            {
                continue;
            }

            var normal = (b - a).Cross(c - a);
            var above = normal.Z != 0 && a.Z - from.Z + ((((a.X - from.X) * normal.X) + ((a.Y - from.Y) * normal.Y)) / normal.Z) > 0;
            around[shell] += above ? Math.Sign(normal.Z) : 0;
        }
    }

    // seen from above, a line from p towards +x meets the edge; both facets of the edge get the same answer, since its ends are taken in one order
    private static bool Crosses(Point3 p, Point3 a, Point3 b)
    {
        if (a.Y > p.Y == b.Y > p.Y)
        {
            return false;
        }

        var (low, high) = a.Y < b.Y ? (a, b) : (b, a);
        return p.X < low.X + ((high.X - low.X) * ((p.Y - low.Y) / (high.Y - low.Y)));
    }
}
