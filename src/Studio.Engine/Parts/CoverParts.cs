namespace Studio.Engine.Parts;

/// <summary>The cover plate, its holes, and the pilot holes in the base.</summary>
internal static class CoverParts
{
    public static CoverPlan Plan(CoverSpec spec, double openingWidth, double openingDepth, double sheet, BasePlan ground)
    {
        var (recessWidth, recessDepth) = (openingWidth + (2 * spec.OverlapMm), openingDepth + (2 * spec.OverlapMm));
        var gap = spec.Recessed ? spec.GapMm : 0;
        var (width, depth) = (recessWidth - (2 * gap), recessDepth - (2 * gap));
        return new CoverPlan(
            width,
            depth,
            sheet,
            openingWidth,
            openingDepth,
            spec.Recessed ? recessWidth : null,
            spec.Recessed ? recessDepth : null,
            [.. Holds(spec, width, depth, openingWidth, openingDepth).Select(h => Hold(h, spec, openingWidth, openingDepth, ground))]);
    }

    public static SheetPart Part(CoverPlan plan, CoverSpec spec) => new(
        "cover",
        "Cover plate",
        1,
        plan.WidthMm,
        plan.DepthMm,
        plan.SheetMm,
        spec.HeldBy == HeldBy.Screws ? [.. plan.Holds.Select(h => new PartHole(h.Key, (plan.WidthMm / 2) + h.XMm, (plan.DepthMm / 2) + h.YMm, spec.ScrewHoleMm))] : []);

    public static IEnumerable<Finding> Findings(CoverPlan plan, CoverSpec spec, BasePlan ground)
    {
        if (spec.OverlapMm < Rules.LeastOverlapMm)
        {
            yield return Rules.Look("cover-overlap-thin", "parts.cover.overlapMm", $"The plate rests on {Rules.Mm(spec.OverlapMm)} all round. Give it at least {Rules.Mm(Rules.LeastOverlapMm)}.", Rules.Practice);
        }

        var (width, depth) = (plan.RecessWidthMm ?? plan.WidthMm, plan.RecessDepthMm ?? plan.DepthMm);
        if (ground.RoomMm(width, depth) is < 0 and var room)
        {
            yield return Rules.Look("cover-off-base", "parts.cover.overlapMm", $"The {(spec.Recessed ? "recess" : "plate")}, {Rules.Mm(width)} by {Rules.Mm(depth)}, hangs over the edge of the base by {Rules.Short(-room)}. Let it overlap less, or make the former smaller.", Rules.Geometry);
        }

        if (spec.HeldBy == HeldBy.Screws && plan.Holds.Count > 0 && EdgeMm(plan, spec) is var edge && edge < Rules.EdgeDiameters * spec.ScrewHoleMm - Rules.TouchMm)
        {
            yield return Rules.Look("hole-near-edge", "parts.cover.overlapMm", $"The holes in the plate stand {Rules.Mm(edge)} from its edge; twice their diameter, {Rules.Mm(Rules.EdgeDiameters * spec.ScrewHoleMm)}, keeps it from splitting. An overlap of {Rules.Mm((2 * Rules.EdgeDiameters * spec.ScrewHoleMm) + (spec.Recessed ? spec.GapMm : 0))} gives them that.", Rules.Practice);
        }

        foreach (var group in plan.Holds.Where(h => !h.Stands).GroupBy(h => Why(h, spec), StringComparer.Ordinal))
        {
            yield return Rules.Look("hole-cannot-stand", "parts.cover.holes", $"{Names(group)}: {group.Key}", Rules.Practice);
        }
    }

    private static double EdgeMm(CoverPlan plan, CoverSpec spec) => (spec.OverlapMm - ((plan.RecessWidthMm ?? plan.WidthMm) - plan.WidthMm) / 2) / 2;

    private static string Why(HoldPlace hold, CoverSpec spec)
    {
        var least = Rules.EdgeDiameters * spec.PilotMm;
        return hold.ToFaceMm < least - Rules.TouchMm
            ? hold.ToFaceMm <= spec.PilotMm / 2
                ? $"a pilot hole {Rules.Mm(spec.PilotDepthMm)} deep would break through the face of the piece. Move it inwards or drill less deep."
                : $"only {Rules.Mm(hold.ToFaceMm)} of resin between the hole's middle and the face; keep twice its diameter, {Rules.Mm(least)}."
            : $"only {Rules.Mm(Math.Max(0, hold.ToOpeningMm))} from the hole's middle to the opening; keep twice its diameter, {Rules.Mm(least)}. A wider overlap moves it out.";
    }

    private static string Names(IEnumerable<HoldPlace> holds)
    {
        var names = holds.Select(h => h.Name).ToList();
        return "Hole" + (names.Count > 1 ? "s " : " ") + (names.Count > 1 ? string.Join(", ", names[..^1]) + " and " + names[^1] : names[0]);
    }

    private static HoldPlace Hold((string Key, string Name, double X, double Y) at, CoverSpec spec, double openingWidth, double openingDepth, BasePlan ground)
    {
        var (dx, dy) = (Math.Abs(at.X) - (openingWidth / 2), Math.Abs(at.Y) - (openingDepth / 2));
        var toOpening = dx <= 0 && dy <= 0 ? Math.Max(dx, dy) : Squareness.DiagonalMm(Math.Max(dx, 0), Math.Max(dy, 0));
        var toFace = ground.ToFaceMm(at.X, at.Y, spec.PilotDepthMm);
        var stands = Math.Min(toOpening, toFace) >= (Rules.EdgeDiameters * spec.PilotMm) - Rules.TouchMm;
        return new HoldPlace(at.Key, at.Name, at.X, at.Y, spec.PilotMm, toOpening, toFace, stands);
    }

    private static IEnumerable<(string Key, string Name, double X, double Y)> Holds(CoverSpec spec, double width, double depth, double openingWidth, double openingDepth)
    {
        if (spec.HeldBy == HeldBy.Nothing)
        {
            yield break;
        }

        var buttons = spec.HeldBy == HeldBy.Buttons;
        var (x, y) = buttons ? ((width / 2) + spec.ButtonOffMm, (depth / 2) + spec.ButtonOffMm) : ((width + openingWidth) / 4, (depth + openingDepth) / 4);
        if (spec.HolesAt == HolesAt.Corners)
        {
            // a button turns on the side of the plate, near its corner
            var along = buttons ? depth / 4 : y;
            yield return ("front-left", "front left", -x, -along);
            yield return ("front-right", "front right", x, -along);
            yield return ("back-left", "back left", -x, along);
            yield return ("back-right", "back right", x, along);
            yield break;
        }

        yield return ("left", "left", -x, 0);
        yield return ("right", "right", x, 0);
        if (spec.HolesAt == HolesAt.FourSides)
        {
            yield return ("front", "front", 0, -y);
            yield return ("back", "back", 0, y);
        }
    }
}
