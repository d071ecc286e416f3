using Studio.Engine.Moulds;

namespace Studio.Engine.Parts;

/// <summary>Feet in the base's corners, clear of cover and holes.</summary>
internal static class FeetParts
{
    private const int MostCorners = 8;
    private const double StepMm = 0.25;

    public static IReadOnlyList<FootPlace> Places(FeetSpec spec, BasePlan ground, CoverPlan? cover) =>
        [.. At(spec, ground).Select(p => new FootPlace(p.XMm, p.YMm, spec.DiameterMm, Why(spec, p.XMm, p.YMm, ground, cover) is null))];

    public static IEnumerable<Finding> Findings(FeetSpec spec, IReadOnlyList<FootPlace> feet, BasePlan ground, CoverPlan? cover) =>
        feet.Select(f => Why(spec, f.XMm, f.YMm, ground, cover)).Where(w => w is not null)
            .GroupBy(w => w!, StringComparer.Ordinal).Select(g => Rules.Look("foot-cannot-stand", "parts.feet", $"{(g.Count() == 1 ? "One foot" : $"{g.Count()} feet")}: {g.Key}", Rules.Geometry));

    private static string? Why(FeetSpec spec, double x, double y, BasePlan ground, CoverPlan? cover)
    {
        var radius = spec.DiameterMm / 2;
        if (ground.InsideMm(x, y) < radius - Rules.TouchMm)
        {
            return $"a foot of {Rules.Mm(spec.DiameterMm)} finds no room on this base.";
        }

        if (cover is null)
        {
            return null;
        }

        var (dx, dy) = (Math.Abs(x) - ((cover.RecessWidthMm ?? cover.WidthMm) / 2), Math.Abs(y) - ((cover.RecessDepthMm ?? cover.DepthMm) / 2));
        var away = dx <= 0 && dy <= 0 ? Math.Max(dx, dy) : Squareness.DiagonalMm(Math.Max(dx, 0), Math.Max(dy, 0));
        if (away < radius - Rules.TouchMm)
        {
            return $"it would stand {Rules.Short(radius - away)} into the cover. Take a smaller foot, set it nearer to the corner, or let the cover overlap less.";
        }

        var near = cover.Holds.Select(h => Squareness.DiagonalMm(h.XMm - x, h.YMm - y) - radius - (h.PilotMm / 2)).DefaultIfEmpty(double.MaxValue).Min();
        return near < 0 ? $"it would stand {Rules.Short(-near)} over a hole. Hold the cover at the middles of its sides, or take a smaller foot." : null;
    }

    private static IEnumerable<PlanPoint> At(FeetSpec spec, BasePlan ground)
    {
        var from = (spec.DiameterMm / 2) + spec.InsetMm;
        return ground.Rim.Count <= MostCorners
            ? ground.Rim.Select((p, i) => InCorner(ground.Rim[(i + ground.Rim.Count - 1) % ground.Rim.Count], p, ground.Rim[(i + 1) % ground.Rim.Count], from))
            : new[] { (-1, -1), (1, -1), (1, 1), (-1, 1) }.Select(s => Towards(s.Item1 / Math.Sqrt(2), s.Item2 / Math.Sqrt(2), from, ground));
    }

    // along the corner's own bisector, until both edges are as far away as wanted
    private static PlanPoint InCorner(PlanPoint before, PlanPoint at, PlanPoint after, double from)
    {
        var (ax, ay) = Unit(before.XMm - at.XMm, before.YMm - at.YMm);
        var (bx, by) = Unit(after.XMm - at.XMm, after.YMm - at.YMm);
        var (mx, my) = Unit(ax + bx, ay + by);
        var half = Math.Acos(Math.Clamp((ax * mx) + (ay * my), -1, 1));
        var along = from / Math.Max(Math.Sin(half), 0.05);
        return new PlanPoint(at.XMm + (mx * along), at.YMm + (my * along));
    }

    // a round or free outline has no corners: outwards until the edge is as near as wanted
    private static PlanPoint Towards(double dx, double dy, double from, BasePlan ground)
    {
        var far = ground.Rim.Max(p => Squareness.DiagonalMm(p.XMm, p.YMm));
        var at = 0.0;
        for (var r = 0.0; r <= far; r += StepMm)
        {
            at = ground.InsideMm(dx * r, dy * r) >= from ? r : at;
        }

        return new PlanPoint(dx * at, dy * at);
    }

    private static (double X, double Y) Unit(double x, double y)
    {
        var length = Squareness.DiagonalMm(x, y);
        return length == 0 ? (0, 0) : (x / length, y / length);
    }
}
