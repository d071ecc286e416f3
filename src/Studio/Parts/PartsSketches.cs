using Studio.Engine.Moulds;
using Studio.Engine.Parts;

namespace Studio.Parts;

/// <summary>The drawings of the parts, from what the engine worked out.</summary>
public static class PartsSketches
{
    /// <summary>The box from above: which pair runs through, and the diagonal.</summary>
    public static PartsSketch Joint(BoxPlan box, CutSpec cut, string units)
    {
        var (w, d, t) = (box.OuterWidthMm, box.OuterDepthMm, box.SheetMm);
        var wide = cut.Through != Through.Depth;
        var (x, y) = wide ? (0.0, t) : (t, 0.0);
        return new(
        [
            SketchArea.Box(x, 0, w - (2 * x), t, "wall", "Front"),
            SketchArea.Box(x, d - t, w - (2 * x), t, "wall", "Back"),
            SketchArea.Box(0, y, t, d - (2 * y), "wall", "Left end"),
            SketchArea.Box(w - t, y, t, d - (2 * y), "wall", "Right end"),
            new SketchLine(new(0, 0), new(w, d)),
            new SketchWords(new(w * 0.32, d * 0.66), PartsWords.Length(box.DiagonalMm, units)),
            new SketchSpan(true, 0, w, 0, 0, PartsWords.Length(w, units)),
            new SketchSpan(false, 0, d, 0, 0, PartsWords.Length(d, units)),
        ],
        $"The box from above, {PartsWords.Size(w, d, units)} outside, {(wide ? "front and back running through" : "the ends running through")}; both diagonals {PartsWords.Length(box.DiagonalMm, units)}.");
    }

    /// <summary>One part with its size and holes.</summary>
    public static PartsSketch Part(PartsPlan plan, SheetPart part, string units) => new(
    [
        SketchArea.Box(0, 0, part.WidthMm, part.HeightMm, "part"),
        .. part.Holes.Select(h => new SketchRound(new(h.XMm, h.YMm), h.DiameterMm, "hole", h.Key)),
        new SketchWords(new(part.WidthMm / 2, part.HeightMm / 2), PartsWords.Letter(plan, part) + (part.Count > 1 ? $" × {part.Count}" : ""), Strong: true),
        new SketchSpan(true, 0, part.WidthMm, 0, 0, PartsWords.Length(part.WidthMm, units)),
        new SketchSpan(false, 0, part.HeightMm, 0, 0, PartsWords.Length(part.HeightMm, units)),
    ],
    $"{part.Name}, {part.Count} of {PartsWords.Size(part.WidthMm, part.HeightMm, units)}{(part.Holes.Count > 0 ? $", {part.Holes.Count} holes" : "")}.");

    /// <summary>The parts as they lie on one sheet.</summary>
    public static PartsSketch Sheet(PartsPlan plan, SheetUse use, int index, string units) => new(
    [
        SketchArea.Box(0, 0, use.WidthMm, use.HeightMm, "sheet"),
        .. use.Sheets[index].SelectMany(p => new SketchMark[]
        {
            SketchArea.Box(p.XMm, p.YMm, p.WidthMm, p.HeightMm, "part", p.Part.Name),
            new SketchWords(new(p.XMm + (p.WidthMm / 2), p.YMm + (p.HeightMm / 2)), PartsWords.Letter(plan, p.Part), Strong: true),
        }),
        new SketchSpan(true, 0, use.WidthMm, 0, 0, PartsWords.Length(use.WidthMm, units)),
        new SketchSpan(false, 0, use.HeightMm, 0, 0, PartsWords.Length(use.HeightMm, units)),
    ],
    $"Sheet {index + 1} with {use.Sheets[index].Count} parts on it.");

