namespace Studio.Engine.Meshes;

/// <summary>
/// Makes one of vertices that lie nearer to each other than a tolerance, first come first kept. Done only where exact equality leaves a mesh open:
/// programs round the same corner differently in different faces, and a closed mesh needs no help.
/// </summary>
internal static class NearWeld
{
    /// <summary>
    /// Tolerance as a share of the bounding box's diagonal. Six printed digits or single precision put a corner off by up to 5e-6 of the
    /// largest coordinate; 1e-5 of a 200 mm mould is 2 µm, far below anything that can be cast, and of a fine mesh's edge a hundredth.
    /// </summary>
    public const double OfDiagonal = 1e-5;

    /// <summary>The tolerance for this mesh [its own unit].</summary>
    public static double Tolerance(TriangleMesh mesh) => mesh.Bounds() is var (low, high) ? (high - low).Length * OfDiagonal : 0;

    /// <summary>The mesh with near vertices made one and the facets that vanish by it left out, and how many of each.</summary>
    public static (TriangleMesh Mesh, int Merged, int Dropped) Of(TriangleMesh mesh, double tolerance)
    {
        var to = new int[mesh.VertexCount];
        // a cell can hold only a few kept vertices, since they are farther apart than the tolerance: no chain grows long
        var (low, cell) = (mesh.Bounds().Low, 2 * tolerance);
        var first = new Dictionary<(int, int, int), int>(mesh.VertexCount);
        var next = new int[mesh.VertexCount];
        var merged = 0;
        for (var v = 0; v < to.Length; v++)
        {
            var p = mesh.Vertex(v);
            var grid = (p - low) * (1 / cell);
            to[v] = Near(mesh, first, next, p, grid, tolerance);
            if (to[v] >= 0)
            {
                merged++;
                continue;
            }

            var key = ((int)grid.X, (int)grid.Y, (int)grid.Z);
            (to[v], next[v]) = (v, first.TryGetValue(key, out var other) ? other : -1);
            first[key] = v;
        }

        if (merged == 0)
        {
            return (mesh, 0, 0);
        }

        var corners = mesh.Corners;
        for (var i = 0; i < corners.Length; i++)
        {
            corners[i] = to[corners[i]];
        }

        var (welded, dropped) = Compact.WithoutFlat(Compact.Used(mesh.Coordinates, corners));
        return (welded, merged, dropped);
    }

    private static int Near(TriangleMesh mesh, Dictionary<(int, int, int), int> first, int[] next, Point3 p, Point3 grid, double tolerance)
    {
        // a cell is two tolerances wide: only the half towards which the point lies has neighbours in reach
        var (x, y, z) = ((int)(grid.X - 0.5), (int)(grid.Y - 0.5), (int)(grid.Z - 0.5));
        for (var k = 0; k < 8; k++)
        {
            if (!first.TryGetValue((x + (k & 1), y + ((k >> 1) & 1), z + (k >> 2)), out var at))
            {
                continue;
            }

            for (; at >= 0; at = next[at])
            {
                if ((mesh.Vertex(at) - p).Length <= tolerance)
                {
                    return at;
                }
            }
        }

        return -1;
    }
}
