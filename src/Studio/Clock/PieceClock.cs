using Studio.Climate;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>
/// Turns a piece's pours and the room's readings into what every page says about it. The one place where hours become times of day:
/// ready times are rounded up to the minute and the window's end down, so nothing is ever called ready before the engine says so.
/// </summary>
public static class PieceClock
{
    /// <summary>What the clock says at a moment.</summary>
    /// <param name="input">Pours, readings and the design.</param>
    /// <param name="now">The moment [UTC].</param>
    /// <param name="zone">Where the studio is, for the words.</param>
    public static PieceTimes Of(ClockInput input, DateTime now, TimeZoneInfo zone)
    {
        var pours = input.Pours.OrderBy(p => p.LayerOrder).ThenBy(p => p.StartedAt).ToList();
        var words = new ClockWords(now, zone);
        if (pours.Count == 0)
        {
            var nothing = new ClockTime(null, "Nothing has been poured yet.");
            return new([], new NextActs(input, [], nothing, nothing, words).Find(), nothing, nothing, []);
        }

        var scale = input.Room.Scale;
        var cure = CureClock.Run([.. pours.Select(p => new PouredLayer(p.LayerName, p.Sheet, scale.Hours(p.StartedAt)) { Kinetics = p.Kinetics, Likely = p.Likely, Heat = p.Heat })], input.Room.Log(now), double.PositiveInfinity);
        var times = new ClockTimes(scale, words);
        var layers = pours.Zip(cure.Layers, (p, c) => times.Layer(p, c)).ToList();
        var poured = Slowest(layers);
        var (demould, full) = StillToPour(input) is { } open ? (new(null, open), new(null, open)) : (times.Ready(cure.Demould), poured);
        var next = new NextActs(input, layers, demould, full, words) { PrintedDemouldAt = PrintedDemould(pours) }.Find();
        return new(layers, next, demould, full, [.. Stale(input, layers, poured, words), .. Later(cure, scale, words), .. cure.Findings, .. cure.Layers.SelectMany(l => l.Findings)]);
    }

    private static ClockTime Slowest(List<LayerTimes> layers) =>
        layers.FirstOrDefault(l => l.FullCure.At is null)?.FullCure ?? layers.MaxBy(l => l.FullCure.At)!.FullCure;

    // a piece with a layer to come has no day yet, however firm what lies in the mould is; what is out of its mould has the layers that it has
    private static string? StillToPour(ClockInput input)
    {
        var open = input.Stage is Making.Drawn or Making.Casting ? input.Layers.Count(l => input.Pours.All(p => p.LayerOrder != l.Order)) : 0;
        return open == 0 ? null : $"Not before the last layer is poured: {open} of {input.Layers.Count} {(open == 1 ? "is" : "are")} still to pour.";
    }

    // what somebody who goes by the sheet's hours alone would believe
    private static DateTime? PrintedDemould(List<ClockPour> pours)
    {
        var printed = pours.Select(p => p.Sheet.Times.Where(t => t.DemouldHours is not null).Select(t => t.DemouldHours).Max() is { } hours ? p.StartedAt.AddHours(hours) : (DateTime?)null).ToList();
        return printed.Contains(null) ? null : printed.Max();
    }

    // who goes by the sheet's hours would pour on a liquid: said for as long as that is so
    private static IEnumerable<Finding> Later(PieceCure cure, HourScale scale, ClockWords words) =>
        from layer in cure.Layers
        let gel = layer.Gel
        where gel is { AtHours: not null, SheetAtHours: not null, By: DecidedBy.Fit or DecidedBy.Heat } && scale.At(gel.AtHours.Value) > words.Now
        let at = CureRounding.UpToMinute(scale.At(gel.AtHours!.Value))
        select new Finding("gel-later-than-sheet", Severity.Note, "",
            $"By its sheet alone {layer.Name} would have gelled {words.When(CureRounding.UpToMinute(scale.At(gel.SheetAtHours!.Value)))}. A sheet is measured in a cup, as a rule, which warms itself; this layer may be liquid until {words.When(at)}.",
            gel.By is DecidedBy.Heat ? "heat equation" : "fit of the resin");

    // only while a time still to come hangs on the room
    private static IEnumerable<Finding> Stale(ClockInput input, List<LayerTimes> layers, ClockTime full, ClockWords words)
    {
        var last = input.Room.LastAt(words.Now);
        if (input.Room.StandsInFor.Length > 0 && !full.Reached(words.Now))
        {
            yield return new("room-of-another-place", Severity.Warn, "room", input.Room.StandsInFor, "our rule");
        }

        if (last is not null && !full.Reached(words.Now) && layers.Count > 0 && words.Now - last.At > TimeSpan.FromHours(RoomBook.StaleHours))
        {
            yield return new("room-stale", Severity.Warn, "room",
                $"The room was last read {words.When(last.At)}, {words.Ago(last.At)} ago. The times below hold only if it stayed at {words.Celsius(last.Celsius)} since: log it again.",
                "our rule: a reading says little after 12 hours");
        }
    }
}
