using PdfSharp.Drawing;
using Studio.Engine.Moulds;
using Studio.Engine.Parts;
using Studio.Papers;
using OnPaper = Studio.Papers.Measure;

namespace Studio.Parts;

/// <summary>The pages at true size.</summary>
public static partial class PartsPaper
{
    private const double SideMm = 12;
    private const double TopMm = 12;
    private const double BottomMm = 20;

    /// <summary>For the heading and the sentence about the bars.</summary>
    private const double HeadMm = 19;

    /// <summary>Between two parts on paper: their names stand there.</summary>
    private const double ApartMm = 9;

    private const double NameMm = 4;
    private const double HairPt = 0.3;
    private const int RoundPoints = 96;

    /// <summary>The base with its holes, to lay on the piece and drill through.</summary>
    private const string Guide = "guide";

    internal static double FieldLeftMm => SideMm + PaperCheckBars.RoomMm;

    internal static double FieldTopMm => TopMm + HeadMm;

    /// <summary>What lies on which page; what no page of this size holds is told apart.</summary>
    internal static SheetUse TrueSize(PartsPlan plan, PaperSize size) => SheetNesting.Lay(
        [.. plan.Parts, .. DrillGuide(plan)],
        size.WidthMm() - SideMm - FieldLeftMm,
        size.HeightMm() - BottomMm - PaperCheckBars.RoomMm - FieldTopMm,
        ApartMm);

    private static IEnumerable<SheetPart> DrillGuide(PartsPlan plan)
    {
        if (PartsSketches.Base(plan, "metric") is not null)
        {
            yield return new SheetPart(Guide, "Drilling guide for the base, from below", 1, plan.Base.Max(p => p.XMm) - plan.Base.Min(p => p.XMm), plan.Base.Max(p => p.YMm) - plan.Base.Min(p => p.YMm), 0, []);
        }
    }

    private static void TooLarge(PaperFlow flow, PartsPaperModel model, SheetUse pages)
    {
        foreach (var part in pages.TooLarge)
        {
            flow.Keep(() =>
            {
                flow.Heading($"{Name(model.Plan, part)}: larger than this page, not at true size");
                flow.Text("Drawn smaller. Take its measures from the dimensions, not from the paper.", flow.Type.Small);
                flow.Space(4);
                var sketch = part.Key == Guide ? PartsSketches.Base(model.Plan, model.Units)! : PartsSketches.Part(model.Plan, part, model.Units);
                flow.Drawing(PartsPaperSketch.Of(sketch), OnPaper.Mm(80));
            });
        }
    }

    private static void Pages(PaperFlow flow, PartsPaperModel model, SheetUse pages)
    {
        foreach (var sheet in pages.Sheets)
        {
            flow.Break();
            flow.Block("H2", "At true size", flow.Type.Heading);
            flow.Text(PaperCheckBars.Words, flow.Type.Small);
            PaperCheckBars.Draw(flow.Ink, flow.Type, SideMm, FieldTopMm + pages.HeightMm + PaperCheckBars.RoomMm);
            foreach (var placed in sheet)
            {
                Draw(flow, model, placed);
            }
        }
    }

    private static void Draw(PaperFlow flow, PartsPaperModel model, PlacedPart placed)
    {
        var (ink, part) = (flow.Ink, placed.Part);
        var box = new XRect(At(placed, new(placed.Turned ? part.WidthMm : 0, part.HeightMm)), new XSize(OnPaper.Mm(placed.WidthMm), OnPaper.Mm(placed.HeightMm)));
        var words = $"{PartsWords.Size(part.WidthMm, part.HeightMm, model.Units)} · {Name(model.Plan, part)}{(part.Count > 1 ? $", {placed.Number} of {part.Count}" : "")}";
        using var figure = ink.Figure(words + ", at true size", box);
        if (part.Key == Guide)
        {
            Base(ink, model.Plan, placed);
        }
        else
        {
            Hair(ink, placed, [new(0, 0), new(part.WidthMm, 0), new(part.WidthMm, part.HeightMm), new(0, part.HeightMm)]);
            foreach (var hole in part.Holes)
            {
                Hole(ink, placed, hole.XMm, hole.YMm, hole.DiameterMm);
            }
        }

        var style = flow.Type.Label;
        ink.Text(flow.Fit(words, style, Math.Min(box.Width + OnPaper.Mm(ApartMm - 1), flow.Left + flow.Width - box.Left)), style, box.Left, box.Bottom + OnPaper.Mm(NameMm));
        Inside(flow, model, part, box);
    }

