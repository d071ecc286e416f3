using Studio.Engine.Meshes;

namespace Studio.Engine.Sheets;

/// <summary>A closed mesh cut by a plane.</summary>
internal static class MeshCut
{
    // of the mesh's size: nearer to the plane than this a vertex lies in it
    private const double Flush = 1e-10;

    /// <summary>The closed rings of the cut on the plane. Points come from the mesh's edges, so neighbours share them to the last bit.</summary>
    /// <param name="mesh">A closed mesh.</param>
    /// <param name="plane">The plane.</param>
    /// <param name="inPlaneIsFront">Which side a vertex in the plane itself is counted to; both are right where the plane only touches.</param>
    public static List<List<SheetPoint>> Rings(TriangleMesh mesh, SheetPlane plane, bool inPlaneIsFront)
    {
        var distances = Distances(mesh, plane);
        bool Front(int vertex) => inPlaneIsFront ? distances[vertex] >= 0 : distances[vertex] > 0;
        var next = new Dictionary<(int, int), Stack<(int, int)>>();
        for (var t = 0; t < mesh.Corners.Length; t += 3)
        {
            var (a, b, c) = (mesh.Corners[t], mesh.Corners[t + 1], mesh.Corners[t + 2]);
            if (Front(a) == Front(b) && Front(b) == Front(c))
            {
                continue;
            }

            // a triangle's way through the plane enters where its edge comes to the front and leaves where it goes back
            var (enter, leave) = (default((int, int)), default((int, int)));
            foreach (var (from, to) in ((int, int)[])[(a, b), (b, c), (c, a)])
            {
                (enter, leave) = (Front(from), Front(to)) switch
                {
                    (false, true) => (Edge(from, to), leave),
                    (true, false) => (enter, Edge(from, to)),
                    _ => (enter, leave),
                };
            }

            if (!next.TryGetValue(enter, out var ways))
            {
                next[enter] = ways = new Stack<(int, int)>(1);
            }

            ways.Push(leave);
        }

        return Chain(next, e => Crossing(mesh, plane, distances, e));
    }

    private static double[] Distances(TriangleMesh mesh, SheetPlane plane)
    {
        var (low, high) = mesh.Bounds();
        var flush = Flush * ((high - low).Length + low.Length + plane.Origin.Length);
        var normal = plane.Normal;
        var at = plane.Origin.Dot(normal);
        var distances = new double[mesh.VertexCount];
        for (var i = 0; i < distances.Length; i++)
        {
            var d = mesh.Vertex(i).Dot(normal) - at;
            distances[i] = Math.Abs(d) <= flush ? 0 : d;
        }

        return distances;
    }

    private static (int, int) Edge(int a, int b) => a < b ? (a, b) : (b, a);

    private static SheetPoint Crossing(TriangleMesh mesh, SheetPlane plane, double[] distances, (int A, int B) edge)
    {
        var (a, b) = (mesh.Vertex(edge.A), mesh.Vertex(edge.B));
        var (da, db) = (distances[edge.A], distances[edge.B]);
        return plane.On(da == 0 ? a : db == 0 ? b : a + ((b - a) * (da / (da - db))));
    }

    private static List<List<SheetPoint>> Chain(Dictionary<(int, int), Stack<(int, int)>> next, Func<(int, int), SheetPoint> point)
    {
        var rings = new List<List<SheetPoint>>();
        foreach (var start in next.Keys.ToList())
        {
            while (next[start].Count > 0)
            {
                var ring = new List<SheetPoint>();
                var at = start;
                while (next.TryGetValue(at, out var ways) && ways.TryPop(out var onward))
                {
                    ring.Add(point(at));
                    at = onward;
                }

                rings.Add(ring);
            }
        }

        return rings;
    }
}
