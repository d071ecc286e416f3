namespace Studio.Engine.Meshes;

/// <summary>Room between an upright box centred over x = y = 0 and the walls of a mesh.</summary>
internal static class BoxGap
{
    // a facet within 10° of level is floor, ledge or lid; the room that counts is to the walls
    private const double FloorCosine = 0.985;

    // lids out of single-precision files are level to about this share of the size: what is nearer to the box's ends does not poke into it
    private const double Level = 2e-7;

    /// <summary>
    /// The smallest distance from the box to a wall [mm], square to the wall. Where the mesh stands inside the box's outline between the two
    /// heights, minus the depth to which it does; where the box stands wholly outside, minus its distance.
    /// </summary>
    public static double Mm(TriangleMesh mesh, double halfWidth, double halfDepth, double from, double to)
    {
        var (low, high) = mesh.Bounds();
        var slack = Level * (high - low).Length;
        var (bottom, top) = (Math.Clamp(from + slack, low.Z + slack, high.Z - slack), Math.Clamp(to - slack, low.Z + slack, high.Z - slack));
        (bottom, top) = bottom <= top ? (bottom, top) : (Math.Clamp(from, low.Z + slack, high.Z - slack), Math.Clamp(from, low.Z + slack, high.Z - slack));
        var (box, rectangle) = (new UprightBox(halfWidth, halfDepth, from, to), new Rectangle(halfWidth, halfDepth));
        var (gap, depth) = (double.PositiveInfinity, 0.0);
        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            var (a, b, c) = mesh.Triangle(f);
            var least = box.AtLeast(a, b, c);
            if (least > 0 && least >= gap)
            {
                continue;
            }

            var normal = (b - a).Cross(c - a);
            gap = Math.Abs(normal.Z) < FloorCosine * normal.Length ? Math.Min(gap, box.Distance(a, b, c)) : gap;
            depth = least > 0 ? depth : Math.Max(depth, rectangle.Depth(Slab.Cut(a, b, c, bottom, top)));
        }

        return depth > slack ? -depth : !double.IsFinite(gap) ? 0 : Inside(mesh, bottom) ? gap : -gap;
    }

    private static bool Inside(TriangleMesh mesh, double z)
    {
        var winding = 0;
        foreach (var polygon in Section.AtHeight(mesh, z))
        {
            for (var k = 0; k < polygon.Count; k++)
            {
                var (a, b) = (polygon[k], polygon[(k + 1) % polygon.Count]);
                if (a.Y > 0 != b.Y > 0 && a.X - (a.Y * (b.X - a.X) / (b.Y - a.Y)) > 0)
                {
                    winding += b.Y > a.Y ? 1 : -1;
                }
            }
        }

        return winding > 0;
    }
}
