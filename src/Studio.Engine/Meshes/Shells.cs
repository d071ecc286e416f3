using System.Runtime.InteropServices;

namespace Studio.Engine.Meshes;

/// <summary>A part of a mesh that hangs together.</summary>
/// <param name="Facets">How many facets.</param>
/// <param name="VolumeMm3">Enclosed volume [mm³], negative where wound inwards.</param>
/// <param name="Low">Lowest coordinates [mm].</param>
/// <param name="High">Highest coordinates [mm].</param>
/// <param name="Vertex">Number of one of its vertices.</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Shell(int Facets, double VolumeMm3, Point3 Low, Point3 High, int Vertex);

/// <summary>The shells of a closed mesh, told apart by which vertices facets join.</summary>
internal static class Shells
{
    /// <summary>The shell of each vertex, and the shells in the order their vertices come.</summary>
    public static (int[] OfVertex, IReadOnlyList<Shell> All) Of(TriangleMesh mesh)
    {
        var parent = Join(mesh);
        var roots = new List<int>();
        for (var v = 0; v < parent.Length; v++)
        {
            // a root is always the lowest of its vertices, so it has been numbered before any vertex that points at it
            if (parent[v] == v)
            {
                roots.Add(v);
                parent[v] = ~(roots.Count - 1);
            }
            else
            {
                parent[v] = parent[parent[v]] < 0 ? parent[parent[v]] : parent[v];
            }
        }

        for (var v = 0; v < parent.Length; v++)
        {
            parent[v] = ~parent[v];
        }

        return (parent, Measure(mesh, parent, roots));
    }

    private static int[] Join(TriangleMesh mesh)
    {
        var parent = new int[mesh.VertexCount];
        for (var v = 0; v < parent.Length; v++)
        {
            parent[v] = v;
        }

        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            Union(parent, mesh.Corners[i], mesh.Corners[i + 1]);
            Union(parent, mesh.Corners[i], mesh.Corners[i + 2]);
        }

        for (var v = 0; v < parent.Length; v++)
        {
            parent[v] = parent[parent[v]];
        }

        return parent;
    }

    private static void Union(int[] parent, int a, int b)
    {
        (a, b) = (Root(parent, a), Root(parent, b));
        parent[Math.Max(a, b)] = Math.Min(a, b);
    }

    private static int Root(int[] parent, int v)
    {
        while (parent[v] != v)
        {
            v = parent[v] = parent[parent[v]];
        }

        return v;
    }

    private static Shell[] Measure(TriangleMesh mesh, int[] shellOf, List<int> roots)
    {
        var (low, high) = mesh.Bounds();
        var middle = (low + high) * 0.5;
        var shells = roots.Select(v => new Shell(0, 0, mesh.Vertex(v), mesh.Vertex(v), v)).ToArray();
        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            var (a, b, c) = mesh.Triangle(f);
            ref var s = ref shells[shellOf[mesh.Corners[3 * f]]];
            s = new Shell(s.Facets + 1, s.VolumeMm3 + ((a - middle).Dot((b - middle).Cross(c - middle)) / 6), Least(Least(s.Low, a), Least(b, c)), Most(Most(s.High, a), Most(b, c)), s.Vertex);
        }

        return shells;
    }

    private static Point3 Least(Point3 a, Point3 b) => new(Math.Min(a.X, b.X), Math.Min(a.Y, b.Y), Math.Min(a.Z, b.Z));

    private static Point3 Most(Point3 a, Point3 b) => new(Math.Max(a.X, b.X), Math.Max(a.Y, b.Y), Math.Max(a.Z, b.Z));
}
