namespace Studio.Engine.Cure;

/// <summary>The clock of one layer.</summary>
internal sealed class LayerClock(PouredLayer layer, RoomCurve? room, double untilHours, int index)
{
    private const double ColdWarnsFrom = 1.5;

    private readonly List<Finding> findings = [];

    private CureSheet Sheet => layer.Sheet;

    internal LayerCure Run(PouredLayer? below)
    {
        var gel = Ready(t => t.GelHours, "gel time");
        var from = Ready(t => t.NextPourFromHours, "time for the next pour");
        var demould = Ready(t => t.DemouldHours, "demould time");
        var full = Ready(t => t.FullCureHours, "full-cure time");
        var until = Closing(from);
        if (layer.PouredAtHours < below?.PouredAtHours)
        {
            Add("poured-before-layer-below", Severity.Stop, ".pouredAtHours",
                $"Layer {layer.Name} is logged as poured before layer {below.Name} under it. Correct one of the two times before you go by this clock.", "our rule");
        }

        Doubts([("gel", gel), ("next pour", from), ("demould", demould), ("full cure", full)]);
        return new()
        {
            Name = layer.Name,
            Gel = Tell(gel),
            NextPourFrom = Tell(from),
            NextPourUntil = Tell(until),
            Demould = Tell(demould),
            FullCure = Tell(full),
            Findings = findings,
        };
    }

    // ready: the later of the warmest row's printed hours and the integral, in which warmth above the sheet's range counts for nothing
    private Found Ready(Func<CureTimes, double?> pick, string what) => Find(pick, what, rows =>
    {
        var pace = new CurePace(rows, Sheet.FactorPer10C, towardsLater: true, double.NegativeInfinity, Sheet.MaxC ?? double.PositiveInfinity);
        var byRoom = CureProgress.ReachedAt(room!, pace, layer.PouredAtHours);
        var printed = layer.PouredAtHours + rows.MaxBy(r => r.C).Hours;
        return new(Math.Max(byRoom, printed), rows.MinBy(r => r.C), printed >= byRoom, null);
    });

    // closing: no floor, and cold below the sheet's range does not keep the window open any longer
    private Found Closing(Found opens) => Find(t => t.NextPourUntilHours, "end of the next-pour window", rows =>
    {
        var pace = new CurePace(rows, Sheet.FactorPer10C, towardsLater: false, Sheet.MinC ?? double.NegativeInfinity, double.PositiveInfinity);
        var closes = CureProgress.ReachedAt(room!, pace, layer.PouredAtHours);
        if (closes < opens.AtHours)
        {
            Add("window-uncertain", Severity.Warn, "",
                $"In this room the next-pour window of layer {layer.Name} may close before the printed hours open it. Pour as soon as it opens, or abrade and clean the surface first.",
                "data sheet; common practice, no source");
        }

        return new(Math.Max(closes, opens.AtHours ?? closes), rows.MinBy(r => r.C), false, null);
    });

    private Found Find(Func<CureTimes, double?> pick, string what, Func<List<(double C, double Hours)>, Found> compute)
    {
        var rows = Sheet.Times.Where(t => pick(t) is not null).Select(t => (t.AtCelsius, pick(t)!.Value)).ToList();
        return rows.Count == 0 ? Found.Not($"The data sheet prints no {what}.")
            : room is null ? Found.Not("No room temperature is logged. Log the room to start the clock.")
            : compute(rows);
    }

    private void Doubts((string What, Found Found)[] ready)
    {
        var known = ready.Where(r => r.Found.AtHours is not null).ToList();
        if (room is null || known.Count == 0)
        {
            return;
        }

        var (minC, maxC) = room.Range(layer.PouredAtHours, known.Max(k => k.Found.AtHours!.Value));
        if (minC < Sheet.MinC)
        {
            Add("outside-data-sheet", Severity.Warn, "", FormattableString.Invariant(
                $"The room is at {minC:0.#} °C, below the {Sheet.MinC:0.#} °C that layer {layer.Name}'s data sheet allows. It may cure soft or stay tacky: warm the room, and test the surface before you go on."), "data sheet");
        }

        if (maxC > Sheet.MaxC)
        {
            Add("outside-data-sheet", Severity.Warn, "", FormattableString.Invariant(
                $"The room is at {maxC:0.#} °C, above the {Sheet.MaxC:0.#} °C that layer {layer.Name}'s data sheet allows. Resin heats itself more in a hot room: cool it, and keep watch. The clock counts no more than {Sheet.MaxC:0.#} °C."), "data sheet");
        }

        Cold(known);
    }

    private void Cold(List<(string What, Found Found)> known)
    {
        var (what, slowest) = known.MaxBy(k => Taken(k.Found) / k.Found.Coldest.Hours);
        if (Taken(slowest) > ColdWarnsFrom * slowest.Coldest.Hours)
        {
            Add("cold-room", Severity.Warn, "", FormattableString.Invariant(
                $"The room is colder than the {slowest.Coldest.C:0.#} °C of layer {layer.Name}'s data sheet: {what} comes {Taken(slowest):0.#} h after the pour in place of the printed {slowest.Coldest.Hours:0.#} h. Do not go by the printed hours; warm the room if the sheet allows."),
                "common practice, no source: rate of cure doubles per 10 °C");
        }
    }

    private Milestone Tell(Found found) =>
        found.AtHours is not { } at ? Milestone.Unknown(found.Reason!)
        : at > untilHours ? Milestone.Unknown(FormattableString.Invariant($"Not reached by the end of the time asked for, {untilHours:0.##} h."))
        : new(at, room!.RestsOn(at)) { FromPrintedHours = found.Printed };

    private double Taken(Found found) => found.AtHours!.Value - layer.PouredAtHours;

    private void Add(string code, Severity severity, string field, string message, string source) =>
        findings.Add(new(code, severity, $"layers[{index}]{field}", message, source));

    private sealed record Found(double? AtHours, (double C, double Hours) Coldest, bool Printed, string? Reason)
    {
        internal static Found Not(string reason) => new(null, default, false, reason);
    }
}
