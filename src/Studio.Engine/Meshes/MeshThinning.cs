namespace Studio.Engine.Meshes;

/// <summary>A lighter copy of a mesh for a picture: vertices that share a small cube become one. Nothing is computed from it.</summary>
public static class MeshThinning
{
    private const int MostSteps = 40;

    /// <summary>At most so many triangles; the mesh itself where it has no more.</summary>
    public static TriangleMesh ToAtMost(TriangleMesh mesh, int triangles)
    {
        if (mesh.TriangleCount <= triangles)
        {
            return mesh;
        }

        var (low, high) = mesh.Bounds();
        var size = high - low;

        // a surface of area A in cubes of edge c has about 2 A / c² triangles; the box is a fair first guess, then grow until it fits
        var cube = Math.Sqrt(4 * ((size.X * size.Y) + (size.Y * size.Z) + (size.Z * size.X)) / triangles) / 1.6;
        var thin = mesh;
        for (var i = 0; i < MostSteps && thin.TriangleCount > triangles; i++, cube *= 1.15)
        {
            thin = Cluster(mesh, low, Math.Max(cube, double.Epsilon));
        }

        return thin;
    }

    private static TriangleMesh Cluster(TriangleMesh mesh, Point3 low, double cube)
    {
        var (cubes, number) = (new Dictionary<(int, int, int), int>(), new int[mesh.VertexCount]);
        var (sums, counts) = (new List<Point3>(), new List<int>());
        for (var i = 0; i < number.Length; i++)
        {
            var p = mesh.Vertex(i);
            var key = ((int)((p.X - low.X) / cube), (int)((p.Y - low.Y) / cube), (int)((p.Z - low.Z) / cube));
            if (!cubes.TryGetValue(key, out var n))
            {
                cubes.Add(key, n = sums.Count);
                sums.Add(default);
                counts.Add(0);
            }

            number[i] = n;
            sums[n] += p;
            counts[n]++;
        }

        var corners = new List<int>();
        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            var (a, b, c) = (number[mesh.Corners[i]], number[mesh.Corners[i + 1]], number[mesh.Corners[i + 2]]);
            if (a != b && b != c && c != a)
            {
                corners.AddRange([a, b, c]);
            }
        }

        return new TriangleMesh([.. sums.SelectMany((s, i) => new[] { s.X / counts[i], s.Y / counts[i], s.Z / counts[i] })], [.. corners]);
    }
}
