namespace Studio.Engine.Meshes;

/// <summary>Finds facets that are there more than once, whichever way they run.</summary>
internal static class Duplicates
{
    /// <summary>How many too many there are, and the middle of the first.</summary>
    public static (int Count, Point3 At) Of(TriangleMesh mesh)
    {
        var seen = new HashSet<(int, int, int)>(mesh.TriangleCount);
        var (count, at) = (0, default(Point3));
        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            if (!seen.Add(Key(mesh.Corners.AsSpan(3 * f, 3))))
            {
                var (a, b, c) = mesh.Triangle(f);
                at = count++ == 0 ? (a + b + c) * (1.0 / 3) : at;
            }
        }

        return (count, at);
    }

    private static (int, int, int) Key(ReadOnlySpan<int> facet)
    {
        var (a, b, c) = (facet[0], facet[1], facet[2]);
        var (low, high) = (Math.Min(a, Math.Min(b, c)), Math.Max(a, Math.Max(b, c)));
        return (low, a ^ b ^ c ^ low ^ high, high);
    }
}
