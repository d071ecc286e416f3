namespace Studio.Engine.Meshes;

/// <summary>Cuts of a closed mesh across an axis.</summary>
public static class Section
{
    /// <summary>The cross-section at a height as closed polygons seen from above: outer ones anticlockwise, holes clockwise. At a ledge it is the one just below.</summary>
    /// <param name="mesh">Closed and wound outwards.</param>
    /// <param name="zMm">Height [mm].</param>
    public static IReadOnlyList<IReadOnlyList<Point3>> AtHeight(TriangleMesh mesh, double zMm) => Seen(mesh, new(0, 0, -1), -zMm);

    /// <summary>The upright section across y, seen from the front (x to the right, z up): outer polygons anticlockwise, holes clockwise.</summary>
    /// <param name="mesh">Closed and wound outwards.</param>
    /// <param name="yMm">Where [mm].</param>
    public static IReadOnlyList<IReadOnlyList<Point3>> Upright(TriangleMesh mesh, double yMm) => Seen(mesh, new(0, 1, 0), yMm);

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

    // seen against the normal; what only touches the plane from behind is cut by its other side
    private static IReadOnlyList<IReadOnlyList<Point3>> Seen(TriangleMesh mesh, Point3 away, double offset)
    {
        var distances = MeshCut.Distances(mesh, away, offset);
        var cut = MeshCut.Loops(mesh, distances, inPlaneIsFront: false);
        return cut.Count > 0 ? cut : MeshCut.Loops(mesh, distances, inPlaneIsFront: true);
    }
}
