namespace Studio.Drawing;

/// <summary>A flat outline seen from one direction: an area, or a line where it is seen on edge.</summary>
internal static class FlatLine
{
    /// <summary>The outline itself, or its two far ends where it is nowhere as wide as asked.</summary>
    public static (IReadOnlyList<(double X, double Y)> Points, bool Filled) Of(IReadOnlyList<(double X, double Y)> outline, double leastWidth)
    {
        if (outline.Count < 3)
        {
            return (outline, false);
        }

        var (a, b) = Ends(outline);
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        var across = outline.Select(p => length > 0 ? (((p.X - a.X) * dy) - ((p.Y - a.Y) * dx)) / length : 0).ToList();
        return across.Max() - across.Min() >= leastWidth ? (outline, true) : ([a, b], false);
    }

    private static ((double X, double Y) A, (double X, double Y) B) Ends(IReadOnlyList<(double X, double Y)> points)
    {
        var a = points.MaxBy(p => Far(p, points[0]));
        return (a, points.MaxBy(p => Far(p, a)));
    }

    private static double Far((double X, double Y) p, (double X, double Y) q) => ((p.X - q.X) * (p.X - q.X)) + ((p.Y - q.Y) * (p.Y - q.Y));
}
