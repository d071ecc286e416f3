using Studio.Climate;
using Studio.Clock;
using Studio.Engine;
using Studio.Heat;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>What speaks against keeping a pour as it stands. A stop is passed only with a reason, which is kept with the pour.</summary>
internal static class PourRules
{
    /// <summary>Codes are stable; the trace of a pour names them.</summary>
    /// <param name="heat">What is foretold of it; null while it is not worked out.</param>
    internal static IReadOnlyList<Finding> Of(BenchView sheet, BenchLayer layer, PourForm form, DateTime startedAt, PourHeat? heat) =>
        [.. Order(sheet, layer).Concat(heat?.Findings ?? []).Concat(Deep(layer)).Concat(Window(sheet, startedAt)).Concat(Ratio(layer, form)).Concat(Amount(layer, form)).Concat(Room(layer, form)).Concat(Keepsakes(layer))];

    /// <summary>True for a stop that no reason passes.</summary>
    internal static bool Final(Finding stop) => stop.Code is "out-of-order" or "run-away";

    // whatever the model foretells: it may only be stricter than the sheet
    private static IEnumerable<Finding> Deep(BenchLayer layer) =>
        layer.Plan?.Warnings.Where(w => w.Code == "pour-too-deep").Select(w => new Finding("deeper-than-sheet", Severity.Stop, "layer", w.Message, "data sheet")) ?? [];

    private static IEnumerable<Finding> Order(BenchView sheet, BenchLayer layer)
    {
        if (sheet.ToPour is { } first && first.Order < layer.Order)
        {
            yield return new("out-of-order", Severity.Stop, "layer", $"Layer {first.Order + 1}, {first.Name}, lies under this one and is not poured yet. Pour it first.", "our rule");
        }
    }

    private static IEnumerable<Finding> Window(BenchView sheet, DateTime startedAt)
    {
        if (sheet.Times.Layers is not [.., var below])
        {
            yield break;
        }

        var words = new ClockWords(sheet.Now, sheet.Zone);
        if (below.From.At is { } from && startedAt < from)
        {
            var liquid = below.Gel.At is { } gel && startedAt < gel;
            yield return new("before-window", Severity.Stop, "startedAt",
                $"{below.Name} takes the next pour from {words.Clock(from)}{(liquid ? " and is still liquid" : "")}: poured earlier the layers can run into each other and heat each other. {below.From.RestsOn}", "the latest of data sheet, fit and heat");
        }

        if (below.Until.At is { } until && startedAt >= until)
        {
            yield return new("window-closed", Severity.Stop, "startedAt",
                $"The window of {below.Name} closed {words.At(until)}: a layer poured on it now does not bond by itself. Abrade the surface, clean it and let it dry first, as its data sheet says.", "data sheet; common practice, no source");
        }
    }

    private static IEnumerable<Finding> Ratio(BenchLayer layer, PourForm form)
    {
        var off = layer.Plan is { } plan ? Weighing.OffPercent(form.ActualAG, form.ActualBG, plan.PartAG, plan.PartBG) : null;
        if (off is { } percent && Math.Abs(percent) > Weighing.RatioStopPercent)
        {
            yield return new("ratio-off", Severity.Stop, "tally",
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"There is {Math.Abs(percent):0.#} % too {(percent > 0 ? "much" : "little")} B for the A in the cup. It may stay soft or tacky for good: set the ratio right, or weigh anew."),
                "common practice, no source: within 5 %, and the data sheet where it asks for less");
        }
    }

    // a draft of before the design was changed, or a slip of the scale: the line, the grams and the heat would all be another layer's
    private static IEnumerable<Finding> Amount(BenchLayer layer, PourForm form)
    {
        if (layer.Plan is not { PartAG: var a, PartBG: var b } || a + b <= 0 || form.ActualAG <= 0 || form.ActualBG <= 0)
        {
            yield break;
        }

        var (weighed, planned) = (form.ActualAG + form.ActualBG, a + b);
        if (Math.Abs(weighed - planned) > Weighing.AmountStopPercent / 100 * planned)
        {
            yield return new("amount-off", Severity.Stop, "tally",
                $"{Say.Grams(weighed)} are weighed where {Say.Grams(planned)} are planned: it would not be the layer that was drawn, nor as warm as foretold. Weigh anew, or change the design first.", "our rule: within 10 %");
        }
    }

    private static IEnumerable<Finding> Room(BenchLayer layer, PourForm form)
    {
        if (form.RoomC is { } c && RoomBook.Wrong(c) is null && (c < layer.Resin.MinC || c > layer.Resin.MaxC))
        {
            var (limit, word) = c < layer.Resin.MinC ? (layer.Resin.MinC.Value, "colder") : (layer.Resin.MaxC!.Value, "warmer");
            yield return new("room-outside-sheet", Severity.Warn, "roomC", $"The room is {word} than the {Say.Celsius(limit)} that {layer.Resin.Name}'s data sheet allows. Set the room right before you pour.", "data sheet");
        }
    }

    private static IEnumerable<Finding> Keepsakes(BenchLayer layer) =>
        layer.Things.Where(t => t.Need is { Severity: Severity.Stop }).Select(t => t.Need!);
}
