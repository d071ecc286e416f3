using Studio.Engine.Time;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Clock;

/// <summary>A piece's design and what was done of it, put to the engine.</summary>
internal static class PieceTimePlan
{
    /// <summary>The answer, with what it rests on in words.</summary>
    internal static TimeResult Of(TimePiece piece, IEnumerable<Drying> drying, UsualRoom room, IReadOnlyDictionary<int, TimeResin> resins, TimeNow now)
    {
        var layers = Layers(piece);
        if (layers.Count == 0)
        {
            return TimeResult.NotKnown(piece.Stage is Making.Drawn or Making.Casting ? "Its layers are not designed yet." : "No pour of it was logged.") with { RestsOn = room.RestsOn };
        }

        var must = drying.ToList();
        var outcome = TimeCalculation.Run(Input(piece, layers, must, room, resins, now));
        var result = outcome.Ok ? outcome.Value : TimeResult.NotKnown(string.Join(" ", outcome.Errors.Select(e => e.Message)));
        if (piece.PromisedOn is { } promised)
        {
            result = result with { NeededAs = "that you promised" };
            return result with { RestsOn = Rests([Promised(promised, piece.NeededBy, DateOnly.FromDateTime(now.Start))]) };
        }

        return result with { RestsOn = Rests([]) };

        string Rests(string[] first) => string.Join(" ", [.. first, room.RestsOn, .. must.Where(d => d.DoneAt is null).Select(Words)]);
    }

    private static string Promised(DateOnly day, DateOnly? wished, DateOnly today) =>
        $"You promised it for {Say.Day(day, today)}{(wished is { } asked && asked != day ? $"; they asked for {Say.Day(asked, today)}" : "")}.";

    // what is out of its mould has the layers that were poured; before that, the design's, and of each the pour where there is one
    private static List<(TimePour? Pour, TimeDesignLayer? Design)> Layers(TimePiece piece)
    {
        var poured = piece.Pours.GroupBy(p => p.LayerOrder).ToDictionary(g => g.Key, g => g.Last());
        var orders = piece.Stage is Making.Drawn or Making.Casting ? piece.Layers.Select(l => l.Order).Union(poured.Keys) : poured.Keys;
        return [.. orders.Order().Select(o => (poured.GetValueOrDefault(o), piece.Layers.FirstOrDefault(l => l.Order == o)))];
    }

    private static TimeInput Input(TimePiece piece, List<(TimePour? Pour, TimeDesignLayer? Design)> layers, List<Drying> drying, UsualRoom room, IReadOnlyDictionary<int, TimeResin> resins, TimeNow now)
    {
        var own = now.Settings;
        var finished = piece.Stage == Making.Finished;
        return new()
        {
            Start = now.Start,
            Work = Hours(own),
            Preparation = [.. drying.Select(d => new PlannedPreparation($"Dry {d.Name}", d.Rule.DryingDays, 0, ForLayer(layers, d.LayerOrder), d.DoneAt is { } at ? now.Wall(at) : null))],
            Resins = Resins(layers, resins),
            Room = room.Readings,
            Layers = [.. layers.Select(l => l.Pour is { } pour
                ? new PlannedPour(pour.LayerName, Key(l), BenchMinutes.Pour, null, now.Wall(pour.StartedAt))
                : new PlannedPour(l.Design!.Name, Key(l), BenchMinutes.Pour, l.Design.WaitHours))],
            Demould = new(BenchMinutes.Demould, finished || piece.Stage == Making.Demoulded ? Fact(piece.DemouldedAt, now) : null),
            Finishing = [.. Tasks(piece).Select(t => new PlannedWork(t.Name, t.Minutes, AfterFullCure: !finished, Done: finished, DoneAt: finished && piece.FinishedAt is { } at ? now.Wall(at) : null))],
            AbradeMinutes = BenchMinutes.Abrade,
            DeliveryDays = piece.Delivered ? own.DeliveryDays : 0,
            ReserveDays = own.ReserveDays,
            NeededBy = piece.PromisedOn ?? piece.NeededBy,
        };
    }

    private static WorkingHours Hours(StudioSettings own) => new(
        [.. WorkWeek.All.Where(w => own.WorkDays.Contains(w.Key, StringComparer.Ordinal)).Select(w => w.Day)],
        own.WorkFrom.ToTimeSpan(), own.WorkUntil.ToTimeSpan(), own.WorkMinutesPerDay)
    {
        DaysOff = own.DaysOff,
    };

    // done, nobody wrote down when: by now at the latest
    private static DateTime Fact(DateTime? at, TimeNow now) => at is { } known ? now.Wall(known) : now.Start;

    private static int? ForLayer(List<(TimePour? Pour, TimeDesignLayer? Design)> layers, int? order) =>
        layers.FindIndex(l => l.Design?.Order == order) is >= 0 and var at && order is not null ? at + 1 : null;

    private static Dictionary<string, TimeResin> Resins(List<(TimePour? Pour, TimeDesignLayer? Design)> layers, IReadOnlyDictionary<int, TimeResin> resins) =>
        layers.DistinctBy(Key, StringComparer.Ordinal).ToDictionary(Key, l => l.Pour is { } pour ? new TimeResin(pour.Sheet, pour.Kinetics) { Likely = pour.Likely, Heat = pour.Heat } : resins[l.Design!.ResinId], StringComparer.Ordinal);

    // a pour keeps the sheet that it was poured by; what is still to be poured goes by the resin of today
    private static string Key((TimePour? Pour, TimeDesignLayer? Design) layer) =>
        layer.Pour is { } pour ? FormattableString.Invariant($"pour {pour.Id}") : FormattableString.Invariant($"resin {layer.Design!.ResinId}");

    private static IReadOnlyList<PieceTask> Tasks(TimePiece piece) =>
        piece.Tasks.Any(t => t.Minutes > 0) ? [.. piece.Tasks.Where(t => t.Minutes > 0)] : [new("Finish", BenchMinutes.Finish)];

    private static string Words(Drying drying) =>
        FormattableString.Invariant($"{drying.Name}: {drying.Rule.DryingDays:0.#} day{(drying.Rule.DryingDays.Equals(1) ? "" : "s")} of drying ({drying.Rule.DryingSource}).");
}
