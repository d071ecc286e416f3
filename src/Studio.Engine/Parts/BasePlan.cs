using Studio.Engine.Moulds;

namespace Studio.Engine.Parts;

/// <summary>The mould's outline at the rim and below it: how far a point lies from the faces.</summary>
internal sealed class BasePlan(MouldBody mould)
{
    public IReadOnlyList<PlanPoint> Rim { get; } = mould.Outline.PlanAt(mould.HeightMm);

    /// <summary>Distance in plan from a point to the outline at the rim [mm]; negative outside.</summary>
    public double InsideMm(double x, double y) => InsideMm(Rim, x, y);

    /// <summary>The smallest distance from a rectangle about the middle to the outline [mm]; negative where it hangs over.</summary>
    public double RoomMm(double width, double depth)
    {
        var corners = new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) }.Select(s => InsideMm(s.Item1 * width / 2, s.Item2 * depth / 2)).Min();
        var crossed = Rim.Where(p => Math.Abs(p.XMm) < width / 2 && Math.Abs(p.YMm) < depth / 2).Select(p => Math.Max(Math.Abs(p.XMm) - (width / 2), Math.Abs(p.YMm) - (depth / 2)));
        return crossed.Append(corners).Min();
    }

    /// <summary>Distance from an upright hole's axis to the nearest face, square to it, from the rim down to its depth [mm].</summary>
    public double ToFaceMm(double x, double y, double depth) => new[] { 0, depth / 2, depth }.Min(d =>
    {
        var z = Math.Max(0, mould.HeightMm - d);
        return InsideMm(mould.Outline.PlanAt(z), x, y) * Slope(Math.Abs(x), Math.Abs(y), z);
    });

    private static double InsideMm(IReadOnlyList<PlanPoint> plan, double x, double y)
    {
        var (nearest, inside) = (double.MaxValue, false);
        for (var i = 0; i < plan.Count; i++)
        {
            var (a, b) = (plan[i], plan[(i + 1) % plan.Count]);
            nearest = Math.Min(nearest, Distance(a, b, x, y));
            if (a.YMm > y != b.YMm > y && x < a.XMm + ((y - a.YMm) / (b.YMm - a.YMm) * (b.XMm - a.XMm)))
            {
                inside = !inside;
            }
        }

        return plan.Count == 0 ? -double.MaxValue : inside ? nearest : -nearest;
    }

    private static double Distance(PlanPoint a, PlanPoint b, double x, double y)
    {
        var (dx, dy) = (b.XMm - a.XMm, b.YMm - a.YMm);
        var long2 = (dx * dx) + (dy * dy);
        var t = long2 == 0 ? 0 : Math.Clamp((((x - a.XMm) * dx) + ((y - a.YMm) * dy)) / long2, 0, 1);
        return Squareness.DiagonalMm(x - a.XMm - (t * dx), y - a.YMm - (t * dy));
    }

    // how much nearer a leaning wall is than it looks in plan, from the mould's own figures for the box whose corner stands there
    private double Slope(double x, double y, double z)
    {
        var plan = mould.Outline.PlanAt(z);
        var flat = new[] { (1, 1), (-1, 1), (-1, -1), (1, -1) }.Min(s => InsideMm(plan, s.Item1 * x, s.Item2 * y));
        return flat > Rules.TouchMm ? Math.Clamp(mould.ClearanceMm(Math.Max(2 * x, Rules.TouchMm), Math.Max(2 * y, Rules.TouchMm), z) / flat, 0, 1) : 1;
    }
}
