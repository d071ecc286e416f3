using System.Globalization;
using Studio.Papers;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>What lies beside the scale while one layer is poured. Every number comes computed.</summary>
public sealed record PourPaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    public required DateTime MadeUtc { get; init; }

    public required string Piece { get; init; }

    public required string Commission { get; init; }

    public required string LayerName { get; init; }

    /// <summary>Counted from 1 in pouring order.</summary>
    public required int LayerNumber { get; init; }

    public required int LayerCount { get; init; }

    /// <summary>The section with this layer marked: give its polygon <see cref="PaperPattern.Hatch"/> and its label <c>Strong</c>.</summary>
    public PaperDrawing? Section { get; init; }

    public required string Resin { get; init; }

    /// <summary>The mixing ratio in words: "100 : 45 by weight".</summary>
    public string Mix { get; init; } = "";

    /// <summary>Which data sheet, of what date, and what it says that matters here.</summary>
    public string DataSheet { get; init; } = "";

    public double FromMm { get; init; }

    public double ToMm { get; init; }

    public double? DepthMm { get; init; }

    /// <summary>Along the middle of a face, from the mould's lowest point.</summary>
    public double FaceMarkMm { get; init; }

    /// <summary>To be mixed in all, waste included [g].</summary>
    public double MixG { get; init; }

    /// <summary>How far that may be off by the mould's water check [g]; null where there was none.</summary>
    public double? MixSpreadG { get; init; }

    /// <summary>What the spread rests on, as a sentence.</summary>
    public string SpreadRestsOn { get; init; } = "";

    /// <summary>How level the mould has to stand for this layer; null leaves the figures out.</summary>
    public BenchTilt? Tilt { get; init; }

    public double? PotLifeMinutes { get; init; }

    public required IReadOnlyList<PourPaperBatch> Batches { get; init; }

    /// <summary>The sum of the cups as they are printed, so that the sheet adds up to the last digit [g].</summary>
    public double PrintedMixG => Batches.Count > 0 ? (double)Batches.Sum(b => Format.PrintedGrams(b.PartAG) + Format.PrintedGrams(b.PartBG)) : MixG;

    /// <summary>Everything that is in the layer's height or begins in it.</summary>
    public IReadOnlyList<PourPaperRow> With { get; init; } = [];

    /// <summary>What to lay ready, one thing a line.</summary>
    public IReadOnlyList<string> Prepare { get; init; } = [];

    /// <summary>Cautions beyond the standing ones (dust, pressure pot, heat gun), and the engine's warnings for this layer.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    public PourPaperTimes? Times { get; init; }

    public PourPaperHeat? Heat { get; init; }
}

/// <summary>What is foretold of the layer's own heat, in whole sentences.</summary>
/// <param name="Peak">How hot and when; or why nothing is foretold.</param>
/// <param name="IfHotter">What to do if it gets hotter; empty where nothing is foretold.</param>
/// <param name="RestsOn">Which model, and on what.</param>
public sealed record PourPaperHeat(string Peak, string IfHotter, string RestsOn);

/// <summary>One cup: grams of each part.</summary>
public sealed record PourPaperBatch(double PartAG, double PartBG);

/// <summary>Something that goes in with the resin, stands in the layer, or begins in it.</summary>
/// <param name="How">What hands do with it, in a word or two.</param>
/// <param name="Grams">Null where it is counted, not weighed.</param>
/// <param name="Note">Such as "KS-26-00042-H, drawer 2".</param>
/// <param name="Notes">Whole sentences: what to do with it in this layer.</param>
public sealed record PourPaperRow(string How, string Name, double? Grams, string Note, IReadOnlyList<string> Notes);

/// <summary>What the clock says, either as hours after the start or, once started, as instants (UTC).</summary>
/// <param name="RestsOn">The reading or the sheet's temperature that they rest on, in whole sentences.</param>
public sealed record PourPaperTimes(string RestsOn)
{
    public double? NextPourFromHours { get; init; }

    public double? NextPourUntilHours { get; init; }

    public double? DemouldHours { get; init; }

    public DateTime? StartUtc { get; init; }

    public DateTime? NextPourFromUtc { get; init; }

    public DateTime? NextPourUntilUtc { get; init; }

    public DateTime? DemouldUtc { get; init; }

    /// <summary>True where layers of the design are poured over this one: the piece stays in its mould for them, and no time of this one lets it out.</summary>
    public bool LayersAbove { get; init; }
}

