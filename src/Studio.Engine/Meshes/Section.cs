namespace Studio.Engine.Meshes;

/// <summary>Cuts of a closed mesh across an axis.</summary>
public static class Section
{
    /// <summary>The cross-section at a height as closed polygons seen from above: outer ones anticlockwise, holes clockwise. At a ledge it is the one just below.</summary>
    /// <param name="mesh">Closed and wound outwards.</param>
    /// <param name="zMm">Height [mm].</param>
    public static IReadOnlyList<IReadOnlyList<Point3>> AtHeight(TriangleMesh mesh, double zMm)
    {
        var below = Loops(mesh, 2, v => v < zMm, zMm);
        return below.Count > 0 ? below : Loops(mesh, 2, v => v <= zMm, zMm);
    }

    /// <summary>The upright section across y, seen from the front (x to the right, z up): outer polygons anticlockwise, holes clockwise.</summary>
    /// <param name="mesh">Closed and wound outwards.</param>
    /// <param name="yMm">Where [mm].</param>
    public static IReadOnlyList<IReadOnlyList<Point3>> Upright(TriangleMesh mesh, double yMm)
    {
        var behind = Loops(mesh, 1, v => v > yMm, yMm);
        return behind.Count > 0 ? behind : Loops(mesh, 1, v => v >= yMm, yMm);
    }

    /// <summary>Twice the area of a polygon seen from above or, for an upright one, from the front [mm²]; negative where clockwise.</summary>
    public static double DoubleAreaMm2(IReadOnlyList<Point3> polygon, bool upright = false)
    {
        var sum = 0.0;
        for (var k = 0; k < polygon.Count; k++)
        {
            var (a, b) = (polygon[k] - polygon[0], polygon[(k + 1) % polygon.Count] - polygon[0]);
            sum += upright ? (a.X * b.Z) - (a.Z * b.X) : (a.X * b.Y) - (a.Y * b.X);
        }

        return sum;
    }

    // every facet with corners on both sides gives one piece, from edge to edge; an edge has two facets, so the pieces close to loops
    private static List<IReadOnlyList<Point3>> Loops(TriangleMesh mesh, int axis, Func<double, bool> below, double at)
    {
        var onward = new Dictionary<long, long>();
        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            var sides = 0;
            for (var k = 0; k < 3; k++)
            {
                sides |= below(mesh.Coordinates[(3 * mesh.Corners[i + k]) + axis]) ? 1 << k : 0;
            }

            if (sides is 0 or 7)
            {
                continue;
            }

            // the corner that is alone on its side; with it below, the piece runs from its edge to the corner before it to that to the corner after it
            var (lone, alone) = sides switch { 1 => (0, true), 2 => (1, true), 4 => (2, true), 6 => (0, false), 5 => (1, false), _ => (2, false) };
            var (v, after, before) = (mesh.Corners[i + lone], mesh.Corners[i + ((lone + 1) % 3)], mesh.Corners[i + ((lone + 2) % 3)]);
            var (start, end) = alone ? (Edge(v, before), Edge(v, after)) : (Edge(v, after), Edge(v, before));
            onward[start] = end;
        }

        var loops = new List<IReadOnlyList<Point3>>();
        foreach (var start in onward.Keys.ToList())
        {
            var loop = Follow(mesh, axis, at, onward, start);
            if (loop.Count > 2)
            {
                loops.Add(loop);
            }
        }

        return loops;
    }

    private static List<Point3> Follow(TriangleMesh mesh, int axis, double at, Dictionary<long, long> onward, long start)
    {
        var loop = new List<Point3>();
        for (var edge = start; onward.Remove(edge, out var next); edge = next)
        {
            var point = Crossing(mesh, axis, at, edge);
            if (loop.Count == 0 || point != loop[^1])
            {
                loop.Add(point);
            }
        }

        if (loop.Count > 1 && loop[0] == loop[^1])
        {
            loop.RemoveAt(loop.Count - 1);
        }

        return loop;
    }

    private static Point3 Crossing(TriangleMesh mesh, int axis, double at, long edge)
    {
        var (a, b) = (mesh.Vertex((int)(edge >> 32)), mesh.Vertex((int)(edge & int.MaxValue)));
        var (from, to) = axis == 2 ? (a.Z, b.Z) : (a.Y, b.Y);
        var t = Math.Clamp((at - from) / (to - from), 0, 1);
        var p = (a * (1 - t)) + (b * t);
        return axis == 2 ? p with { Z = at } : p with { Y = at };
    }

    private static long Edge(int a, int b) => ((long)Math.Min(a, b) << 32) | (uint)Math.Max(a, b);
}
