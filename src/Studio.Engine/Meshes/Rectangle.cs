using System.Runtime.InteropServices;

namespace Studio.Engine.Meshes;

/// <summary>A rectangle about x = y = 0, seen from above.</summary>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct Rectangle(double HalfWidth, double HalfDepth)
{
    /// <summary>How deep a polygon reaches into it, from its nearest side [mm]; 0 or less where it stays outside.</summary>
    public double Depth(List<Point3> polygon)
    {
        var depth = double.NegativeInfinity;
        var winding = 0;
        for (var k = 0; k < polygon.Count; k++)
        {
            var (a, b) = (polygon[k], polygon[(k + 1) % polygon.Count]);
            depth = Math.Max(depth, Along(a, b));
            winding += a.Y > 0 != b.Y > 0 && a.X - (a.Y * (b.X - a.X) / (b.Y - a.Y)) > 0 ? 1 : 0;
        }

        return winding % 2 == 1 ? Math.Min(HalfWidth, HalfDepth) : depth;
    }

    // the least of four straight lines is greatest at an end or where two of them meet
    private double Along(Point3 a, Point3 b)
    {
        var best = Math.Max(At(a), At(b));
        Span<double> from = [HalfWidth - a.X, HalfWidth + a.X, HalfDepth - a.Y, HalfDepth + a.Y];
        Span<double> to = [HalfWidth - b.X, HalfWidth + b.X, HalfDepth - b.Y, HalfDepth + b.Y];
        for (var i = 0; i < 4; i++)
        {
            for (var j = i + 1; j < 4; j++)
            {
                var t = (from[i] - from[j]) / (from[i] - from[j] - to[i] + to[j]);
                best = t is > 0 and < 1 ? Math.Max(best, At((a * (1 - t)) + (b * t))) : best;
            }
        }

        return best;
    }

    private double At(Point3 p) => Math.Min(HalfWidth - Math.Abs(p.X), HalfDepth - Math.Abs(p.Y));
}
