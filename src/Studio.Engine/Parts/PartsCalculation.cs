using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Parts;

/// <summary>Works out what is cut for the room for lights, what closes it, and what fits inside.</summary>
public static class PartsCalculation
{
    private const double MostHoleMm = 100;

    private static readonly string[] UsedByBox = ["sheetMm", "proudMm", "oneDiagonalMm", "otherDiagonalMm"];

    /// <summary>Never throws: a section whose input cannot be used is left out, and the errors say which field and what to do.</summary>
    public static PartsPlan Run(PartsInput input)
    {
        var errors = new InputErrors();
        var findings = new List<Finding>();
        var plan = input is { Mould: { } mould, Former: { } former } && Former.Make(former, mould, errors) is not null ? Built(input, mould, former, errors, findings) : new PartsPlan();
        var light = input.Light is null ? null : LightHours.Plan(input.Light, errors);
        if (input.Light is not null)
        {
            findings.AddRange(LightHours.Findings(input.Light, light, input.Cover is not null));
        }

        return plan with { Light = light, Errors = errors.All, Findings = findings };
    }

    private static PartsPlan Built(PartsInput input, MouldBody mould, FormerSpec former, InputErrors errors, List<Finding> findings)
    {
        var ground = new BasePlan(mould);
        var plan = new PartsPlan { Base = ground.Rim };
        var cutGood = Check(input.Cut, errors);
        var box = UsedByBox.All(f => errors.Clean("parts.cut." + f)) ? BoxParts.Plan(former, mould, input.Cut, errors) : null;
        if (box is not null)
        {
            findings.AddRange(BoxParts.Findings(box, former, input.Cut));
            plan = plan with { Box = box, Parts = [.. BoxParts.Parts(box, input.Cut)] };
        }

        if (box is not null || former.Solid)
        {
            plan = Closed(plan, input, former, ground, errors, findings);
            plan = Filled(plan, input, mould, former, errors, findings);
        }

        return cutGood ? plan with { Sheets = Lay(plan.Parts, input.Cut, findings) } : plan;
    }

    private static PartsPlan Closed(PartsPlan plan, PartsInput input, FormerSpec former, BasePlan ground, InputErrors errors, List<Finding> findings)
    {
        var (width, depth) = plan.Box is { } box ? (box.InnerWidthMm, box.InnerDepthMm) : (former.OuterWidthMm, former.OuterDepthMm);
        var sheet = input.Cover?.SheetMm ?? plan.Box?.SheetMm ?? input.Cut.SheetMm;
        if (input.Cover is { } spec && Check(spec, sheet, width, depth, errors))
        {
            var cover = CoverParts.Plan(spec, width, depth, sheet!.Value, ground);
            findings.AddRange(CoverParts.Findings(cover, spec, ground));
            plan = plan with { Cover = cover, Parts = [.. plan.Parts, CoverParts.Part(cover, spec)] };
        }

        if (input.Feet is { } feet && errors.Positive("parts.feet.diameterMm", feet.DiameterMm, MostHoleMm, "mm") & errors.Within("parts.feet.insetMm", feet.InsetMm, 0, MostHoleMm, "mm"))
        {
            plan = plan with { Feet = FeetParts.Places(feet, ground, plan.Cover) };
            findings.AddRange(FeetParts.Findings(feet, plan.Feet, ground, plan.Cover));
        }

        return plan;
    }

    private static PartsPlan Filled(PartsPlan plan, PartsInput input, MouldBody mould, FormerSpec former, InputErrors errors, List<Finding> findings)
    {
        var bottom = former.Solid ? former.FromMm : (former.FloorMm ?? former.FromMm) + (input.Cut.FloorPlate ? plan.Box!.SheetMm : 0);
        var height = mould.HeightMm - bottom - (input.Cover is { Recessed: true } ? plan.Cover?.SheetMm ?? 0 : 0);
        if (height <= 0)
        {
            findings.Add(Rules.Look("no-cavity", "parts.fittings", "Nothing is left of the cavity: floor and cover fill it. Start the former lower, or leave less resin inside.", Rules.Geometry));
            return plan;
        }

        var (width, depth) = plan.Box is { } box ? (box.InnerWidthMm, box.InnerDepthMm) : (former.OuterWidthMm, former.OuterDepthMm);
        plan = plan with { Cavity = new CavityPlan(width, depth, height) };
        var good = input.Fittings.Select((f, i) => Check(f, $"parts.fittings[{i}]", errors)).ToList().TrueForAll(x => x);
        if (!good || input.Fittings.Count == 0)
        {
            return plan;
        }

        plan = plan with { Fit = FittingRoom.Plan(input.Fittings, plan.Cavity) };
        findings.AddRange(FittingRoom.Findings(input.Fittings, plan.Cavity, plan.Fit));
        return plan;
    }

