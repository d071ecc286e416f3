namespace Studio.Engine.Moulds;

/// <summary>Measures of a cross-section's corners.</summary>
public static class PlanShape
{
    /// <summary>Enclosed area, positive anticlockwise [mm²].</summary>
    public static double AreaMm2(IReadOnlyList<PlanPoint> corners) => Edges(corners).Sum(e => Cross(e.A, e.B)) / 2;

    /// <summary>Middle of the area; of the corners where they enclose none.</summary>
    public static PlanPoint Middle(IReadOnlyList<PlanPoint> corners)
    {
        var area = AreaMm2(corners);
        if (Math.Abs(area) < 1e-9)
        {
            return corners.Count == 0 ? default : new(corners.Average(c => c.XMm), corners.Average(c => c.YMm));
        }

        return new(
            Edges(corners).Sum(e => (e.A.XMm + e.B.XMm) * Cross(e.A, e.B)) / (6 * area),
            Edges(corners).Sum(e => (e.A.YMm + e.B.YMm) * Cross(e.A, e.B)) / (6 * area));
    }

    /// <summary>
    /// From a point to the nearest edge of what the corners support, which is their convex hull, since a hollow in an outline carries across [mm];
    /// 0 where the point lies outside or nothing is enclosed.
    /// </summary>
    public static double Reach(IReadOnlyList<PlanPoint> corners, PlanPoint from)
    {
        var hull = Hull(corners);
        return hull.Count < 3 ? 0 : Math.Max(0, Edges(hull).Min(e => Distance(e.A, e.B, from)));
    }

    /// <summary>The convex hull, anticlockwise (Andrew's monotone chain, 1979).</summary>
    public static IReadOnlyList<PlanPoint> Hull(IReadOnlyList<PlanPoint> corners)
    {
        var sorted = corners.Distinct().OrderBy(c => c.XMm).ThenBy(c => c.YMm).ToList();
        if (sorted.Count < 3)
        {
            return sorted;
        }

        var lower = Chain(sorted);
        sorted.Reverse();
        return [.. lower.SkipLast(1), .. Chain(sorted).SkipLast(1)];
    }

    private static List<PlanPoint> Chain(List<PlanPoint> sorted)
    {
        var chain = new List<PlanPoint>();
        foreach (var point in sorted)
        {
            while (chain.Count >= 2 && Turn(chain[^2], chain[^1], point) <= 0)
            {
                chain.RemoveAt(chain.Count - 1);
            }

            chain.Add(point);
        }

        return chain;
    }

    private static double Distance(PlanPoint a, PlanPoint b, PlanPoint p) =>
        Turn(a, b, p) / Math.Sqrt(((b.XMm - a.XMm) * (b.XMm - a.XMm)) + ((b.YMm - a.YMm) * (b.YMm - a.YMm)));

    private static double Turn(PlanPoint a, PlanPoint b, PlanPoint p) => ((b.XMm - a.XMm) * (p.YMm - a.YMm)) - ((b.YMm - a.YMm) * (p.XMm - a.XMm));

    private static double Cross(PlanPoint a, PlanPoint b) => (a.XMm * b.YMm) - (b.XMm * a.YMm);

    private static IEnumerable<(PlanPoint A, PlanPoint B)> Edges(IReadOnlyList<PlanPoint> corners) =>
        corners.Select((c, i) => (c, corners[(i + 1) % corners.Count]));
}
