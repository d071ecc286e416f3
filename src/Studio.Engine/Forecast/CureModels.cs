using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>A mould that a layer is poured into, with its wall.</summary>
/// <param name="Spec">Its description.</param>
/// <param name="Body">Made from it.</param>
/// <param name="Wall">Its wall.</param>
/// <param name="StartCelsius">Of the empty mould [°C]; the room's where left out.</param>
internal sealed record CureMould(MouldSpec Spec, MouldBody Body, WallSpec Wall, double? StartCelsius);

/// <summary>Fits of sheets and runs of heat for the clock, so that clock and heat know one gel.</summary>
/// <param name="moulds">For each layer its mould, where it is known.</param>
/// <param name="stop">Looked at before each step of each run.</param>
internal sealed class CureModels(IReadOnlyList<CureMould?> moulds, CancellationToken stop = default) : ICureModels
{
    // of the film's bound; by then every layer that is not colder than it has gelled
    private const double Longer = 1.05;

    // calc heat runs on to another end, in other steps, and the two must not contradict each other
    private const double Coarser = 1.003;

    // as in calc heat
    private const int MostLayers = 40;

    private readonly Dictionary<LikelyCure, FitState> fitted = new(ReferenceEqualityComparer.Instance);

    /// <summary>A sheet as it is fitted; null where it says nothing to fit to, or cannot be fitted.</summary>
    public static FitState? Fit(DataSheet? sheet)
    {
        if (sheet is not { } given || (given.GelMinutes ?? given.PotLifeMinutes ?? given.DemouldHours ?? given.PeakCelsius ?? given.MaxPourMm ?? given.NextPourFromHours) is null)
        {
            return null;
        }

        return SheetFit.Run(given with { Class = given.Class ?? SheetClass.Of(given) }) is { Ok: true } fit ? fit.Value.State : null;
    }

    public LikelyCure? Likely(CureResin resin)
    {
        if (resin.Kinetics is not null || Fit(resin.DataSheet) is not { } state)
        {
            return null;
        }

        var likely = Of(state);
        fitted[likely] = state;
        return likely;
    }

    /// <summary>The resins that a fit holds for as good as its best.</summary>
    public static LikelyCure Of(FitState state) => new([.. state.Members().Select(m => m.Kinetics)]);

    public HeatGel? Heat(CureInput input, int index, IReadOnlyList<double?> pouredAt)
    {
        if (moulds.ElementAtOrDefault(index) is not { } mould || Stack(input, index, pouredAt) is not { } stack || new RoomLog(input.Room).Curve is not { } room)
        {
            return null;
        }

        // a printed gel is not of this layer, and a run without kinetics is none
        if (index >= MostLayers || input.Layers.Take(index + 1).Any(l => input.Resins[l.Resin] is { Kinetics: null, Likely: null }))
        {
            return null;
        }

        var (resins, at) = (input.Layers.Take(index + 1).Select(l => input.Resins[l.Resin]).ToList(), pouredAt[index]!.Value);
        var film = (resins[index].Likely ?? new LikelyCure([Kinetics(resins[index])])).GelHours(room, at, input.Layers[index].PouredCelsius, at + KineticClock.HorizonHours) - at;
        if (film is not { } hours)
        {
            return null;
        }

        var piece = new HeatInput
        {
            Mould = mould.Spec,
            Wall = mould.Wall with { StartCelsius = mould.StartCelsius ?? room.CelsiusAt(pouredAt[0]!.Value) },
            Boundary = new BoundarySpec(),
            Room = room.Readings,
            UntilHours = at + (hours * Longer),
            Layers = [.. stack.Select((s, i) => Layer(resins[i], s, pouredAt[i]!.Value, input.Layers[i].PouredCelsius ?? room.CelsiusAt(pouredAt[i]!.Value)))],
        };
        try
        {
            var told = HeatForecast.Run(piece, mould.Body, [.. resins.Select(r => new ForecastResin(r.Likely is { } l ? fitted.GetValueOrDefault(l) : null, null))], HeatCalculation.Grid(mould.Spec), stop).Layers[^1];
            return (told.Intervals is { } wide ? wide.LastGelAfterHours?.To : told.LastGelAfterHours) is { } gel ? new(gel * Coarser, hours) : null;
        }
        catch (InvalidOperationException)
        {
            return null; // what cannot be solved is not replaced by a guess: the thin layer's bound stands
        }
    }

    // each layer's place, from the lowest up; null where a depth or a pour is not known, or the mould is too low
    private List<(double FromMm, double ToMm)>? Stack(CureInput input, int index, IReadOnlyList<double?> pouredAt)
    {
        var (stack, top) = (new List<(double, double)>(), 0.0);
        for (var i = 0; i <= index; i++)
        {
            if (input.Layers[i].ThicknessMm is not { } deep || pouredAt[i] is not { } at || (i > 0 && at <= pouredAt[i - 1]))
            {
                return null;
            }

            stack.Add((top, top + deep));
            top += deep;
        }

        return top <= moulds[index]!.Body.HeightMm + 1e-6 ? stack : null;
    }

    private Kinetics Kinetics(CureResin resin) => resin.Kinetics ?? fitted[resin.Likely!].Best().Kinetics;

    private HeatLayer Layer(CureResin resin, (double FromMm, double ToMm) place, double pouredAtHours, double pouredC)
    {
        var known = new KnownResin(new HeatResin
        {
            Kinetics = Kinetics(resin),
            DataSheet = resin.DataSheet,
            DensityKgPerM3 = resin.DensityKgPerM3,
            HeatCapacityJPerKgK = resin.HeatCapacityJPerKgK,
            ConductivityWPerMK = resin.ConductivityWPerMK,
        });
        return known.Layer(new(place.FromMm, place.ToMm), pouredAtHours, pouredC);
    }
}
