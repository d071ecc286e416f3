namespace Studio.Engine.Cure;

/// <summary>The clock of one layer.</summary>
internal sealed class LayerClock
{
    private const double ColdWarnsFrom = 1.5;

    private readonly PouredLayer layer;
    private readonly LayerClock? below;
    private readonly int index;
    private readonly RoomCurve? room;
    private readonly KineticClock? kinetic;
    private readonly double untilHours;
    private readonly List<Finding> findings = [];
    private readonly Found gel;
    private readonly Found opens;
    private readonly Found closes;
    private readonly Found demould;
    private readonly Found full;

    internal LayerClock(PouredLayer layer, LayerClock? below, int index, RoomCurve? room, double untilHours)
    {
        (this.layer, this.below, this.index, this.room, this.untilHours) = (layer, below, index, room, untilHours);
        kinetic = layer.Kinetics is { } kinetics && room is not null ? new(kinetics, layer.Sheet, room, layer.PouredAtHours) : null;
        gel = Ready(t => t.GelHours, "gel time").OrLater(Found.Of(kinetic?.Gel));
        opens = Ready(t => t.NextPourFromHours, "time for the next pour").OrLater(Found.Of(kinetic?.Gel));
        closes = Closing();
        demould = Ready(t => t.DemouldHours, "demould time").OrLater(Found.Of(kinetic?.Demould));
        full = Ready(t => t.FullCureHours, "full-cure time").OrLater(Found.Of(kinetic?.FullCure));
    }

    /// <summary>When it gels [h], even after the time asked for; null when it cannot be said.</summary>
    internal double? GelHours => gel.AtHours;

    private CureSheet Sheet => layer.Sheet;

    internal LayerCure Cure()
    {
        DoubtTheOrder();
        DoubtTheCold();
        DoubtTheRoom([("gel", gel), ("next pour", opens), ("demould", demould), ("full cure", full)]);
        return new()
        {
            Name = layer.Name,
            Gel = Tell(gel),
            NextPourFrom = Tell(opens),
            NextPourUntil = Tell(closes),
            Demould = Tell(demould),
            FullCure = Tell(full),
            Kinetic = kinetic,
            Findings = findings,
        };
    }

    private void DoubtTheOrder()
    {
        const string at = ".pouredAtHours";
        var under = below?.layer.Name;
        if (layer.PouredAtHours < below?.layer.PouredAtHours)
        {
            Add("poured-before-layer-below", Severity.Stop, at,
                $"Layer {layer.Name} is logged as poured before layer {under} under it. Correct one of the two times before you go by this clock.", "our rule");
        }
        else if (layer.PouredAtHours < below?.opens.AtHours - CureRounding.SlackHours)
        {
            Add("poured-before-window", Severity.Warn, at,
                $"Layer {layer.Name} was poured before layer {under} under it was ready for it. The layers may mix, and their heat adds up: keep watch, and look at the boundary once it has gelled.", "data sheet");
        }
        else if (layer.PouredAtHours > below?.closes.AtHours + CureRounding.SlackHours)
        {
            Add("poured-after-window", Severity.Warn, at,
                $"Layer {layer.Name} was poured after the next-pour window of layer {under} had closed. Unless that surface was abraded and cleaned, the two may part: look along the boundary before you demould.", "data sheet");
        }
    }

    // ready: the later of the warmest row's printed hours and the integral, in which warmth above the sheet's range counts for nothing
    private Found Ready(Func<CureTimes, double?> pick, string what) => Find(pick, what, rows =>
    {
        var pace = new CurePace(rows, Sheet.FactorPer10C, towardsLater: true, double.NegativeInfinity, Sheet.MaxC ?? double.PositiveInfinity);
        var byRoom = CureProgress.ReachedAt(room!, pace, layer.PouredAtHours);
        var printed = layer.PouredAtHours + rows.MaxBy(r => r.C).Hours;
        return new(Math.Max(byRoom, printed), rows.MinBy(r => r.C), printed >= byRoom, null);
    });

    // closing: no floor, and cold below the sheet's range does not keep the window open any longer; with kinetics the earlier of the two
    private Found Closing()
    {
        var found = Find(t => t.NextPourUntilHours, "end of the next-pour window", rows =>
        {
            var pace = new CurePace(rows, Sheet.FactorPer10C, towardsLater: false, Sheet.MinC ?? double.NegativeInfinity, double.PositiveInfinity);
            return new(CureProgress.ReachedAt(room!, pace, layer.PouredAtHours), rows.MinBy(r => r.C), false, null);
        }).OrEarlier(Found.Of(kinetic?.NextPourUntil));
        if (found.AtHours is { } byRoom && byRoom < opens.AtHours)
        {
            Add("window-uncertain", Severity.Warn, "",
                $"In this room the next-pour window of layer {layer.Name} may close before it opens. Pour as soon as it opens, or abrade and clean the surface first.",
                "data sheet; common practice, no source");
        }

        return found.AtHours is null ? found : found with { AtHours = Math.Max(found.AtHours.Value, opens.AtHours ?? found.AtHours.Value) };
    }

    private Found Find(Func<CureTimes, double?> pick, string what, Func<List<(double C, double Hours)>, Found> compute)
    {
        var rows = Sheet.Times.Where(t => pick(t) is not null).Select(t => (t.AtCelsius, pick(t)!.Value)).ToList();
        return rows.Count == 0 && (room is not null || layer.Kinetics is null) ? Found.NotPrinted($"The data sheet prints no {what}.")
            : room is null ? Found.Not("No room temperature is logged. Log the room to start the clock.")
            : compute(rows);
    }

    private void DoubtTheRoom((string What, Found Found)[] ready)
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

        Cold([.. known.Where(k => k.Found is { Modelled: false, Coldest.Hours: > 0 })]);
    }

    private void DoubtTheCold()
    {
        (string What, KineticTime? Time)[] stops = [("gel", kinetic?.Gel), ("demould", kinetic?.Demould), ("full cure", kinetic?.FullCure)];
        if (Array.Find(stops, s => s.Time is { StopsShort: true }) is { What: { } what, Time: { } time })
        {
            Add("cure-stops-short", Severity.Warn, "", $"Layer {layer.Name} does not reach {what} in this room. {time.Reason}", "kinetics: vitrification");
        }
    }

    private void Cold(List<(string What, Found Found)> known)
    {
        if (known.Count == 0)
        {
            return;
        }

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
        : at > untilHours ? Milestone.Unknown(FormattableString.Invariant($"Not reached by the end of the time asked for, {untilHours:0.##} h; in this room it comes at {Math.Ceiling(at * 100) / 100:0.##} h."))
        : new(at, room!.RestsOn(at)) { FromPrintedHours = found.Printed };

    private double Taken(Found found) => found.AtHours!.Value - layer.PouredAtHours;

    private void Add(string code, Severity severity, string field, string message, string source) =>
        findings.Add(new(code, severity, $"layers[{index}]{field}", message, source));
}
