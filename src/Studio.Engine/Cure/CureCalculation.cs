namespace Studio.Engine.Cure;

/// <summary>When each layer may be poured on, demoulded and handed over: the contract's <c>calc cure</c>.</summary>
public static class CureCalculation
{
    /// <summary>Works out every layer.</summary>
    /// <returns>The result with its findings, or every input error at once.</returns>
    public static Outcome<CureResult> Run(CureInput input) => Run(input, new InputErrors());

    /// <summary>As <see cref="Run(CureInput)"/>, after reading found errors of its own.</summary>
    /// <param name="models">Fits and runs of heat; without them printed hours and given kinetics alone count.</param>
    internal static Outcome<CureResult> Run(CureInput input, InputErrors errors, ICureModels? models = null)
    {
        errors.Settle();
        CureInputCheck.Check(input, errors);
        return errors.None ? Outcome<CureResult>.Of(Result(Fitted(input, models), models)) : Outcome<CureResult>.Refused(errors.All);
    }

    // a resin that no layer uses is checked but not fitted
    private static CureInput Fitted(CureInput input, ICureModels? models) => models is null ? input : input with
    {
        Resins = input.Resins.ToDictionary(r => r.Key, r => input.Layers.Any(l => l.Resin == r.Key) ? r.Value with { Likely = models.Likely(r.Value) } : r.Value, StringComparer.Ordinal),
    };

    private static CureResult Result(CureInput input, ICureModels? models)
    {
        var log = new RoomLog(input.Room);
        var pours = new Pours(input, log, models).All();
        var poured = pours.Where(p => p is not null).Select(p => p!).ToList();
        var piece = CureClock.Run(poured, log, input.UntilHours);
        var results = new List<CureLayerResult>();
        for (var (i, next) = (0, 0); i < input.Layers.Count; i++)
        {
            results.Add(pours[i] is null ? NotPoured(input.Layers[i]) : Layer(poured[next].PouredAtHours, piece.Layers[next++], input.UntilHours));
        }

        var waiting = results.Find(r => r.PouredAtHours is null);
        return new(results, waiting is null ? piece.Demould : Milestone.Unknown($"Layer {waiting.Cure.Name}: {waiting.Cure.Demould.Reason}"), [.. log.Findings, .. Doubts(input), .. models is null ? [] : Unbounded(input)]);
    }

    private static CureLayerResult Layer(double pouredAtHours, LayerCure cure, double untilHours)
    {
        var reason = cure.Kinetic is null ? "Without kinetics, or without a room, there is no conversion to tell."
            : untilHours < pouredAtHours ? FormattableString.Invariant($"It is poured at {pouredAtHours:0.##} h, after the time asked for.")
            : null;
        return new(pouredAtHours, cure, reason is null ? cure.Kinetic!.At(untilHours) : null, reason, reason is null ? cure.Kinetic!.Curve(untilHours, Points(untilHours - pouredAtHours)) : []);
    }

    // every quarter of an hour, or 120 even steps where that is more
    private static int Points(double hours) => 1 + Math.Clamp((int)Math.Min(1e6, Math.Ceiling(hours * 4)), 1, 120);

    private static CureLayerResult NotPoured(CureLayer layer)
    {
        var never = Milestone.Unknown($"It waits for the gel of layer {layer.AfterGelOf}, for which there is no time.");
        return new(null, new LayerCure { Name = layer.Name, Gel = never, NextPourFrom = never, NextPourUntil = never, Demould = never, FullCure = never, Findings = [] }, null, never.Reason, []);
    }

    private static IEnumerable<Finding> Doubts(CureInput input) =>
        input.Resins.SelectMany(r => DataSheetCheck.Doubts(r.Value, $"resins.{r.Key}"));

    // what fits nothing has only its cup's gel, and nothing says how much later a layer's is
    private static IEnumerable<Finding> Unbounded(CureInput input) =>
        from resin in input.Resins
        where resin.Value is { Kinetics: null, Likely: null, DataSheet: { } sheet } && (sheet.GelMinutes ?? sheet.NextPourFromHours) is not null && input.Layers.Any(l => l.Resin == resin.Key)
        select new Finding("gel-without-bound", Severity.Warn, $"resins.{resin.Key}.dataSheet",
            "No kinetics can be fitted to this sheet, so nothing says how much later than printed a layer gels. Touch it before you pour on it, and look for a figure that was mistyped.", "data sheet");

    // finds when each layer was poured; null where the layer it waits for does not gel
    private sealed class Pours(CureInput input, RoomLog room, ICureModels? models)
    {
        private static readonly CureSheet Silent = new() { Times = [] };

        private readonly Dictionary<int, PouredLayer?> found = [];
        private readonly double?[] pouredAt = new double?[input.Layers.Count];
        private readonly PourOrder order = new(input.Layers);

        // those whose time is given lie under those that wait for them
        internal List<PouredLayer?> All()
        {
            for (var i = 0; i < pouredAt.Length; i++)
            {
                pouredAt[i] = input.Layers[i].PouredAtHours;
            }

            return [.. input.Layers.Select((_, i) => Of(i))];
        }

        private PouredLayer? Of(int index)
        {
            if (!found.TryGetValue(index, out var pour))
            {
                var layer = input.Layers[index];
                var resin = input.Resins[layer.Resin];
                var at = layer.PouredAtHours ?? Gel(order.WaitsFor(index));
                pouredAt[index] = at;
                found[index] = pour = at is not { } hours ? null : new(layer.Name, resin.DataSheet?.Times ?? Silent, hours)
                {
                    Kinetics = resin.Kinetics,
                    Likely = resin.Likely,
                    PouredCelsius = layer.PouredCelsius,
                    Heat = models?.Heat(input, index, pouredAt),
                };
            }

            return pour;
        }

        private double? Gel(int index) =>
            Of(index) is { } below ? CureClock.Run([below], room, double.PositiveInfinity).Layers[0].Gel.AtHours : null;
    }
}
