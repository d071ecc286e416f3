namespace Studio.Papers;

/// <summary>Lines and dots that fill a polygon, worked out by crossing its edges: a clip in the file would cut through tagged content.</summary>
internal static class PaperHatch
{
    /// <summary>Segments at <paramref name="degrees"/> to the horizontal, <paramref name="step"/> apart, inside the polygon (even-odd).</summary>
    public static IEnumerable<((double X, double Y) From, (double X, double Y) To)> Lines(IReadOnlyList<(double X, double Y)> polygon, double degrees, double step)
    {
        var (sin, cos) = Math.SinCos(degrees * Math.PI / 180);
        var turned = polygon.Select(p => (X: (p.X * cos) + (p.Y * sin), Y: (p.Y * cos) - (p.X * sin))).ToList();
        var (low, high) = (turned.Min(p => p.Y), turned.Max(p => p.Y));
        for (var y = (Math.Floor(low / step) + 0.5) * step; y < high; y += step)
        {
            var cuts = Crossings(turned, y);
            for (var i = 0; i + 1 < cuts.Count; i += 2)
            {
                yield return (Back(cuts[i], y), Back(cuts[i + 1], y));
            }
        }

        (double X, double Y) Back(double x, double y) => ((x * cos) - (y * sin), (x * sin) + (y * cos));
    }

    /// <summary>Points of a staggered grid inside the polygon.</summary>
    public static IEnumerable<(double X, double Y)> Dots(IReadOnlyList<(double X, double Y)> polygon, double step)
    {
        var row = 0;
        foreach (var ((fromX, y), (toX, _)) in Lines(polygon, 0, step))
        {
            row = (int)Math.Round(y / step);
            for (var x = (Math.Ceiling(fromX / step) * step) + (row % 2 == 0 ? 0 : step / 2); x < toX; x += step)
            {
                yield return (x, y);
            }
        }
    }

    private static List<double> Crossings(List<(double X, double Y)> polygon, double y)
    {
        var cuts = new List<double>();
        for (var i = 0; i < polygon.Count; i++)
        {
            var (a, b) = (polygon[i], polygon[(i + 1) % polygon.Count]);
            if (a.Y <= y != b.Y <= y)
            {
                cuts.Add(a.X + ((y - a.Y) / (b.Y - a.Y) * (b.X - a.X)));
            }
        }

        cuts.Sort();
        return cuts;
    }
}
