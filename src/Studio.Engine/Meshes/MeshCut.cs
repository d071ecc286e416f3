namespace Studio.Engine.Meshes;

/// <summary>Where a plane cuts a mesh.</summary>
public static class MeshCut
{
    /// <summary>
    /// The closed lines along which a plane meets the surface. A vertex that lies in the plane counts as in front of it, so every line closes
    /// and what is cut is the limit from behind; turn the normal round for the limit from in front.
    /// </summary>
    /// <param name="mesh">A closed mesh, consistently wound; lines that do not close are left out.</param>
    /// <param name="normal">Points to the front of the plane; need not be of length 1.</param>
    /// <param name="offset">The plane holds the points whose product with the normal is this.</param>
    /// <returns>Each line's points without the first one repeated, clockwise seen from the front around what is inside.</returns>
    public static IReadOnlyList<IReadOnlyList<Point3>> Loops(TriangleMesh mesh, Point3 normal, double offset) => Loops(mesh, Distances(mesh, normal, offset), inPlaneIsFront: true);

    /// <summary>As above, by what the caller says of each vertex.</summary>
    /// <param name="mesh">A closed mesh, consistently wound; lines that do not close are left out.</param>
    /// <param name="away">How far each vertex lies in front of the plane, in any one measure.</param>
    /// <param name="inPlaneIsFront">Which side a vertex in the plane itself is counted to; both are right where the plane only touches.</param>
    public static IReadOnlyList<IReadOnlyList<Point3>> Loops(TriangleMesh mesh, double[] away, bool inPlaneIsFront)
    {
        var follows = Steps(mesh, away, inPlaneIsFront);
        var loops = new List<IReadOnlyList<Point3>>();
        while (follows.Count > 0)
        {
            if (Walk(follows) is { Count: > 2 } edges && Points(mesh, away, edges) is { Count: > 2 } points)
            {
                loops.Add(points);
            }
        }

        return loops;
    }

    /// <summary>How far each vertex lies in front of a plane, in lengths of its normal.</summary>
    public static double[] Distances(TriangleMesh mesh, Point3 normal, double offset)
    {
        var away = new double[mesh.VertexCount];
        for (var i = 0; i < away.Length; i++)
        {
            away[i] = mesh.Vertex(i).Dot(normal) - offset;
        }

        return away;
    }

    // from the edge on which the surface comes through the plane to the one on which it goes back; two where two sheets share an edge
    private static Dictionary<long, Stack<long>> Steps(TriangleMesh mesh, double[] away, bool inPlaneIsFront)
    {
        var follows = new Dictionary<long, Stack<long>>();
        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            var (a, b, c) = (mesh.Corners[i], mesh.Corners[i + 1], mesh.Corners[i + 2]);
            var (front, second, third) = (Front(a), Front(b), Front(c));
            if (front == second && second == third)
            {
                continue;
            }

            var (start, end) = (Rising(a, b, front, second) ?? Rising(b, c, second, third) ?? Rising(c, a, third, front), Rising(b, a, second, front) ?? Rising(c, b, third, second) ?? Rising(a, c, front, third));
            if (!follows.TryGetValue(start!.Value, out var ends))
            {
                follows.Add(start.Value, ends = new Stack<long>(1));
            }

            ends.Push(end!.Value);
        }

        return follows;

        bool Front(int vertex) => inPlaneIsFront ? away[vertex] >= 0 : away[vertex] > 0;
    }

    private static long? Rising(int from, int to, bool fromFront, bool toFront) => !fromFront && toFront ? Edge(from, to) : null;

    private static long Edge(int a, int b) => ((long)Math.Min(a, b) << 32) | (uint)Math.Max(a, b);

    private static List<long>? Walk(Dictionary<long, Stack<long>> follows)
    {
        var start = follows.Keys.First();
        var edges = new List<long>();
        for (var at = start; ;)
        {
            edges.Add(at);
            if (!follows.TryGetValue(at, out var ends))
            {
                return null;
            }

            var next = ends.Pop();
            if (ends.Count == 0)
            {
                follows.Remove(at);
            }

            if (next == start)
            {
                return edges;
            }

            at = next;
        }
    }

    private static List<Point3> Points(TriangleMesh mesh, double[] away, List<long> edges)
    {
        var points = new List<Point3>(edges.Count);
        foreach (var edge in edges)
        {
            var p = Crossing(mesh, away, (int)(edge >> 32), (int)(edge & int.MaxValue));
            if (points.Count == 0 || p != points[^1])
            {
                points.Add(p);
            }
        }

        if (points.Count > 1 && points[0] == points[^1])
        {
            points.RemoveAt(points.Count - 1);
        }

        return points;
    }

    // a vertex that lies in the plane is the point itself, to the last bit, from whichever edge it is met
    private static Point3 Crossing(TriangleMesh mesh, double[] away, int low, int high) =>
        away[low] == 0 ? mesh.Vertex(low) : away[high] == 0 ? mesh.Vertex(high)
        : mesh.Vertex(low) + ((mesh.Vertex(high) - mesh.Vertex(low)) * (away[low] / (away[low] - away[high])));
}
