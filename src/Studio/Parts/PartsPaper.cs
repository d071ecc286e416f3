using System.Globalization;
using Studio.Engine.Parts;
using Studio.Papers;
using OnPaper = Studio.Papers.Measure;

namespace Studio.Parts;

/// <summary>What the saw and the drill need: the cut list, then every part at true size. Every number comes computed.</summary>
public sealed record PartsPaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    public required DateTime MadeUtc { get; init; }

    public required string Piece { get; init; }

    public required string Commission { get; init; }

    public required string Mould { get; init; }

    public required PartsPlan Plan { get; init; }

    public required CutSpec Cut { get; init; }

    public string Units => Format.Inches ? "inch" : "metric";
}

/// <summary>The cut list on one page, then the parts at true size between bars that a ruler checks.</summary>
public static partial class PartsPaper
{
    private static readonly string[] Cautions =
    [
        "Clamp the work, keep fingers off the blade's line, and cover your eyes.",
        "Cut and drill cured resin only, wet or with extraction, and wear an FFP2 mask: any dust is too much.",
        "Drill before any light or battery goes in. A battery never goes inside the casting.",
        "The instructions of machine, blade and sheet come first.",
    ];

    public static byte[] Create(PartsPaperModel model, PaperSize size)
    {
        var pages = TrueSize(model.Plan, size);
        return PaperFlow.Render(
            new PaperSetup($"Parts to cut, {model.Piece}", size, PaperType.Work(), model.Format.Language, model.Studio.StudioName, $"{model.Studio.StudioName} · {model.Piece} · parts to cut", model.MadeUtc)
            { SideMm = SideMm, TopMm = TopMm, BottomMm = BottomMm },
            flow =>
            {
                Opening(flow, model);
                CutList(flow, model);
                Closing(flow, model);
                TooLarge(flow, model, pages);
                Pages(flow, model, pages);
            });
    }

    private static void Opening(PaperFlow flow, PartsPaperModel model)
    {
        flow.Text($"{model.Piece} · {model.Commission}", flow.Type.Strong);
        flow.Title("Parts to cut");
        flow.Space(8);
        void Facts()
        {
            var box = model.Plan.Box;
            flow.Pairs(OnPaper.Mm(30),
            [
                ("Mould", model.Mould),
                ("Box outside", box is null ? null : PartsWords.Size(box.OuterWidthMm, box.OuterDepthMm, box.HeightMm, model.Units)),
                ("Box inside", box is null ? null : PartsWords.Size(box.InnerWidthMm, box.InnerDepthMm, model.Units)),
                ("At the corners", box is null ? null : model.Cut.Through == Through.Depth ? "The ends run through, front and back sit between them." : "Front and back run through, the ends sit between them."),
                ("Kerf", PartsWords.Length(model.Cut.KerfMm, model.Units) + ": cut outside the line by half of it"),
                ("Proud of the rim", box is null || model.Cut.ProudMm == 0 ? null : PartsWords.Length(model.Cut.ProudMm, model.Units) + ", to be planed flush before closing"),
                ("Square when", box is null ? null : $"both diagonals measure {PartsWords.Length(box.DiagonalMm, model.Units)} outside. {PartsWords.Length(1, model.Units)} between them is a lean of {PartsWords.Length(box.LeanPerMm, model.Units)} over the depth."),
            ]);
        }

        if (model.Plan.Box is { } drawn)
        {
            flow.Columns(18, (1.35, Facts), (1, () => flow.Drawing(PartsPaperSketch.Of(PartsSketches.Joint(drawn, model.Cut, model.Units)), OnPaper.Mm(48))));
        }
        else
        {
            Facts();
        }
    }

    private static void CutList(PaperFlow flow, PartsPaperModel model)
    {
        var (type, plan) = (flow.Type, model.Plan);
        flow.Heading("Cut list", 8);
        flow.Table(
            [new("", 0.25), new("Part", 2), new("How many", 0.6, Right: true), new("Width × height", 1.3, Right: true), new("Sheet", 0.6, Right: true), new("Cut", 0.35, Right: true)],
            [.. plan.Parts.Select(p => (IReadOnlyList<PaperCell>)
            [
                PaperCell.Of(PartsWords.Letter(plan, p), type.Strong),
                new([(p.Name, type.Text), .. p.Holes.Select(h => ($"Hole of {PartsWords.Length(h.DiameterMm, model.Units)}, {PartsWords.Hole(h, model.Units)}", type.Small))]),
                PaperCell.Of(p.Count.ToString(CultureInfo.InvariantCulture), type.Text),
                PaperCell.Of(PartsWords.Size(p.WidthMm, p.HeightMm, model.Units), type.Strong),
                PaperCell.Of(PartsWords.Length(p.SheetMm, model.Units), type.Text),
                new PaperCell([]) { Tick = type.Text.Leading },
            ])]);
        foreach (var use in plan.Sheets)
        {
            flow.Text(PartsWords.Used(use, model.Units), type.Small);
        }
    }

    private static void Closing(PaperFlow flow, PartsPaperModel model)
    {
        var ground = PartsSketches.Base(model.Plan, model.Units);
        void Care() => flow.Boxed(() =>
        {
            flow.Block("H2", "Take care", flow.Type.Heading);
            flow.Bullets(Cautions, flow.Type.Small);
        }, PaperInks.Amber);

        if (ground is null)
        {
            flow.Space(8);
            Care();
        }
        else
        {
            flow.Heading("The base, seen from below", 8);
            flow.Columns(18, (1.1, () => flow.Drawing(PartsPaperSketch.Of(ground), OnPaper.Mm(70))), (1, () =>
            {
                flow.Text(Holds(model), flow.Type.Small);
                flow.Space(5);
                Care();
            }
            ));
        }

        var doubts = model.Plan.Findings.Where(f => f.Severity != Engine.Severity.Note).Select(f => f.Message).ToList();
        if (doubts.Count > 0)
        {
            flow.Heading("Look first", 8);
            flow.Bullets(doubts, flow.Type.Small);
        }
    }

    private static string? Holds(PartsPaperModel model) => model.Plan.Cover is not { Holds: { Count: > 0 } holds } ? null
        : $"Pilot holes of {PartsWords.Length(holds[0].PilotMm, model.Units)} in the base, from its middle: " + string.Join("; ", holds.Select(h => Hold(h, model.Units))) + ".";

    private static string Hold(HoldPlace hold, string units)
    {
        var ways = new[] { (Mm: hold.XMm, More: "right", Less: "left"), (Mm: hold.YMm, More: "back", Less: "forward") }
            .Where(w => w.Mm != 0).Select(w => $"{PartsWords.Length(Math.Abs(w.Mm), units)} {(w.Mm > 0 ? w.More : w.Less)}");
        return $"{hold.Name}: {string.Join(", ", ways)}{(hold.Stands ? "" : " (cannot stand)")}";
    }
}