/// <summary>The pour sheet for one layer: large figures, boxes to tick, lines to write on.</summary>
public static class PourPaper
{
    private static readonly string[] StandingCautions =
    [
        "The resin's data sheet and safety data sheet come first; where they differ from this sheet, they are right.",
        "Nitrile gloves, changed often (latex does not protect); eye protection; sleeves down. Resin or hardener on the skin: soap and water at once, never solvent.",
        "Fresh air or extraction before the first cup.",
        "Mixed resin heats itself: pour promptly, leave no full cup standing. If a cup smokes, set it outside if that is safe, and keep out of the fumes.",
    ];

    public static byte[] Create(PourPaperModel model, PaperSize size) => PaperFlow.Render(
        new PaperSetup($"Pour sheet, {model.Piece}, layer {model.LayerNumber} of {model.LayerCount}", size, PaperType.Bench(), model.Format.Language, model.Studio.StudioName,
            $"{model.Studio.StudioName} · {model.Piece} · layer {model.LayerNumber} of {model.LayerCount}", model.MadeUtc)
        { SideMm = 16, TopMm = 12, BottomMm = 18 },
        flow =>
        {
            Opening(flow, model);
            Ready(flow, model);
            Grams(flow, model);
            With(flow, model);
            Clock(flow, model);
        });

    private static void Opening(PaperFlow flow, PourPaperModel model)
    {
        var format = model.Format;
        flow.Text($"{model.Piece} · {model.Commission}", flow.Type.Strong);
        flow.Title(string.Create(CultureInfo.InvariantCulture, $"Layer {model.LayerNumber} of {model.LayerCount}: {model.LayerName}"));
        flow.Space(9);
        void Facts()
        {
            flow.Pairs(Measure.Mm(25),
            [
                ("Resin", model.Resin),
                ("Mix", model.Mix.Length > 0 ? model.Mix : null),
                ("Height", $"{format.Length(model.FromMm)} to {format.Length(model.ToMm)}" + (model.DepthMm is { } depth ? $", {format.Length(depth)} deep" : "")),
                ("Face mark", format.Length(model.FaceMarkMm) + " from the lowest point"),
                ("Pot life", model.PotLifeMinutes is { } pot ? format.Number(pot) + " minutes, by the data sheet" : null),
                ("Data sheet", model.DataSheet.Length > 0 ? model.DataSheet : null),
            ]);
        }

        if (model.Section is { } section)
        {
            flow.Columns(18, (1, () => flow.Drawing(section, Measure.Mm(40))), (1, Facts));
        }
        else
        {
            Facts();
        }
    }

    private static void Grams(PaperFlow flow, PourPaperModel model)
    {
        var type = flow.Type;
        flow.Heading($"Weigh {model.Format.Grams(model.PrintedMixG)}{(model.MixSpreadG is { } spread ? " ± " + model.Format.Grams(spread) : "")} in {(model.Batches.Count == 1 ? "one batch" : model.Format.Number(model.Batches.Count) + " batches")}", 8);
        flow.Table(
            [new("Batch", 0.6), new("A, resin [g]", 1.3, Right: true), new("B, hardener [g]", 1.3, Right: true), new("Weighed and mixed", 0.9, Right: true)],
            [.. model.Batches.Select((b, i) => (IReadOnlyList<PaperCell>)
            [
                PaperCell.Of((i + 1).ToString(CultureInfo.InvariantCulture), type.Figure),
                PaperCell.Of(model.Format.GramsFigure(b.PartAG), type.Figure),
                PaperCell.Of(model.Format.GramsFigure(b.PartBG), type.Figure),
                new PaperCell([]) { Tick = type.Figure.Leading },
            ])]);
        flow.Text(model.SpreadRestsOn.Length > 0 ? model.SpreadRestsOn : null, type.Small);
    }

    private static void With(PaperFlow flow, PourPaperModel model)
    {
        if (model.With.Count == 0)
        {
            return;
        }

        flow.Heading("With it", 8);
        flow.Table(
            [new("How", 0.6), new("What", 2.6), new("Grams", 0.7, Right: true), new("Done", 0.4, Right: true)],
            [.. model.With.Select(r => (IReadOnlyList<PaperCell>)
            [
                PaperCell.Of(r.How, flow.Type.Text),
                new([(r.Name, flow.Type.Strong), (Beside(r), flow.Type.Small)]),
                PaperCell.Of(r.Grams is { } grams ? AtLeast(model.Format, grams) : "by hand", flow.Type.Strong),
                new PaperCell([]) { Tick = flow.Type.Text.Leading },
            ])]);
    }

    // what is more than nothing is never printed as 0.00
    private static string AtLeast(PaperFormat format, double grams) => grams > 0 && format.PrintedGrams(grams) == 0 ? "< " + format.GramsFigure(0.01) : format.GramsFigure(grams);