    // the letter in the middle, for parts too narrow for their name
    private static void Inside(PaperFlow flow, PartsPaperModel model, SheetPart part, XRect box)
    {
        var (style, words) = (flow.Type.Strong, part.Key == Guide ? "" : PartsWords.Letter(model.Plan, part));
        if (flow.Ink.Width(words, style) < box.Width - OnPaper.Mm(2) && style.Leading < box.Height)
        {
            flow.Ink.Text(words, style, box.Left + ((box.Width - flow.Ink.Width(words, style)) / 2), box.Top + (box.Height / 2) + (style.Font.Size * 0.35));
        }
    }

    private static void Base(PaperInk ink, PartsPlan plan, PlacedPart placed)
    {
        var (left, low) = (plan.Base.Min(p => p.XMm), plan.Base.Min(p => p.YMm));
        PlanPoint Local(double x, double y) => new(x - left, y - low);
        Hair(ink, placed, [.. plan.Base.Select(p => Local(p.XMm, p.YMm))]);
        if (plan.Cover is { } c)
        {
            Middle(c.WidthMm, c.DepthMm);
            Middle(c.OpeningWidthMm, c.OpeningDepthMm);
        }

        foreach (var (x, y, d) in (plan.Cover?.Holds ?? []).Select(h => (h.XMm, h.YMm, h.PilotMm)).Concat(plan.Feet.Select(f => (f.XMm, f.YMm, f.DiameterMm))))
        {
            Hole(ink, placed, x - left, y - low, d);
        }

        void Middle(double w, double d) => Hair(ink, placed, [Local(-w / 2, -d / 2), Local(w / 2, -d / 2), Local(w / 2, d / 2), Local(-w / 2, d / 2)]);
    }

    // a circle with cross-hairs that reach beyond it, for a bradawl
    private static void Hole(PaperInk ink, PlacedPart placed, double x, double y, double diameter)
    {
        var (r, reach) = (diameter / 2, (diameter / 2) + 1.5);
        Hair(ink, placed, [.. Enumerable.Range(0, RoundPoints).Select(i => 2 * Math.PI * i / RoundPoints).Select(a => new PlanPoint(x + (r * Math.Cos(a)), y + (r * Math.Sin(a))))]);
        Line(new(x - reach, y), new(x + reach, y));
        Line(new(x, y - reach), new(x, y + reach));

        void Line(PlanPoint from, PlanPoint to)
        {
            var (a, b) = (At(placed, from), At(placed, to));
            ink.Line(a.X, a.Y, b.X, b.Y, XColors.Black, HairPt);
        }
    }

    private static void Hair(PaperInk ink, PlacedPart placed, PlanPoint[] points) =>
        ink.Polygon([.. points.Select(p => At(placed, p))], null, XColors.Black, HairPt);

    // from the part's own corner, y upwards, to the page: turned anticlockwise, never mirrored
    private static XPoint At(PlacedPart placed, PlanPoint p)
    {
        var (x, y) = placed.Turned ? (placed.Part.HeightMm - p.YMm, p.XMm) : (p.XMm, p.YMm);
        return new XPoint(OnPaper.Mm(FieldLeftMm + placed.XMm + x), OnPaper.Mm(FieldTopMm + placed.YMm + placed.HeightMm - y));
    }

    private static string Name(PartsPlan plan, SheetPart part) => part.Key == Guide ? part.Name : $"{PartsWords.Letter(plan, part)}: {part.Name}";
}
