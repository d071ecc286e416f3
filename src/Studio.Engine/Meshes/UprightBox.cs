using System.Runtime.InteropServices;

namespace Studio.Engine.Meshes;

/// <summary>A box centred over x = y = 0 between two heights, and how far it is from a triangle.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct UprightBox(double HalfWidth, double HalfDepth, double From, double To)
{
    /// <summary>A distance that the triangle is not nearer than: that of its own box.</summary>
    public double AtLeast(Point3 a, Point3 b, Point3 c)
    {
        var x = Apart(Math.Min(a.X, Math.Min(b.X, c.X)), Math.Max(a.X, Math.Max(b.X, c.X)), -HalfWidth, HalfWidth);
        var y = Apart(Math.Min(a.Y, Math.Min(b.Y, c.Y)), Math.Max(a.Y, Math.Max(b.Y, c.Y)), -HalfDepth, HalfDepth);
        var z = Apart(Math.Min(a.Z, Math.Min(b.Z, c.Z)), Math.Max(a.Z, Math.Max(b.Z, c.Z)), From, To);
        return Math.Sqrt((x * x) + (y * y) + (z * z));
    }

    /// <summary>The distance to a triangle that does not reach into the box: from corners to faces and from edges to edges, whichever is least.</summary>
    public double Distance(Point3 a, Point3 b, Point3 c)
    {
        var best = Math.Min(ToPoint(a), Math.Min(ToPoint(b), ToPoint(c)));
        var normal = (b - a).Cross(c - a);
        for (var k = 0; k < 8; k++)
        {
            var corner = Corner(k);
            best = Math.Min(best, ToFace(corner, a, b, c, normal));
            for (var axis = 1; axis < 8; axis *= 2)
            {
                if ((k & axis) == 0)
                {
                    var other = Corner(k | axis);
                    best = Math.Min(best, Math.Min(Segments(corner, other, a, b), Math.Min(Segments(corner, other, b, c), Segments(corner, other, c, a))));
                }
            }
        }

        return best;
    }

    private static double Apart(double low, double high, double from, double to) => Math.Max(0, Math.Max(low - to, from - high));

    private Point3 Corner(int k) => new((k & 1) == 0 ? -HalfWidth : HalfWidth, (k & 2) == 0 ? -HalfDepth : HalfDepth, (k & 4) == 0 ? From : To);

    private double ToPoint(Point3 p) => AtLeast(p, p, p);

    // only where the corner stands square over the face; elsewhere an edge or a corner of the triangle is nearer
    private static double ToFace(Point3 p, Point3 a, Point3 b, Point3 c, Point3 normal)
    {
        var over = normal.Dot((b - a).Cross(p - a)) >= 0 && normal.Dot((c - b).Cross(p - b)) >= 0 && normal.Dot((a - c).Cross(p - c)) >= 0;
        return over && normal.Length > 0 ? Math.Abs(normal.Dot(p - a)) / normal.Length : double.PositiveInfinity;
    }

    // nearest points of two segments: Ericson, Real-Time Collision Detection (2005), 5.1.9
    private static double Segments(Point3 p, Point3 p1, Point3 q, Point3 q1)
    {
        var (u, v, w) = (p1 - p, q1 - q, p - q);
        var (a, b, c, d, e) = (u.Dot(u), u.Dot(v), v.Dot(v), u.Dot(w), v.Dot(w));
        var square = (a * c) - (b * b);
        var s = square > 1e-14 * a * c ? Math.Clamp(((b * e) - (c * d)) / square, 0, 1) : 0;
        var t = c > 0 ? ((b * s) + e) / c : 0;
        if (t is < 0 or > 1)
        {
            t = Math.Clamp(t, 0, 1);
            s = a > 0 ? Math.Clamp(((b * t) - d) / a, 0, 1) : 0;
        }

        return (w + (u * s) - (v * t)).Length;
    }
}
