namespace Studio.Engine.Parts;

/// <summary>Whether holder, coil and switch find room in the cavity, and what is short where they do not.</summary>
internal static class FittingRoom
{
    private static readonly string[] Axes = ["wider", "deeper", "higher"];

    public static FitPlan Plan(IReadOnlyList<FittingSpec> fittings, CavityPlan cavity)
    {
        var places = fittings.Count <= BoxFit.Most ? BoxFit.Into([.. fittings.Select(Roomy)], Room(cavity)) : null;
        return places is null ? new FitPlan(false, []) : new FitPlan(true, [.. places.Select((p, i) => Place(p, i, fittings[i]))]);
    }

    public static IEnumerable<Finding> Findings(IReadOnlyList<FittingSpec> fittings, CavityPlan cavity, FitPlan plan)
    {
        if (plan.Fits)
        {
            yield break;
        }

        var alone = fittings.Select((f, i) => Alone(f, i, cavity)).OfType<Finding>().ToList();
        foreach (var finding in alone)
        {
            yield return finding;
        }

        if (alone.Count == 0)
        {
            yield return fittings.Count > BoxFit.Most
                ? Rules.Note("fittings-many", "parts.fittings", $"More than {BoxFit.Most} boxes are not tried together. Enter two that belong together as one box.", Rules.Geometry)
                : Rules.Look("fittings-do-not-fit", "parts.fittings", $"Each finds room by itself in {Words(cavity)}, but not all together. {Together(fittings, cavity)}", Rules.Geometry);
        }
    }

    private static string Words(CavityPlan c) => $"the cavity of {Rules.Mm(c.WidthMm)} by {Rules.Mm(c.DepthMm)} by {Rules.Mm(c.HeightMm)}";

    private static string Together(IReadOnlyList<FittingSpec> fittings, CavityPlan cavity)
    {
        var (boxes, room) = (fittings.Select(Roomy).ToList(), Room(cavity));
        var short1 = Enumerable.Range(0, 3).Select(axis => (Axis: axis, Short: BoxFit.Least(boxes, room, axis) - room.Sides[axis])).Where(s => s.Short is not null).ToList();
        return short1.Count == 0
            ? "It needs more room in more than one direction."
            : "They would fit if it were " + string.Join(", or ", short1.OrderBy(s => s.Short).Select(s => $"{Rules.Short(s.Short!.Value)} {Axes[s.Axis]}")) + ".";
    }

    // sides sorted against sides sorted: the best that turning can do
    private static Finding? Alone(FittingSpec fitting, int index, CavityPlan cavity)
    {
        var mine = Roomy(fitting).Sides.Order().ToList();
        var room = Room(cavity).Sides.Order().ToList();
        var over = mine.Zip(room, (m, r) => m - r).Where(o => o > Rules.TouchMm).ToList();
        return over.Count == 0 ? null : Rules.Look(
            "fitting-too-large",
            $"parts.fittings[{index}]",
            $"{(fitting.Name.Length > 0 ? fitting.Name : "This")}, {Rules.Mm(fitting.WidthMm)} by {Rules.Mm(fitting.DepthMm)} by {Rules.Mm(fitting.HeightMm)} with {Rules.Mm(fitting.ClearanceMm)} all round, is {string.Join(" and ", over.Select(Rules.Short))} too large for {Words(cavity)}, however it is turned.",
            Rules.Geometry);
    }

    private static BoxSize Roomy(FittingSpec f) => new(f.WidthMm + (2 * f.ClearanceMm), f.DepthMm + (2 * f.ClearanceMm), f.HeightMm + (2 * f.ClearanceMm));

    private static BoxSize Room(CavityPlan c) => new(c.WidthMm, c.DepthMm, c.HeightMm);

    private static FittingPlace Place(BoxPlace p, int index, FittingSpec f)
    {
        var c = f.ClearanceMm;
        return new FittingPlace(index, f.Name, p.XMm + c, p.YMm + c, p.ZMm + c, p.Size.XMm - (2 * c), p.Size.YMm - (2 * c), p.Size.ZMm - (2 * c));
    }
}
