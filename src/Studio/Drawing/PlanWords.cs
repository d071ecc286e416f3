using System.Globalization;

namespace Studio.Drawing;

/// <summary>A plan in words.</summary>
internal static class PlanWords
{
    /// <summary>"Pyramid from above at the rim: 150 × 150 mm. Light box 60 × 40 mm in the middle."</summary>
    public static string Of(PlanView plan)
    {
        var (low, high) = plan.Extent;
        var where = plan.AtRim ? "at the rim" : string.Create(CultureInfo.InvariantCulture, $"at {plan.AtMm:0.#} mm");
        var size = plan.Outline.Count == 0 ? "nothing is inside there" : Size(high.XMm - low.XMm, high.YMm - low.YMm);
        var parts = new List<string> { $"{plan.MouldName} from above {where}: {size}" };
        if (plan.Layer is { } layer)
        {
            parts.Add(plan.AtMm > layer.ToMm + 0.05 ? string.Create(CultureInfo.InvariantCulture, $"{layer.Name} lies below, at {layer.ToMm:0.#} mm") : $"{layer.Name} lies there");
        }

        if (plan.Former is { } f)
        {
            parts.Add($"A box for lights in the middle, {Size(f.OuterWidthMm, f.OuterDepthMm)}{(plan.ResinInFormer ? ", with resin inside" : "")}");
        }

        parts.AddRange(plan.Sheets.Select(s => $"{s.Name} {(s.Filled ? "seen from above" : "stands upright")}"));
        parts.AddRange(plan.Holes.Select(h => string.Create(CultureInfo.InvariantCulture, $"{h.Name}, {h.DiameterMm:0.#} mm across")));
        if (plan.Unknown)
        {
            parts.Add("Its outline is not known: it is drawn round, with the area of the water fill");
        }

        return string.Join(". ", parts) + ".";
    }

    private static string Size(double width, double depth) => string.Create(CultureInfo.InvariantCulture, $"{width:0.#} × {depth:0.#} mm");
}
