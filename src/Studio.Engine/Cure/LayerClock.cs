namespace Studio.Engine.Cure;

/// <summary>The clock of one layer.</summary>
internal sealed partial class LayerClock
{
    // how much longer the film takes than in the room of heat's run, from where on the run tells nothing and the film alone counts
    private const double OtherRoom = 1.2;

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
        var gelled = Gelled();
        gel = Ready(t => t.GelHours, "gel time").OrLater(gelled);
        opens = Ready(t => t.NextPourFromHours, "time for the next pour").OrLater(gelled);
        closes = Closing();
        demould = NoSooner(Ready(t => t.DemouldHours, "demould time").OrLater(Found.Of(kinetic?.Demould)), gelled);
        full = NoSooner(Ready(t => t.FullCureHours, "full-cure time").OrLater(Found.Of(kinetic?.FullCure)), gelled);
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

    // the one gel of clock, heat and plan: the layer's own run where there is one, else a thin layer's as warm as the room, of the slow ones of the resins that it may be
    private Found? Gelled()
    {
        if (room is null || (layer.Likely is null && layer.Kinetics is null && layer.Heat is null))
        {
            return null;
        }

        var latest = Math.Max(layer.PouredAtHours, room.LastHours) + KineticClock.HorizonHours;
        var film = Film(latest);
        if (layer.Heat is { } heat && film is not { AtHours: null })
        {
            // a room that turned out colder than that of the run makes it later in proportion and more: the colder it is the less the layer warms itself, until nothing but the film is sure
            var colder = film?.AtHours is { } now && heat.FilmAfterHours > 0 ? Math.Max(1, (now - layer.PouredAtHours) / heat.FilmAfterHours) : 1;
            var scaled = layer.PouredAtHours + (heat.LastGelAfterHours * colder);
            var at = film?.AtHours is { } slow && slow > scaled ? scaled + ((slow - scaled) * Math.Clamp((colder - 1) / (OtherRoom - 1), 0, 1)) : scaled;
            return at <= latest ? new(at, default, false, null) { By = DecidedBy.Heat } : film;
        }

        return film;
    }

    private Found? Film(double latest)
    {
        var likely = layer.Likely ?? (layer is { Kinetics: { } own, PouredCelsius: not null } ? new([own]) : null);
        if (likely is null)
        {
            return Found.Of(kinetic?.Gel);
        }

        var at = likely.GelHours(room!, layer.PouredAtHours, layer.PouredCelsius, latest);
        var by = layer.Likely is null ? DecidedBy.Kinetics : DecidedBy.Fit;
        var film = at is { } hours ? new Found(hours, default, false, null) { By = by }
            : Found.Not(kinetic?.Gel.Reason ?? FormattableString.Invariant($"In a room that stays at {room!.LastC:0.#} °C it is not sure to gel within {KineticClock.HorizonHours / 24:0} days. Warm the room.")) with { By = by };
        return kinetic is null ? film : Found.Of(kinetic.Gel)!.OrLater(film);
    }

    // a gel alone is no time to demould, but none comes before it
    private static Found NoSooner(Found found, Found? gelled) => found.Silent ? found : found.OrLater(gelled);

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
        if ((kinetic is not null || layer.Likely is not null) && room is not null && opens.AtHours is null)
        {
            return Found.Not("The next-pour window does not open in this room.");
        }

        var found = Find(t => t.NextPourUntilHours, "end of the next-pour window", rows =>
        {
            var pace = new CurePace(rows, Sheet.FactorPer10C, towardsLater: false, Sheet.MinC ?? double.NegativeInfinity, double.PositiveInfinity);
            return new(CureProgress.ReachedAt(room!, pace, layer.PouredAtHours), rows.MinBy(r => r.C), false, null);
        }).OrEarlier(Found.Of(kinetic?.NextPourUntil)).OrEarlier(Quick());
        if (found.AtHours is { } byRoom && byRoom < opens.AtHours)
        {
            Add("window-uncertain", Severity.Warn, "",
                $"In this room the next-pour window of layer {layer.Name} may close before it opens. Pour as soon as it opens, or abrade and clean the surface first.",
                "data sheet; common practice, no source");
        }

        return found.AtHours is null ? found : found with { AtHours = Math.Max(found.AtHours.Value, opens.AtHours ?? found.AtHours.Value) };
    }

    private Found? Quick() => layer.Likely is { } likely && room is not null && Sheet.Times.Any(t => t.NextPourUntilHours is not null)
        ? new(likely.ClosesHours(room, layer.PouredAtHours, Sheet, Math.Max(layer.PouredAtHours, room.LastHours) + KineticClock.HorizonHours), default, false, "By the calculation the window does not close in this room. Go by the data sheet.") { By = DecidedBy.Fit }
        : null;

    private Found Find(Func<CureTimes, double?> pick, string what, Func<List<(double C, double Hours)>, Found> compute)
    {
        var rows = Sheet.Times.Where(t => pick(t) is not null).Select(t => (t.AtCelsius, pick(t)!.Value)).ToList();
        return rows.Count == 0 && (room is not null || (layer.Kinetics is null && layer.Likely is null)) ? Found.NotPrinted($"The data sheet prints no {what}.")
            : room is null ? Found.Not("No room temperature is logged. Log the room to start the clock.")
            : compute(rows);
    }

    private Milestone Tell(Found found) =>
        found.AtHours is not { } at ? Milestone.Unknown(found.Reason!)
        : at > untilHours ? Milestone.Unknown(FormattableString.Invariant($"Not reached by the end of the time asked for, {untilHours:0.##} h; in this room it comes at {Math.Ceiling(at * 100) / 100:0.##} h."))
        : new(at, room!.RestsOn(at)) { FromPrintedHours = found.Printed, By = found.By, SheetAtHours = found.SheetAtHours };

    private void Add(string code, Severity severity, string field, string message, string source) =>
        findings.Add(new(code, severity, $"layers[{index}]{field}", message, source));
}
