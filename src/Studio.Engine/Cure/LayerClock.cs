namespace Studio.Engine.Cure;

/// <summary>The clock of one layer.</summary>
internal sealed partial class LayerClock
{
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
        if (kinetic is not null && opens.AtHours is null)
        {
            return Found.Not("The next-pour window does not open in this room.");
        }

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

    private Milestone Tell(Found found) =>
        found.AtHours is not { } at ? Milestone.Unknown(found.Reason!)
        : at > untilHours ? Milestone.Unknown(FormattableString.Invariant($"Not reached by the end of the time asked for, {untilHours:0.##} h; in this room it comes at {Math.Ceiling(at * 100) / 100:0.##} h."))
        : new(at, room!.RestsOn(at)) { FromPrintedHours = found.Printed, FromKinetics = found.Modelled, SheetAtHours = found.SheetAtHours };

    private void Add(string code, Severity severity, string field, string message, string source) =>
        findings.Add(new(code, severity, $"layers[{index}]{field}", message, source));
}
