using Studio.Engine.Meshes;

namespace Studio.Engine.Tests.Meshes;

/// <summary>Closed solids made here, wound outwards.</summary>
internal static class Solids
{
    private static readonly int[] BoxCorners =
        [0, 2, 1, 0, 3, 2, 4, 5, 6, 4, 6, 7, 0, 1, 5, 0, 5, 4, 1, 2, 6, 1, 6, 5, 2, 3, 7, 2, 7, 6, 3, 0, 4, 3, 4, 7];

    /// <summary>A box of twelve facets.</summary>
    public static TriangleMesh Box(double x, double y, double z, double wide, double deep, double high) => new(
        [x, y, z, x + wide, y, z, x + wide, y + deep, z, x, y + deep, z, x, y, z + high, x + wide, y, z + high, x + wide, y + deep, z + high, x, y + deep, z + high], [.. BoxCorners]);

    /// <summary>A cube of eight smaller ones less one of them: 7/8 of its volume, over the 26 or 27 points they share.</summary>
    public static TriangleMesh SevenEighths(double side)
    {
        var (points, corners) = (new List<Point3>(), new List<int>());
        bool Full(int x, int y, int z) => x is 0 or 1 && y is 0 or 1 && z is 0 or 1 && (x, y, z) != (1, 1, 1);
        for (var cell = 0; cell < 8; cell++)
        {
            var at = new[] { cell & 1, (cell >> 1) & 1, cell >> 2 };
            for (var face = 0; face < 6 && Full(at[0], at[1], at[2]); face++)
            {
                var (axis, ahead) = (face / 2, face % 2);
                var beyond = at.ToArray();
                beyond[axis] += (2 * ahead) - 1;
                if (Full(beyond[0], beyond[1], beyond[2]))
                {
                    continue;
                }

                Point3 Corner(int u, int v)
                {
                    var c = at.ToArray();
                    (c[axis], c[(axis + 1) % 3], c[(axis + 2) % 3]) = (c[axis] + ahead, c[(axis + 1) % 3] + u, c[(axis + 2) % 3] + v);
                    return new Point3(c[0], c[1], c[2]) * (side / 2);
                }

                Point3[] square = ahead == 1 ? [Corner(0, 0), Corner(1, 0), Corner(1, 1), Corner(0, 1)] : [Corner(0, 0), Corner(0, 1), Corner(1, 1), Corner(1, 0)];
                var numbers = square.Select(p => points.IndexOf(p) is var i and >= 0 ? i : Add(p)).ToArray();
                corners.AddRange([numbers[0], numbers[1], numbers[2], numbers[0], numbers[2], numbers[3]]);
            }
        }

        return new TriangleMesh([.. points.SelectMany(p => new[] { p.X, p.Y, p.Z })], [.. corners]);

        int Add(Point3 p)
        {
            points.Add(p);
            return points.Count - 1;
        }
    }

    /// <summary>Both together, as one list of facets.</summary>
    public static TriangleMesh With(this TriangleMesh a, TriangleMesh b) => new([.. a.Coordinates, .. b.Coordinates], [.. a.Corners, .. b.Corners.Select(c => c + a.VertexCount)]);

    /// <summary>The same wound the other way.</summary>
    public static TriangleMesh InsideOut(this TriangleMesh a) => new([.. a.Coordinates], [.. a.Corners.Chunk(3).SelectMany(t => new[] { t[0], t[2], t[1] })]);

    /// <summary>Every vertex moved.</summary>
    public static TriangleMesh Moved(this TriangleMesh a, Func<Point3, Point3> to) =>
        new([.. Enumerable.Range(0, a.VertexCount).Select(a.Vertex).Select(to).SelectMany(p => new[] { p.X, p.Y, p.Z })], [.. a.Corners]);

    /// <summary>A ball of 20 · 4ⁿ facets: an icosahedron whose edges are halved n times, every vertex on the sphere.</summary>
    public static TriangleMesh Ball(double radius, int halvings)
    {
        var g = (1 + Math.Sqrt(5)) / 2;
        List<Point3> points = [new(-1, g, 0), new(1, g, 0), new(-1, -g, 0), new(1, -g, 0), new(0, -1, g), new(0, 1, g), new(0, -1, -g), new(0, 1, -g), new(g, 0, -1), new(g, 0, 1), new(-g, 0, -1), new(-g, 0, 1)];
        int[] corners =
        [
            0, 11, 5, 0, 5, 1, 0, 1, 7, 0, 7, 10, 0, 10, 11, 1, 5, 9, 5, 11, 4, 11, 10, 2, 10, 7, 6, 7, 1, 8,
            3, 9, 4, 3, 4, 2, 3, 2, 6, 3, 6, 8, 3, 8, 9, 4, 9, 5, 2, 4, 11, 6, 2, 10, 8, 6, 7, 9, 8, 1,
        ];
        points = [.. points.Select(p => p * (radius / p.Length))];
        for (var n = 0; n < halvings; n++)
        {
            var middles = new Dictionary<(int, int), int>();
            int Middle(int a, int b)
            {
                var key = (Math.Min(a, b), Math.Max(a, b));
                if (!middles.TryGetValue(key, out var m))
                {
                    m = middles[key] = points.Count;
                    var half = (points[a] + points[b]) * 0.5;
                    points.Add(half * (radius / half.Length));
                }

                return m;
            }

            corners = [.. corners.Chunk(3).SelectMany(t =>
            {
                var (ab, bc, ca) = (Middle(t[0], t[1]), Middle(t[1], t[2]), Middle(t[2], t[0]));
                return new[] { t[0], ab, ca, t[1], bc, ab, t[2], ca, bc, ab, bc, ca };
            })];
        }

        return new TriangleMesh([.. points.SelectMany(p => new[] { p.X, p.Y, p.Z })], corners);
    }

    /// <summary>A torus lying flat, its tube's middle at <paramref name="radius"/>.</summary>
    public static TriangleMesh Torus(double radius, double tube, int around, int across)
    {
        var (xyz, corners) = (new List<double>(), new List<int>());
        for (var i = 0; i < around; i++)
        {
            for (var j = 0; j < across; j++)
            {
                var (u, v) = (2 * Math.PI * i / around, 2 * Math.PI * j / across);
                var r = radius + (tube * Math.Cos(v));
                xyz.AddRange([r * Math.Cos(u), r * Math.Sin(u), tube * Math.Sin(v)]);
                int At(int a, int b) => (a % around * across) + (b % across);
                corners.AddRange([At(i, j), At(i + 1, j), At(i + 1, j + 1), At(i, j), At(i + 1, j + 1), At(i, j + 1)]);
            }
        }

        return new TriangleMesh([.. xyz], [.. corners]);
    }

    /// <summary>A ring of points turned about z, from radii and heights; a radius of 0 at both ends closes it.</summary>
    public static TriangleMesh Turned(int sides, params (double Radius, double Z)[] line) =>
        Loft.Through([.. line.Select(p => (IReadOnlyList<Point3>)[.. Enumerable.Range(0, sides).Select(k => 2 * Math.PI * k / sides).Select(a => new Point3(p.Radius * Math.Cos(a), p.Radius * Math.Sin(a), p.Z))])]);
}
