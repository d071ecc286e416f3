using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>
/// A piece's heat with an honest interval: one run of the most probable resins, and two dozen of resins that would have printed the same sheets or shown the same logs.
/// </summary>
public static class HeatForecast
{
    /// <summary>Grid of the most probable run.</summary>
    public static readonly HeatFineness Fine = new();

    // the contract's: what is stored, lost and released must agree
    private const double MostMiss = 1e-6;

    // a third by theory; half as much again, for a grid is never as regular and the steps err as well
    private const double Left = 0.5;

    // where the coarse run did not gel in time
    private const double UnknownShare = 0.02;

    // differences between members matter, not their level: the run on this grid is set off against the best one's
    private static readonly HeatFineness Coarse = new(5, 6, 1, 2);

    /// <summary>Runs a piece.</summary>
    /// <param name="input">Layers of a fitted resin take their material from its state, whatever kinetics stand here.</param>
    /// <param name="mould">Made from the input's description.</param>
    /// <param name="perLayer">For each layer what is known of its resin.</param>
    /// <param name="preview">A body of revolution in place of a mould with sides: fast, without its cold corners.</param>
    /// <param name="stop">Looked at before each step of each run.</param>
    /// <param name="threads">How many runs at once.</param>
    /// <exception cref="InvalidOperationException">The equations cannot be solved; no answer is given then.</exception>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ForecastOutcome Run(HeatInput input, MouldBody mould, IReadOnlyList<ForecastResin> perLayer, bool preview, CancellationToken stop, int threads = 1) =>
        Run(input, mould, perLayer, new ForecastGrid(preview, Fine), stop, threads);

    /// <summary>As the other, on a grid of the caller's for the most probable run.</summary>
    internal static ForecastOutcome Run(HeatInput input, MouldBody mould, IReadOnlyList<ForecastResin> perLayer, ForecastGrid grid, CancellationToken stop, int threads = 1)
    {
        var ensemble = new Ensemble(input, perLayer);
        var round = HeatModel.Sides(input.Mould) == 0;
        var best = Late(ensemble.Best(), mould, grid, Balanced(HeatRun.Run(ensemble.Best(), mould, grid.Fineness, grid.Preview, stop)), stop);
        var words = RoundBody.StandsFor(mould) ? "body of revolution with the mould's area at every height" : round ? "body of revolution" : grid.Preview ? "body of revolution in place of the mould" : "three dimensions by symmetry";
        if (!ensemble.Drawn)
        {
            return new(RoundBody.Widened([.. best.Layers.Select(l => new ForecastLayer { Best = l })], input, mould), best, words);
        }

        var runs = Members(ensemble, mould, threads, stop);
        var middle = runs[^1];
        var layers = best.Layers.Select((l, i) => Layer(l, middle.Layers[i], [.. runs.SkipLast(1).Select(r => r.Layers[i])]));
        return new(RoundBody.Widened([.. layers], input, mould), best, $"{words}; interval from {Ensemble.Count} resins on a coarse body of revolution, moved to the best run");
    }

    // Last gel and least conversion stand in the coldest corner, which a coarse grid tells too warm. A run on a grid half as fine tells by how much: of second order, a third of
    // the difference is left. It is added on the late side, whichever way it went.
    private static HeatOutcome Late(HeatInput input, MouldBody mould, ForecastGrid grid, HeatOutcome fine, CancellationToken stop)
    {
        var f = grid.Fineness;
        var half = HeatRun.Run(input with { PictureHours = [], ProbeMm = null }, mould, new HeatFineness(Math.Max(2, f.Across / 2), Math.Max(3, f.Through / 2), Math.Max(1, f.InWall / 2), f.Time), grid.Preview, stop);
        return fine with { Layers = [.. fine.Layers.Zip(half.Layers, Later)] };
    }

    private static LayerHeat Later(LayerHeat fine, LayerHeat half)
    {
        var missing = half.LastGelAfterHours is { } coarse && fine.LastGelAfterHours is { } gel ? Math.Abs(gel - coarse) * Left : (fine.LastGelAfterHours ?? 0) * UnknownShare;
        return fine with
        {
            LastGelAfterHours = fine.LastGelAfterHours + missing,
            LeastConversion = Math.Max(0, fine.LeastConversion - (Math.Abs(fine.LeastConversion - half.LeastConversion) * Left)),
        };
    }

    // the most probable resins come last, on the members' grid
    private static HeatOutcome[] Members(Ensemble ensemble, MouldBody mould, int threads, CancellationToken stop)
    {
        var runs = new HeatOutcome[Ensemble.Count + 1];
        try
        {
            Parallel.For(0, runs.Length, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = Math.Max(1, threads) }, i =>
                runs[i] = RunOne(i < Ensemble.Count ? ensemble.Member(i) : ensemble.Best(), mould, stop));
        }
        catch (AggregateException many) when (many.InnerException is InvalidOperationException or OperationCanceledException)
        {
            throw many.InnerException is OperationCanceledException ? new OperationCanceledException(stop) : new InvalidOperationException(many.InnerException.Message, many);
        }

        return runs;
    }

    /// <summary>One run on the members' grid.</summary>
    internal static HeatOutcome RunOne(HeatInput input, MouldBody mould, CancellationToken stop) =>
        Balanced(HeatRun.Run(input with { PictureHours = [], ProbeMm = null }, mould, Coarse, preview: true, stop));

    private static HeatOutcome Balanced(HeatOutcome run) => Math.Abs(run.EnergyMiss) <= MostMiss ? run
        : throw new InvalidOperationException(FormattableString.Invariant($"The heat equation could not be solved: its energy balance is off by {run.EnergyMiss:0.0e+0}."));

    private static ForecastLayer Layer(LayerHeat best, LayerHeat middle, IReadOnlyList<LayerHeat> members)
    {
        var intervals = Interval(best, middle, members);
        var upper = intervals.PeakC.To - best.PeakCelsius + middle.PeakCelsius;
        return new() { Best = best, Intervals = intervals, HottestMember = Enumerable.Range(0, members.Count).MinBy(i => Math.Abs(members[i].PeakCelsius - upper)) };
    }

    private static ForecastIntervals Interval(LayerHeat best, LayerHeat middle, IReadOnlyList<LayerHeat> members)
    {
        return new(
            Moved(l => l.PeakCelsius), Times(l => l.PeakAfterHours)!, Moved(l => l.MouldFacePeakCelsius), Times(l => l.FirstGelAfterHours), Times(l => l.LastGelAfterHours),
            Share(l => l.LeastConversion), Share(l => l.MeanConversion));

        FitInterval Moved(Func<LayerHeat, double> of) => Holding(members.Select(m => of(m) + of(best) - of(middle)), of(best));

        FitInterval Share(Func<LayerHeat, double> of)
        {
            var moved = Moved(of);
            return new(Math.Clamp(moved.From, 0, 1), Math.Clamp(moved.To, 0, 1));
        }

        // a time moves by its share
        FitInterval? Times(Func<LayerHeat, double?> of) => of(best) is not { } at || members.Any(m => of(m) is null) ? null
            : Holding(members.Select(m => of(m)!.Value * (of(middle) is > 0 and { } own ? at / own : 1)), at);
    }

    private static FitInterval Holding(IEnumerable<double> values, double best)
    {
        var interval = FitInterval.Of(values);
        return new(Math.Min(interval.From, best), Math.Max(interval.To, best));
    }
}

/// <summary>On which grid the most probable run is made.</summary>
internal sealed record ForecastGrid(bool Preview, HeatFineness Fineness);
