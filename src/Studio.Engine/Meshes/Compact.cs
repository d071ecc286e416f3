namespace Studio.Engine.Meshes;

/// <summary>Leaves out what no facet needs.</summary>
internal static class Compact
{
    /// <summary>The same triangles over the vertices they use.</summary>
    public static TriangleMesh Used(double[] xyz, int[] corners)
    {
        var to = new int[xyz.Length / 3];
        foreach (var v in corners)
        {
            to[v] = 1;
        }

        var count = 0;
        for (var v = 0; v < to.Length; v++)
        {
            if (to[v] == 0)
            {
                continue;
            }

            (xyz[3 * count], xyz[(3 * count) + 1], xyz[(3 * count) + 2]) = (xyz[3 * v], xyz[(3 * v) + 1], xyz[(3 * v) + 2]);
            to[v] = count++;
        }

        if (3 * count == xyz.Length)
        {
            return new TriangleMesh(xyz, corners);
        }

        for (var i = 0; i < corners.Length; i++)
        {
            corners[i] = to[corners[i]];
        }

        Array.Resize(ref xyz, 3 * count);
        return new TriangleMesh(xyz, corners);
    }

    /// <summary>The same mesh without facets of which two corners are one vertex: they have no area and their edges cancel.</summary>
    public static (TriangleMesh Mesh, int Dropped) WithoutFlat(TriangleMesh mesh)
    {
        var (corners, kept) = (mesh.Corners, 0);
        for (var i = 0; i < corners.Length; i += 3)
        {
            var (a, b, c) = (corners[i], corners[i + 1], corners[i + 2]);
            if (a != b && b != c && c != a)
            {
                (corners[kept], corners[kept + 1], corners[kept + 2]) = (a, b, c);
                kept += 3;
            }
        }

        if (kept == corners.Length)
        {
            return (mesh, 0);
        }

        var dropped = (corners.Length - kept) / 3;
        Array.Resize(ref corners, kept);
        return (Used(mesh.Coordinates, corners), dropped);
    }
}