    private static List<SheetUse> Lay(IReadOnlyList<SheetPart> parts, CutSpec cut, List<Finding> findings)
    {
        var uses = parts.GroupBy(p => p.SheetMm).Select(g => SheetNesting.Lay([.. g], cut.SheetWidthMm, cut.SheetHeightMm, cut.KerfMm, cut.MayTurn)).ToList();
        findings.AddRange(uses.SelectMany(u => u.TooLarge).Select(p => Rules.Look(
            "part-larger-than-sheet", "parts.cut.sheetWidthMm", $"{p.Name}, {Rules.Mm(p.WidthMm)} by {Rules.Mm(p.HeightMm)}, is larger than a sheet of {Rules.Mm(cut.SheetWidthMm)} by {Rules.Mm(cut.SheetHeightMm)}.", Rules.Geometry)));
        return uses;
    }

    private static bool Check(CutSpec cut, InputErrors errors) =>
        errors.Positive("parts.cut.sheetMm", cut.SheetMm, Dimension.LongestMm, "mm")
        & errors.Within("parts.cut.kerfMm", cut.KerfMm, 0, 20, "mm")
        & errors.Positive("parts.cut.sheetWidthMm", cut.SheetWidthMm, Dimension.LongestMm, "mm")
        & errors.Positive("parts.cut.sheetHeightMm", cut.SheetHeightMm, Dimension.LongestMm, "mm")
        & errors.Within("parts.cut.proudMm", cut.ProudMm, 0, 100, "mm")
        & errors.Positive("parts.cut.oneDiagonalMm", cut.OneDiagonalMm, 2 * Dimension.LongestMm, "mm")
        & errors.Positive("parts.cut.otherDiagonalMm", cut.OtherDiagonalMm, 2 * Dimension.LongestMm, "mm");

    private static bool Check(CoverSpec spec, double? sheet, double width, double depth, InputErrors errors)
    {
        if (sheet is null)
        {
            errors.Add("parts.cover.sheetMm", "Give the plate's thickness: a solid former has no sheet to go by.");
        }

        var good = errors.Positive("parts.cover.sheetMm", spec.SheetMm, Dimension.LongestMm, "mm")
            & errors.Within("parts.cover.overlapMm", spec.OverlapMm, 0, Dimension.LongestMm, "mm")
            & errors.Within("parts.cover.gapMm", spec.GapMm, 0, 20, "mm")
            & errors.Positive("parts.cover.screwHoleMm", spec.ScrewHoleMm, MostHoleMm, "mm")
            & errors.Positive("parts.cover.pilotMm", spec.PilotMm, MostHoleMm, "mm")
            & errors.Positive("parts.cover.pilotDepthMm", spec.PilotDepthMm, Dimension.LongestMm, "mm")
            & errors.Within("parts.cover.buttonOffMm", spec.ButtonOffMm, 0, Dimension.LongestMm, "mm");
        if (good && spec.Recessed && Math.Min(width, depth) + (2 * (spec.OverlapMm - spec.GapMm)) <= 0)
        {
            errors.Add("parts.cover.gapMm", "With this gap nothing is left of the plate.");
            return false;
        }

        return good && sheet is not null;
    }

    private static bool Check(FittingSpec f, string path, InputErrors errors) =>
        errors.Positive(path + ".widthMm", f.WidthMm, Dimension.LongestMm, "mm") & errors.Positive(path + ".depthMm", f.DepthMm, Dimension.LongestMm, "mm")
        & errors.Positive(path + ".heightMm", f.HeightMm, Dimension.LongestMm, "mm") & errors.Within(path + ".clearanceMm", f.ClearanceMm, 0, 1000, "mm");
}
