using System.Text.Json;
using Studio.Clock;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Resins;

namespace Studio.Heat;

/// <summary>A pour as the heat equation takes it: what is in the mould already, the layer to come, the room as it was.</summary>
/// <param name="Plan">The layer to be poured is its last.</param>
/// <param name="StartedAt">When it is poured [UTC].</param>
/// <param name="RoomC">The room then [°C].</param>
/// <param name="RestsOn">Whole sentences.</param>
internal sealed record HeatQuestion(HeatPlan Plan, DateTime StartedAt, double RoomC, string RestsOn)
{
    // a peak within the first minutes is that of the pour's own warmth
    private const double LaterHours = 0.25;
    private const int Slices = 200;

    /// <summary>Changes with everything that the numbers depend on.</summary>
    internal string Key { get; } = JsonSerializer.Serialize(Plan.Input with { Mould = Plan.Input.Mould with { Cavity = null } }) + Areas(Plan) + JsonSerializer.Serialize(Plan.Advice.Resins);

    internal HeatInput Input { get; } = Plan.Input with { PictureHours = [] }; // no picture is drawn here

    // of a mesh, whose corners would fill megabytes, the heat takes the areas alone
    private static string Areas(HeatPlan plan) => plan.Input.Mould.Cavity is null ? ""
        : JsonSerializer.Serialize(Enumerable.Range(1, Slices).Select(k => plan.Advice.Mould.VolumeMl(plan.Advice.Mould.HeightMm * k / Slices)).Prepend(plan.Advice.Mould.HeightMm).Prepend(plan.Taken.Count));

    private HeatPlanLayer Top => Plan.Layers[^1];

    private string Name => Top.Name;

    /// <summary>What is said of an outcome: of the layer that is poured, and of what lies under it and becomes hottest once it is covered.</summary>
    internal PourHeat Tell(ForecastOutcome outcome)
    {
        var layer = outcome.Layers[^1];
        var watched = Enumerable.Range(0, outcome.Layers.Count).Reverse().Where(i => i == Plan.Layers.Count - 1 || PeaksCovered(outcome, i)).Select(i => new Watched(Plan.Layers[i], outcome.Layers[i])).ToList();
        var told = new PourHeat
        {
            StartedAt = StartedAt,
            RestsOn = $"Model: {outcome.Model}. {RestsOn}",
            RunAway = watched.Exists(w => w.Told.PeakC > HeatLimit.RunAwayC),
            Question = this,
            Outcome = outcome,
        };
        if (watched.FindAll(w => w.Told.PeakC > HeatLimit.RunAwayC) is { Count: > 0 } surely)
        {
            // heat crosses the face between them, so both are named
            var words = $"{string.Join(", ", surely.Select(Said))}: run-away, do not pour. Poured like this it would heat itself faster than it can cool, and may smoke, crack and ruin the mould. Change the layer, the resin or the room first.";
            return told with { Findings = [new("run-away", Severity.Stop, "layer", words, "heat equation")] };
        }

        if (watched.Where(w => w.Told.RunAway).MaxBy(w => w.Told.PeakHighC) is { } may)
        {
            // no figure is kept or shown where the upper bound lies there; what a sheet alone leaves open, a reason may pass
            var words = $"{Said(may)} may run away: by what is known of {may.Layer.Resin.Name} nobody can rule it out. Pour it thinner or cooler, or log a thermometer in a test pour of this depth first.";
            return told with { Findings = [new("may-run-away", Severity.Stop, "layer", words, "heat equation")] };
        }

        var over = watched.SelectMany(w => w.Layer.Limits.Select(l => (Watched: w, Limit: l))).Where(o => o.Limit.OverK(o.Watched.Told) > 0).Cast<(Watched Watched, HeatLimit Limit)?>().MaxBy(o => o!.Value.Limit.OverK(o.Value.Watched.Told));
        return told with { Foretold = Foretold(layer, outcome.Model), Findings = over is { } hot ? [Overheats(hot.Limit, hot.Watched)] : [], Offers = over is null ? [] : null };
    }

    // what was hottest before this pour is over: no stop of this one mends it
    private bool PeaksCovered(ForecastOutcome outcome, int under) =>
        Input.Layers[under].PouredAtHours + outcome.Layers[under].PeakAfterHours > Input.Layers[^1].PouredAtHours + LaterHours;

    private string Said(Watched w) => w.Layer == Top ? Name : $"{w.Layer.Name} under {Name}";

    // what most likely breaks a limit is stopped; what only may, is warned of: a sheet alone leaves wide intervals, and a stop that always stops is soon not read
    private Finding Overheats(HeatLimit limit, Watched w)
    {
        var (highC, where) = limit.AtMouldFace ? (w.Told.FaceHighC, " where it touches the mould") : (w.Told.PeakHighC, "");
        var surely = w.Layer.Limits.Any(l => (l.AtMouldFace ? w.Told.FaceC : w.Told.PeakC) > l.Celsius);
        return new(surely ? "would-overheat" : "may-overheat", surely ? Severity.Stop : Severity.Warn, "layer",
            FormattableString.Invariant($"Poured now, {Said(w)} may reach {highC:0} °C{where}; for {limit.Of} the limit is {limit.Celsius:0} °C."), limit.Source);
    }

    private sealed record Watched(HeatPlanLayer Layer, ForecastLayer Told);

    private PourForetold Foretold(ForecastLayer layer, string model) => new()
    {
        KnownCureId = Top.Known.Row?.Id ?? 0,
        Model = model,
        RoomC = RoomC,
        PeakC = layer.PeakC,
        PeakLowC = layer.PeakLowC,
        PeakHighC = layer.PeakHighC,
        PeakAfterHours = layer.PeakAfterHours,
        FaceC = layer.FaceC,
        GelAfterHours = layer.LastGelAfterHours,
        GelLateHours = layer.Intervals is { } wide ? wide.LastGelAfterHours?.To : layer.LastGelAfterHours,
        FilmLateHours = FilmHours(),
        Curve = [.. Thinned(layer.Curve).Select(m => new ForetoldMoment(Math.Round(m.AfterHours, 4), Math.Round(m.HottestC, 2)))],
    };

    // of the room that the run was made for; the clock knows nothing of a cold mix, so what it compares with does not either
    private double? FilmHours()
    {
        var (room, at) = (new RoomLog(Input.Room), Input.Layers[^1].PouredAtHours);
        return KnownCures.Likely(Top.Known.State)?.GelHours(room, at, null, at + KineticClock.HorizonHours) - at;
    }

    // a curve is read by eye: a moment where it has moved by half a kelvin, and at least every two hours
    private static IEnumerable<HeatMoment> Thinned(IReadOnlyList<HeatMoment> curve)
    {
        HeatMoment? last = null;
        foreach (var moment in curve)
        {
            if (last is null || ReferenceEquals(moment, curve[^1]) || Math.Abs(moment.HottestC - last.HottestC) >= 0.5 || moment.AfterHours - last.AfterHours >= 2)
            {
                yield return last = moment;
            }
        }
    }
}