    // one paragraph: the sheet lies beside the scale and has to stay one page wherever it can
    private static string Beside(PourPaperRow row) =>
        string.Join(" ", row.Notes.Prepend(row.Note.Length > 0 && row.Notes.Count > 0 ? Say.Sentence(row.Note) : row.Note).Where(w => w.Length > 0));

    private static void Ready(PaperFlow flow, PourPaperModel model)
    {
        flow.Space(8);
        flow.Columns(16,
            (1, () =>
            {
                flow.Block("H2", "Before you pour", flow.Type.Heading);
                flow.Space(3);
                flow.Bullets([Level(model), .. model.Prepare], tick: true);
                flow.Signatures(Measure.Mm(6), (1, "Room temperature [°C]"), (1, "Weighed by"));
                Heat(flow, model);
            }
        ),
            (1, () => Cautions(flow, model)));
    }

    // the first step of every pour
    private static string Level(PourPaperModel model) => model.Tilt is not { } t
        ? "Level the mould first, both ways."
        : $"Level the mould first: to {model.Format.Number(Down(t.MostDegrees))}°, which is {model.Format.Number(Down(t.MostPer100Mm))} mm over 100 mm, this line, {model.Format.Length(t.AcrossMm)} across, runs off by {model.Format.Length(t.VisibleMm)} at most. The last, widest layer shows it most (common practice).";

    // the careful way: never more tilt than the figure allows
    private static double Down(double value) => Math.Floor(value * 100) / 100;

    private static void Clock(PaperFlow flow, PourPaperModel model)
    {
        var columns = new List<(double, Action)>();
        if (model.Times?.StartUtc is { } start)
        {
            Add("Poured", model.Format.Moment(start));
        }
        else
        {
            columns.Add((1.2, () => WriteIn(flow, "Poured: day and time")));
        }

        if (model.Times is { } times)
        {
            Add("Next pour, not before", times.NextPourFromUtc is { } from ? model.Format.NotBefore(from) : Hours(times.NextPourFromHours, Math.Ceiling, model.Format));
            Add("Next pour, not after", times.NextPourUntilUtc is { } until ? model.Format.NotAfter(until) : Hours(times.NextPourUntilHours, Math.Floor, model.Format));
            Add("Demould, not before", times.LayersAbove ? "the last layer allows it" : times.DemouldUtc is { } demould ? model.Format.NotBefore(demould) : Hours(times.DemouldHours, Math.Ceiling, model.Format));
        }

        flow.Space(8);
        flow.Boxed(() =>
        {
            flow.Columns(12, [.. columns]);
            flow.Space(3);
            flow.Text(model.Times is { } t ? t.StartUtc is null ? t.RestsOn : t.RestsOn + " The clock on the bench moves these times as the room's temperature is logged." : null, flow.Type.Small);
        });

        void Add(string label, string? value)
        {
            if (value is not null)
            {
                columns.Add((1, () =>
                {
                    flow.Text(label, flow.Type.Label);
                    flow.Text(value, flow.Type.Strong);
                }
                ));
            }
        }
    }

    private static void Heat(PaperFlow flow, PourPaperModel model)
    {
        if (model.Heat is not { } heat)
        {
            return;
        }

        flow.Space(6);
        flow.Text("Its own heat", flow.Type.Label);
        flow.Text(heat.Peak, flow.Type.Strong);
        flow.Text(heat.RestsOn.Length > 0 ? heat.RestsOn : null, flow.Type.Small);
    }

    private static void WriteIn(PaperFlow flow, string label)
    {
        flow.Text(label, flow.Type.Label);
        flow.Y += flow.Type.Strong.Leading;
        flow.WriteOn(flow.Left, flow.Y, flow.Width);
        flow.Y += 2;
    }

    /// <summary>Tenths of an hour, rounded the careful way.</summary>
    private static string? Hours(double? hours, Func<double, double> careful, PaperFormat format) =>
        hours is { } h ? format.Number(careful(Math.Round(h * 10, 6)) / 10) + " hours after" : null;

    private static void Cautions(PaperFlow flow, PourPaperModel model)
    {
        flow.Boxed(() =>
        {
            flow.Block("H2", "Take care", flow.Type.Heading);
            flow.Bullets([.. model.Heat is { IfHotter.Length: > 0 } heat ? [heat.IfHotter] : Array.Empty<string>(), .. model.Cautions, .. StandingCautions], flow.Type.Small);
        }, PaperInks.Amber);
    }
}
