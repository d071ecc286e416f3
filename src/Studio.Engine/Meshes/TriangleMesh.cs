using System.Runtime.InteropServices;

namespace Studio.Engine.Meshes;

/// <summary>A point in space [mm]: x to the right, y away from the viewer, z upwards.</summary>
[StructLayout(LayoutKind.Auto)]
public readonly record struct Point3(double X, double Y, double Z)
{
    public static Point3 operator +(Point3 a, Point3 b) => new(a.X + b.X, a.Y + b.Y, a.Z + b.Z);

    public static Point3 operator -(Point3 a, Point3 b) => new(a.X - b.X, a.Y - b.Y, a.Z - b.Z);

    public static Point3 operator *(Point3 a, double by) => new(a.X * by, a.Y * by, a.Z * by);

    /// <summary>Scalar product.</summary>
    public double Dot(Point3 other) => (X * other.X) + (Y * other.Y) + (Z * other.Z);

    /// <summary>Vector product.</summary>
    public Point3 Cross(Point3 other) => new((Y * other.Z) - (Z * other.Y), (Z * other.X) - (X * other.Z), (X * other.Y) - (Y * other.X));

    /// <summary>Length of the vector.</summary>
    public double Length => Math.Sqrt(Dot(this));
}

/// <summary>Triangles over shared vertices. Nothing is promised of it beyond indices that exist: whether it is closed is for a check to say.</summary>
/// <param name="Coordinates">x, y, z of each vertex in turn [mm]; kept, not copied.</param>
/// <param name="Corners">Three vertex numbers a triangle, anticlockwise seen from outside; kept, not copied.</param>
public sealed record TriangleMesh(double[] Coordinates, int[] Corners)
{
    /// <summary>Number of vertices.</summary>
    public int VertexCount => Coordinates.Length / 3;

    /// <summary>Number of triangles.</summary>
    public int TriangleCount => Corners.Length / 3;

    /// <summary>A vertex by its number.</summary>
    public Point3 Vertex(int number) => new(Coordinates[3 * number], Coordinates[(3 * number) + 1], Coordinates[(3 * number) + 2]);

    /// <summary>The three corners of a triangle by its number.</summary>
    public (Point3 A, Point3 B, Point3 C) Triangle(int number) =>
        (Vertex(Corners[3 * number]), Vertex(Corners[(3 * number) + 1]), Vertex(Corners[(3 * number) + 2]));

    /// <summary>Lowest and highest coordinate in each direction; zero where there is no vertex.</summary>
    public (Point3 Low, Point3 High) Bounds()
    {
        if (VertexCount == 0)
        {
            return default;
        }

        var (low, high) = (Vertex(0), Vertex(0));
        for (var i = 1; i < VertexCount; i++)
        {
            var p = Vertex(i);
            low = new(Math.Min(low.X, p.X), Math.Min(low.Y, p.Y), Math.Min(low.Z, p.Z));
            high = new(Math.Max(high.X, p.X), Math.Max(high.Y, p.Y), Math.Max(high.Z, p.Z));
        }

        return (low, high);
    }
}
