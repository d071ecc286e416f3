namespace Studio.Drawing;

/// <summary>Flat outlines seen from one direction: an area, or a line where they are seen on edge.</summary>
internal static class FlatLine
{
    /// <summary>The outlines themselves, or the two far ends where all of it is nowhere as wide as asked.</summary>
    public static (IReadOnlyList<IReadOnlyList<(double X, double Y)>> Rings, bool Filled) Of(IEnumerable<IEnumerable<(double X, double Y)>> outlines, double leastWidth)
    {
        IReadOnlyList<IReadOnlyList<(double X, double Y)>> rings = [.. outlines.Select(r => (IReadOnlyList<(double, double)>)[.. r])];
        var all = rings.SelectMany(r => r).ToList();
        if (all.Count < 2)
        {
            return ([], false);
        }

        var (a, b) = Ends(all);
        var (dx, dy) = (b.X - a.X, b.Y - a.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        var across = all.Select(p => length > 0 ? (((p.X - a.X) * dy) - ((p.Y - a.Y) * dx)) / length : 0).ToList();
        return across.Max() - across.Min() >= leastWidth ? (rings, true) : ([[a, b]], false);
    }

    private static ((double X, double Y) A, (double X, double Y) B) Ends(List<(double X, double Y)> points)
    {
        var a = points.MaxBy(p => Far(p, points[0]));
        return (a, points.MaxBy(p => Far(p, a)));
    }

    private static double Far((double X, double Y) p, (double X, double Y) q) => ((p.X - q.X) * (p.X - q.X)) + ((p.Y - q.Y) * (p.Y - q.Y));
}