    /// <summary>The base as it is seen from below: opening, cover, holes and feet.</summary>
    public static PartsSketch? Base(PartsPlan plan, string units)
    {
        if (plan.Base.Count < 3 || (plan.Cover is null && plan.Feet.Count == 0))
        {
            return null;
        }

        var marks = new List<SketchMark> { new SketchArea(plan.Base, "base", "Base") };
        if (plan.Cover is { } c)
        {
            if (c is { RecessWidthMm: { } rw, RecessDepthMm: { } rd })
            {
                marks.Add(Middle(rw, rd, "recess", "Recess"));
            }

            marks.Add(Middle(c.WidthMm, c.DepthMm, "plate", "Cover"));
            marks.Add(Middle(c.OpeningWidthMm, c.OpeningDepthMm, "opening", "Opening"));
            marks.AddRange(c.Holds.Select(h => new SketchRound(new(h.XMm, h.YMm), h.PilotMm, "hole", h.Name, !h.Stands)));
            marks.AddRange(Spans(c, units));
        }

        marks.AddRange(plan.Feet.Select(f => new SketchRound(new(f.XMm, f.YMm), f.DiameterMm, "foot", "Foot", !f.Stands)));
        var edge = plan.Base.Min(p => p.YMm);
        marks.Add(new SketchSpan(true, plan.Base.Min(p => p.XMm), plan.Base.Max(p => p.XMm), edge, plan.Cover is null ? 0 : 2, PartsWords.Length(plan.Base.Max(p => p.XMm) - plan.Base.Min(p => p.XMm), units)));
        return new(marks, "The base seen from below" + (plan.Cover is { } cover ? $", with a cover of {PartsWords.Size(cover.WidthMm, cover.DepthMm, units)} over an opening of {PartsWords.Size(cover.OpeningWidthMm, cover.OpeningDepthMm, units)}" : "") + ".");

        IEnumerable<SketchMark> Spans(CoverPlan cover, string u)
        {
            var (low, left) = (plan.Base.Min(p => p.YMm), plan.Base.Min(p => p.XMm));
            yield return new SketchSpan(true, -cover.OpeningWidthMm / 2, cover.OpeningWidthMm / 2, low, 0, PartsWords.Length(cover.OpeningWidthMm, u));
            yield return new SketchSpan(true, -cover.WidthMm / 2, cover.WidthMm / 2, low, 1, PartsWords.Length(cover.WidthMm, u));
            yield return new SketchSpan(false, -cover.OpeningDepthMm / 2, cover.OpeningDepthMm / 2, left, 0, PartsWords.Length(cover.OpeningDepthMm, u));
            yield return new SketchSpan(false, -cover.DepthMm / 2, cover.DepthMm / 2, left, 1, PartsWords.Length(cover.DepthMm, u));
        }
    }

    /// <summary>The cavity with its fittings, from above or from the front.</summary>
    public static PartsSketch? Cavity(PartsPlan plan, bool above, string units)
    {
        if (plan is not { Cavity: { } c, Fit: { Fits: true } fit })
        {
            return null;
        }

        var height = above ? c.DepthMm : c.HeightMm;
        return new(
        [
            SketchArea.Box(0, 0, c.WidthMm, height, "cavity"),
            .. fit.Places.OrderBy(p => above ? p.ZMm : -p.YMm).Select(p => SketchArea.Box(p.XMm, above ? p.YMm : p.ZMm, p.WidthMm, above ? p.DepthMm : p.HeightMm, "fitting", p.Name)),
            .. fit.Places.Select(p => new SketchWords(Corner(p, above), $"{p.Index + 1}", Strong: true)),
            new SketchSpan(true, 0, c.WidthMm, 0, 0, PartsWords.Length(c.WidthMm, units)),
            new SketchSpan(false, 0, height, 0, 0, PartsWords.Length(height, units)),
        ],
        $"The cavity {(above ? "from above, its front below" : "from the front")}: " + string.Join(", ", fit.Places.Select(p => $"{p.Index + 1} {p.Name}")) + ".");
    }

    // the number stands in the upper left corner, where one box seldom hides another
    private static PlanPoint Corner(FittingPlace p, bool above)
    {
        var (low, high) = above ? (p.YMm, p.DepthMm) : (p.ZMm, p.HeightMm);
        return new PlanPoint(p.XMm + Math.Min(2.5, p.WidthMm / 2), low + high - Math.Min(2.5, high / 2));
    }

    private static SketchArea Middle(double width, double depth, string kind, string name) => SketchArea.Box(-width / 2, -depth / 2, width, depth, kind, name);
}
