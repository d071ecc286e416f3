namespace Studio.Engine.Forecast;

/// <summary>What helps a layer that would become too hot. Every figure comes from a run of the piece that the advice leads to, and none of it goes beyond a data sheet.</summary>
public static class HeatAdvice
{
    /// <summary>Works out the advice; some seconds for a layer, so let it be stopped.</summary>
    /// <param name="input">The piece.</param>
    /// <param name="done">Told the share that is done [0 to 1].</param>
    /// <param name="stop">Looked at before each step of each run.</param>
    /// <exception cref="InvalidOperationException">The equations cannot be solved; no advice is given then.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static AdviceOutcome Of(AdviceInput input, IProgress<double>? done, CancellationToken stop)
    {
        var count = input.Piece.Layers.Count;
        if (input.Limits.Count != count || input.Resins.Count != count)
        {
            throw new ArgumentException($"There are {count} layers, limits for {input.Limits.Count} and resins for {input.Resins.Count}.", nameof(input));
        }

        var told = input.Told ?? HeatForecast.Run(input.Piece, input.Mould, input.Resins, preview: true, stop);
        var hot = Enumerable.Range(0, count).Skip(input.FirstFree).Where(i => Broken(told.Layers[i], input.Limits[i]) is not null).ToList();
        var layers = new List<LayerAdvice>();
        for (var n = 0; n < hot.Count; n++)
        {
            layers.Add(Layer(input with { Told = told }, hot[n], told.Layers[hot[n]], share => done?.Report((n + share) / hot.Count), stop));
        }

        done?.Report(1);
        return new([.. layers.Select(l => Finding(l, Name(input, l.Layer)))], layers);
    }

    private static LayerAdvice Layer(AdviceInput input, int layer, ForecastLayer told, Action<double> done, CancellationToken stop)
    {
        var limit = Broken(told, input.Limits[layer])!;
        var kinds = new LayerOffers(new AdviceTrial(input, layer, stop), new HeatSteps(), input.Others).All().ToList();
        var offers = new List<AdviceOffer>();
        for (var k = 0; k < kinds.Count; k++)
        {
            done((k + 0.5) / (kinds.Count + 1));
            offers.AddRange(kinds[k]());
        }

        return new(layer, limit, limit.AtMouldFace ? told.FaceHighC : told.PeakHighC, told.RunAway, [.. offers.OrderBy(o => !o.Suffices)]);
    }

    // of all the limits the one that is broken by most
    private static HeatLimit? Broken(ForecastLayer layer, IReadOnlyList<HeatLimit> limits) =>
        limits.Append(new HeatLimit("the resin", HeatLimit.RunAwayC, HeatLimit.Resin.Source)).Where(l => l.OverK(layer) > 0).MaxBy(l => l.OverK(layer));

    private static string Name(AdviceInput input, int layer) => layer < input.Names.Count ? input.Names[layer] : FormattableString.Invariant($"Layer {layer + 1}");

    private static Finding Finding(LayerAdvice advice, string name)
    {
        var what = advice.RunAway ? $"{name}: run-away, do not pour."
            : advice.Limit.AtMouldFace ? FormattableString.Invariant($"{name} may reach {advice.HighC:0} °C where it touches the mould; for {advice.Limit.Of} the limit is {advice.Limit.Celsius:0} °C.")
            : FormattableString.Invariant($"{name} may reach {advice.HighC:0} °C; for {advice.Limit.Of} the limit is {advice.Limit.Celsius:0} °C.");
        var helps = advice.Offers.Any(o => o.Suffices) ? "" : " Nothing that was tried keeps it below its limit by itself: change more than one thing, or ask the resin's maker.";
        var code = advice.RunAway ? "runaway" : advice.Limit.AtMouldFace ? "mould-face-hot" : "overheats";
        return new(code, Severity.Stop, FormattableString.Invariant($"layers[{advice.Layer}]"), string.Join(' ', advice.Offers.Select(o => o.Words).Prepend(what)) + helps, advice.Limit.Source);
    }
}
