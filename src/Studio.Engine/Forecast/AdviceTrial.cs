using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>Upper bounds of a layer [°C].</summary>
/// <param name="PeakC">Of its hottest place.</param>
/// <param name="FaceC">Where it touches the mould.</param>
internal sealed record HighBound(double PeakC, double FaceC)
{
    /// <summary>The drawn resin that is nearest to it.</summary>
    public int Member { get; init; }

    public double OverK(HeatLimit limit) => (limit.AtMouldFace ? FaceC : PeakC) - limit.Celsius;
}

/// <summary>
/// Tries changes of one layer. A search asks one resin alone, the one that made the upper bound; what it finds is confirmed with all of them.
/// </summary>
internal sealed class AdviceTrial
{
    // the body of revolution of the preview is up to 0.9 K too cool where it matters (study, section 5)
    private const double SidesK = 1;
    private const int MostTurns = 6;

    private readonly MouldBody mould;
    private readonly IReadOnlyList<HeatLimit> limits;
    private readonly CancellationToken stop;
    private readonly double marginK;
    private int upper;

    public AdviceTrial(AdviceInput input, int layer, CancellationToken stop)
    {
        (mould, limits, this.stop) = (input.Mould, input.Limits[layer], stop);
        Piece = PieceChange.UpTo(input.Piece, layer);
        Resins = [.. input.Resins.Take(layer + 1)];
        marginK = HeatModel.Sides(Piece.Mould) == 0 ? 0 : SidesK;
        Before = Sure(Piece, Resins);
        upper = input.Told?.Layers[layer].HottestMember ?? 0;
    }

    /// <summary>The piece up to the layer.</summary>
    public HeatInput Piece { get; }

    public IReadOnlyList<ForecastResin> Resins { get; }

    public HeatLayer Layer => Piece.Layers[^1];

    public ForecastResin Resin => Resins[^1];

    /// <summary>The layer as it was planned.</summary>
    public HighBound Before { get; }

    /// <summary>Whether every limit is kept, with what the preview may be wrong by.</summary>
    public bool Keeps(HighBound bound) => limits.All(l => bound.OverK(l) <= -marginK) && bound.PeakC <= HeatLimit.RunAwayC;

    /// <summary>Upper bounds of the top layers by the whole ensemble.</summary>
    /// <param name="top">How many layers from the top are looked at.</param>
    public HighBound Sure(HeatInput piece, IReadOnlyList<ForecastResin> resins, int top = 1)
    {
        var told = HeatForecast.Run(piece, mould, resins, preview: true, stop).Layers.TakeLast(top).ToList();
        return new(told.Max(l => l.PeakHighC), told.Max(l => l.FaceHighC)) { Member = told[^1].HottestMember };
    }

    /// <summary>What the layer does by itself, for the wait upon it.</summary>
    public ForecastLayer Tell(HeatInput piece) => HeatForecast.Run(piece, mould, Resins, preview: true, stop).Layers[^1];

    /// <summary>The mildest of the changes 0 to <paramref name="last"/> that keeps every limit, or the last one with what it gains.</summary>
    public (int Change, HeatInput Piece, HighBound Bound) Mildest(int last, Func<int, HeatInput> change)
    {
        var quick = new Dictionary<int, HighBound>();
        var sure = new Dictionary<int, HighBound>();
        var lift = new HighBound(0, 0);
        for (var turn = 0; turn < MostTurns; turn++)
        {
            // one step more than what is known to fail, none more than what is known to do
            var failed = sure.Where(s => !Keeps(s.Value)).Select(s => s.Key).DefaultIfEmpty(-1).Max();
            var found = sure.Where(s => Keeps(s.Value)).Select(s => s.Key).DefaultIfEmpty(last).Min();
            var at = Bisect(failed, found, s => Keeps(Lifted(Quick(s))));
            if (sure.ContainsKey(at))
            {
                break;
            }

            // which resin makes the bound changes on the way from a run-away to a calm layer
            sure[at] = Sure(change(at), Resins);
            if (upper != sure[at].Member)
            {
                upper = sure[at].Member;
                quick.Clear();
            }

            lift = new(sure[at].PeakC - Quick(at).PeakC, sure[at].FaceC - Quick(at).FaceC);
        }

        var best = sure.Where(s => Keeps(s.Value)).Select(s => s.Key).DefaultIfEmpty(last).Min();
        return (best, change(best), sure.TryGetValue(best, out var bound) ? bound : Sure(change(best), Resins));

        HighBound Quick(int s) => quick.TryGetValue(s, out var was) ? was : quick[s] = One(change(s));

        HighBound Lifted(HighBound b) => new(b.PeakC + lift.PeakC, b.FaceC + lift.FaceC);
    }

    private static int Bisect(int low, int high, Func<int, bool> keeps)
    {
        while (high - low > 1)
        {
            var middle = (low + high) / 2;
            (low, high) = keeps(middle) ? (low, middle) : (middle, high);
        }

        return high;
    }

    // the resin that made the upper bound
    private HighBound One(HeatInput piece)
    {
        var ensemble = new Ensemble(piece, Resins);
        var layer = HeatForecast.RunOne(ensemble.Drawn ? ensemble.Member(upper) : piece, mould, stop).Layers[^1];
        return new(layer.PeakCelsius, layer.MouldFacePeakCelsius);
    }
}
