using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Parts;

/// <summary>The four sides of a former with butt joints, and a plate inside at its lower end.</summary>
internal static class BoxParts
{
    /// <summary>A lean that a cover's overlap hides [mm]: common practice, no source.</summary>
    private const double MostLeanMm = 0.5;
    private const double Tie = 1e-9; // a lean just at the limit is not past it by rounding

    private const double MostAstrayMm = 1;
    private const string Measured = "parts.cut.oneDiagonalMm";

    /// <summary>The box; null for a solid former, which is not cut from sheet, or where the sheet is too thick for it.</summary>
    public static BoxPlan? Plan(FormerSpec former, MouldBody mould, CutSpec cut, InputErrors errors)
    {
        if (former.Solid)
        {
            return null;
        }

        var t = cut.SheetMm ?? former.WallMm!.Value;
        var (inWidth, inDepth) = (former.OuterWidthMm - (2 * t), former.OuterDepthMm - (2 * t));
        if (Math.Min(inWidth, inDepth) <= 0)
        {
            errors.Add("parts.cut.sheetMm", FormattableString.Invariant($"Two sheets of {t} mm leave no room inside a box of {former.OuterWidthMm} by {former.OuterDepthMm} mm."));
            return null;
        }

        var (below, diagonal) = (mould.HeightMm - former.FromMm, Squareness.DiagonalMm(former.OuterWidthMm, former.OuterDepthMm));
        return new BoxPlan(
            former.OuterWidthMm,
            former.OuterDepthMm,
            inWidth,
            inDepth,
            t,
            below + cut.ProudMm,
            diagonal,
            Squareness.LeanMm(former.OuterWidthMm, diagonal + 0.5, diagonal - 0.5),
            below * ((former.OuterWidthMm * former.OuterDepthMm) - (inWidth * inDepth)) / 1000);
    }

    /// <summary>The rectangles: the pair that runs through, the pair between it, and the plate inside.</summary>
    public static IEnumerable<SheetPart> Parts(BoxPlan box, CutSpec cut)
    {
        var throughWidth = cut.Through != Through.Depth;
        var (front, ends) = throughWidth ? (box.OuterWidthMm, box.InnerDepthMm) : (box.InnerWidthMm, box.OuterDepthMm);
        yield return new SheetPart("front-and-back", throughWidth ? "Front and back, running through" : "Front and back, between the ends", 2, front, box.HeightMm, box.SheetMm, []);
        yield return new SheetPart("ends", throughWidth ? "Ends, between front and back" : "Ends, running through", 2, ends, box.HeightMm, box.SheetMm, []);
        if (cut.FloorPlate)
        {
            yield return new SheetPart("floor", "Floor plate, inside", 1, box.InnerWidthMm, box.InnerDepthMm, box.SheetMm, []);
        }
    }

    public static IEnumerable<Finding> Findings(BoxPlan box, FormerSpec former, CutSpec cut)
    {
        if (cut is { OneDiagonalMm: { } one, OtherDiagonalMm: { } other })
        {
            yield return Square(box, one, other);
        }

        if (Math.Abs(box.SheetMm - former.WallMm!.Value) > Rules.TouchMm)
        {
            yield return Rules.Look("sheet-not-wall", "parts.cut.sheetMm", $"The layers are worked out with walls of {Rules.Mm(former.WallMm.Value)}, and this sheet is {Rules.Mm(box.SheetMm)}. Give the former's wall the sheet's thickness, or its grams of resin are off.", Rules.Geometry);
        }

        if (!cut.FloorPlate && (former.FloorMm ?? former.FromMm) <= former.FromMm)
        {
            yield return Rules.Note("box-open-below", "parts.cut.floorPlate", $"Nothing closes this box at its lower end, and the layers count on no resin inside. Stand it tight on a set layer whose top lies at {Rules.Mm(former.FromMm)}, or add a floor plate.", Rules.Practice);
        }
    }

    private static Finding Square(BoxPlan box, double one, double other)
    {
        var lean = Squareness.LeanMm(box.OuterWidthMm, one, other);
        var mean = (one + other) / 2;
        return Math.Abs(mean - box.DiagonalMm) > MostAstrayMm && lean <= MostLeanMm + Tie
            ? Rules.Look("diagonal-astray", Measured, $"Both diagonals should measure {Rules.Mm(box.DiagonalMm)}, and these are {Rules.Mm(mean)} between them. Measure the sides: one pair is not as drawn.", Rules.Geometry)
            : lean > MostLeanMm + Tie
                ? Rules.Look("out-of-square", Measured, $"The diagonals differ by {Rules.Mm(Math.Abs(one - other))}, so the box leans by {Rules.Mm(lean)} over its depth. Press the longer diagonal together before the glue sets.", Rules.Geometry)
                : Rules.Note("square", Measured, $"Square within {Rules.Mm(Math.Max(lean, 0.1))} over its depth.", Rules.Geometry);
    }
}
