namespace Studio.Engine.Cure;

/// <summary>What is doubtful about a layer: its place in the order of pours, the room it stands in, the cold.</summary>
internal sealed partial class LayerClock
{
    private const double ColdWarnsFrom = 1.5;

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
                $"Layer {layer.Name} was poured before layer {under} under it was ready for it. The layers may mix, and their heat adds up: keep watch, and look at the boundary once it has gelled.", "the latest of data sheet, kinetics and heat");
        }
        else if (layer.PouredAtHours > below?.closes.AtHours + CureRounding.SlackHours)
        {
            Add("poured-after-window", Severity.Warn, at,
                $"Layer {layer.Name} was poured after the next-pour window of layer {under} had closed. Unless that surface was abraded and cleaned, the two may part: look along the boundary before you demould.", "data sheet");
        }
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

    private double Taken(Found found) => found.AtHours!.Value - layer.PouredAtHours;
}
