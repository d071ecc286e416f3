using Studio.Engine.Fit;
using Studio.Engine.Heat;

namespace Studio.Engine.Forecast;

/// <summary>A piece with resins drawn from what is known of them: layers of one resin are always drawn together.</summary>
internal sealed class Ensemble
{
    public const int Count = FitMembers.Count;

    // resins that do not know of each other must not be hot together in every member
    private const int Turn = 7;

    private readonly HeatInput input;
    private readonly FitState?[] states;
    private readonly FitResin[] best;
    private readonly IReadOnlyList<FitResin>[] members;
    private readonly int[] which;
    private readonly int films;

    public Ensemble(HeatInput input, IReadOnlyList<ForecastResin> perLayer)
    {
        if (perLayer.Count != input.Layers.Count)
        {
            throw new ArgumentException($"There are {input.Layers.Count} layers and {perLayer.Count} resins.", nameof(perLayer));
        }

        this.input = input;
        var found = new List<FitState>();
        which = [.. perLayer.Select(r => r.State is null ? -1 : Index(found, r.State.Whole()))];
        states = [.. found];
        best = [.. found.Select(s => s.Best())];
        members = [.. found.Select(s => s.Members(Count))];

        // the films belong to the room and the mould: whichever resin's logs know them best says them
        films = found.Count == 0 ? -1 : Enumerable.Range(0, found.Count).MinBy(i => found[i].Sd(FitNumbers.LogFilm));
    }

    /// <summary>False where every resin is exact: then there is nothing to draw.</summary>
    public bool Drawn => states.Length > 0;

    /// <summary>The most probable piece.</summary>
    public HeatInput Best() => With(s => best[s]);

    /// <summary>One of the pieces that are as good a guess [0 to <see cref="Count"/> − 1].</summary>
    public HeatInput Member(int number) => With(s => members[s][(number + (s * Turn)) % Count]);

    private HeatInput With(Func<int, FitResin> resin) => !Drawn ? input : input with
    {
        Boundary = Films(resin(films).FilmFactor),
        Fill = input.Fill is { } fill ? fill with { WPerM2K = fill.WPerM2K * resin(films).FilmFactor } : null,
        Layers = [.. input.Layers.Select((layer, i) => which[i] < 0 ? layer : Of(layer, resin(which[i])))],
    };

    private static HeatLayer Of(HeatLayer layer, FitResin resin) => layer with
    {
        Kinetics = resin.Kinetics,
        DensityKgPerM3 = resin.DensityKgPerM3,
        HeatCapacityJPerKgK = resin.HeatCapacityJPerKgK,
        ConductivityWPerMK = resin.ConductivityWPerMK,
    };

    private BoundarySpec Films(double factor) => new(
        input.Boundary.TopWPerM2K * factor, input.Boundary.SideWPerM2K * factor, input.Boundary.BottomWPerM2K * factor, input.Boundary.VoidWPerM2K * factor);

    // states are kept as data, so the same one may arrive as two objects
    private static int Index(List<FitState> found, FitState state)
    {
        var at = found.FindIndex(s => ReferenceEquals(s, state) || Same(s, state));
        if (at < 0)
        {
            found.Add(state);
        }

        return at < 0 ? found.Count - 1 : at;
    }

    private static bool Same(FitState a, FitState b) =>
        a with { Mean = b.Mean, Spread = b.Spread, PriorSd = b.PriorSd, SeenCelsius = b.SeenCelsius, Kept = b.Kept } == b && a.SeenCelsius.SequenceEqual(b.SeenCelsius) && a.Mean.SequenceEqual(b.Mean) && a.Spread.SelectMany(r => r).SequenceEqual(b.Spread.SelectMany(r => r));
}
