namespace Studio.Engine.Parts;

/// <summary>Hours of light: capacity over current, with what the capacity rests on.</summary>
internal static class LightHours
{
    /// <summary>A load this many times larger or smaller than the stated one makes the capacity doubtful.</summary>
    private const double FarTimes = 5;

    private const double MostMa = 1e5;
    private const int MostCells = 24;

    private const string Button = "16 CFR 1263 (US, Reese's Law) with UL 4200A-2023; PAS 7055:2021 (UK, cells up to 32 mm). From summaries of them";

    public static LightPlan? Plan(LightSpec spec, InputErrors errors)
    {
        var good = errors.Positive("parts.light.currentMa", spec.CurrentMa, MostMa, "mA")
            & errors.Within("parts.light.series", (double)spec.Series, 1, MostCells, "cells") & errors.Within("parts.light.parallel", (double)spec.Parallel, 1, MostCells, "rows");
        var stated = Stated(spec, errors);
        if (!good || stated is null)
        {
            return null;
        }

        var cellMa = spec.CurrentMa / spec.Parallel;
        var used = Nearest(stated, cellMa);
        return new LightPlan(
            used.Min(s => s.LeastMah) / cellMa,
            used.Max(s => s.MostMah) / cellMa,
            cellMa,
            Cells.Find(spec.Cell)?.Volts * spec.Series,
            [.. used.Select(Words)]);
    }

    public static IEnumerable<Finding> Findings(LightSpec spec, LightPlan? plan, bool covered)
    {
        yield return Rules.Note("battery-outside", "parts.light", "A battery never goes inside the casting. It stands in the cavity" + (covered ? ", behind a cover that opens." : "; leave a way to reach it."), "our rule");
        if (Cells.Find(spec.Cell)?.Button ?? false)
        {
            yield return Rules.Look("button-cell", "parts.light.cell", "Button and coin cells can kill a child who swallows one, and burn within hours. The compartment must open only with a tool or a coin, or by two independent movements at the same time; its screws must stay captive in the cover; the warning belongs on the piece, its box and its leaflet. The rules where you sell come first: read them.", Button);
        }

        if (plan is not null && Far(spec, plan.CellMa) is { } far)
        {
            yield return far;
        }
    }

    private static Finding? Far(LightSpec spec, double cellMa)
    {
        var used = Nearest(Stated(spec, new InputErrors())!, cellMa);
        var loads = used.Where(s => s.AtMa is not null).Select(s => s.AtMa!.Value).ToList();
        if (loads.Count == 0)
        {
            return Rules.Note("load-not-stated", "parts.light.cell", "The source does not say at which load this capacity was measured. Capacity depends on load: try one set of cells before you promise hours.", "capacity depends on load: lygte-info.dk");
        }

        var times = loads.Min(l => Math.Max(l / cellMa, cellMa / l));
        return times <= FarTimes * (1 + 1e-9) ? null : Rules.Look(
            "load-far",
            "parts.light.currentMa",
            FormattableString.Invariant($"Each cell gives {cellMa:0.##} mA here, and its capacity was stated at {loads.MinBy(l => Math.Max(l / cellMa, cellMa / l)):0.##} mA: {times:0.#} times {(loads[0] < cellMa ? "less" : "more")}. {(loads[0] < cellMa ? "A heavier load gets less out of a cell, so expect fewer hours." : "Do not count on these hours before you have tried it.")}"),
            "capacity depends on load: an AA gives about 2900 mAh at 25 mA and 1400 at 500 (lygte-info.dk)");
    }

    private static IReadOnlyList<CellCapacity>? Stated(LightSpec spec, InputErrors errors)
    {
        if (spec.Cell != Cells.Own)
        {
            if (Cells.Find(spec.Cell) is { } cell)
            {
                return cell.Stated;
            }

            errors.Add("parts.light.cell", $"There is no cell '{spec.Cell}'. Use one of: {string.Join(", ", Cells.All.Select(c => c.Key))}, {Cells.Own}.");
            return null;
        }

        if (spec.CapacityMah is null)
        {
            errors.Add("parts.light.capacityMah", "Give the capacity of one cell, as printed on it or in its data sheet.");
        }

        return errors.Positive("parts.light.capacityMah", spec.CapacityMah, 1e6, "mAh") & errors.Positive("parts.light.atMa", spec.AtMa, MostMa, "mA") && spec.CapacityMah is { } mah
            ? [new CellCapacity(mah, mah, spec.AtMa, spec.Source.Length > 0 ? spec.Source : "the maker's own figure")] : null;
    }

    // between two stated loads both are told; beyond them the nearer one
    private static List<CellCapacity> Nearest(IReadOnlyList<CellCapacity> stated, double cellMa)
    {
        var below = stated.Where(s => s.AtMa <= cellMa).MaxBy(s => s.AtMa);
        var above = stated.Where(s => s.AtMa >= cellMa).MinBy(s => s.AtMa);
        var known = new[] { below, above }.OfType<CellCapacity>().Distinct().ToList();
        return known.Count > 0 ? known : [.. stated];
    }

    private static string Words(CellCapacity s) => (s.LeastMah == s.MostMah
        ? FormattableString.Invariant($"{s.LeastMah:0.#} mAh") : FormattableString.Invariant($"{s.LeastMah:0.#} to {s.MostMah:0.#} mAh"))
        + (s.AtMa is { } at ? FormattableString.Invariant($" at {at:0.##} mA") : ", load not stated") + $" ({s.Source})";
}
