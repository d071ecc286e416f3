using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>
/// The answer for a mould of which only the areas are known, and what that costs: a round body has the least wall for its area and no corners, so it is
/// warmer than the mould, gels sooner and cures further. Its bounds are moved by the most that it was off beside three dimensions (docs/measurements.md).
/// </summary>
public static class RoundBody
{
    /// <summary>Up to this the outline's length over that of a circle of the same area was measured: a rectangle of 1 : 4.</summary>
    public const double MostOutline = 1.42;

    // shares of the rise above the coldest that the layer starts from or stands in
    internal const double LeastRise = 0.3;
    internal const double MostFaceRise = 1.25;

    // shares of a time
    internal const double EarliestPeak = 0.8;
    internal const double LatestPeak = 1.3;
    internal const double LatestFirstGel = 1.3;
    internal const double LatestGel = 2;

    // shares of a conversion
    internal const double LeastOfLeast = 0.6;
    internal const double LeastOfMean = 0.8;

    private const int Looks = 9;

    /// <summary>Whether a mould's heat is that of a round body in its place.</summary>
    public static bool StandsFor(MouldBody mould) => mould.Shape.Grid is { AreasOnly: true };

    /// <summary>What is to be said of it, whole sentences; empty for a mould whose walls are followed.</summary>
    /// <param name="mould">The mould.</param>
    /// <param name="layers">What is poured into it.</param>
    public static IReadOnlyList<Finding> Findings(MouldBody mould, IReadOnlyList<HeatLayer> layers)
    {
        if (!StandsFor(mould))
        {
            return [];
        }

        var taken = "The mould is taken as a round body with the same area at every height. A real one with corners or a longer outline stays cooler, gels later and cures less far; the bounds are widened by the most that was measured, for outlines up to a rectangle of 1 : 4.";
        var said = new Finding("round-body", Severity.Note, "mould", taken, "our measurement");
        return Longest(mould, layers) is var longest && longest <= MostOutline ? [said]
            :
            [
                said,
                new("outline-beyond-measure", Severity.Warn, "mould", FormattableString.Invariant($"Its outline is {longest:0.0} times as long as that of a circle of the same area; what a round body is wrong by was measured up to {MostOutline:0.0} times. It stays cooler than told, and when its last place gels is not known: wait as long as the data sheet says, and touch it in its narrowest corner first."), "our measurement"),
            ];
    }

    /// <summary>Every layer's bounds, moved outwards.</summary>
    internal static IReadOnlyList<ForecastLayer> Widened(IReadOnlyList<ForecastLayer> told, HeatInput input, MouldBody mould) =>
        StandsFor(mould) ? [.. told.Select((t, i) => Widened(t, Longest(mould, [input.Layers[i]]) <= MostOutline, Coldest(input, i), Covered(told, input, i)))] : told;

    // what lies under another may peak by itself in the one body and once it is covered in the other
    private static double Covered(IReadOnlyList<ForecastLayer> told, HeatInput input, int layer) =>
        Enumerable.Range(layer, told.Count - layer).Max(i => input.Layers[i].PouredAtHours - input.Layers[layer].PouredAtHours + told[i].PeakAfterHours);

    private static double Coldest(HeatInput input, int layer) => Math.Min(input.Layers[layer].PouredCelsius, input.Room.Min(r => r.Celsius));

    private static ForecastLayer Widened(ForecastLayer told, bool measured, double coldest, double coveredHours)
    {
        var was = told.Intervals ?? Alone(told.Best);

        // a body that runs away says nothing of one that does not
        var known = measured && was.PeakC.To <= HeatLimit.RunAwayC;
        return told with
        {
            Intervals = new(
                new(Risen(was.PeakC.From, known ? LeastRise : 0), was.PeakC.To),
                new(Math.Min(was.PeakAfterHours.From, told.Best.PeakBeforeNextPourAfterHours) * EarliestPeak, Math.Max(was.PeakAfterHours.To, coveredHours) * LatestPeak),
                new(Risen(was.FaceC.From, known ? LeastRise : 0), Math.Max(was.FaceC.To, Math.Min(was.PeakC.To, Risen(was.FaceC.To, MostFaceRise)))),
                Later(was.FirstGelAfterHours, known, LatestFirstGel),
                Later(was.LastGelAfterHours, known, LatestGel),
                new(known ? was.LeastConversion.From * LeastOfLeast : 0, was.LeastConversion.To),
                new(known ? was.MeanConversion.From * LeastOfMean : 0, was.MeanConversion.To)),
        };

        // what did not rise is not moved; a layer that touches no mould has no face
        double Risen(double celsius, double share) => celsius > coldest ? coldest + (share * (celsius - coldest)) : celsius;
    }

    // beyond what was measured nobody knows the latest
    private static FitInterval? Later(FitInterval? was, bool known, double share) => was is null || !known ? null : was with { To = was.To * share };

    private static ForecastIntervals Alone(LayerHeat best)
    {
        return new(At(best.PeakCelsius)!, At(best.PeakAfterHours)!, At(best.MouldFacePeakCelsius)!, At(best.FirstGelAfterHours), At(best.LastGelAfterHours), At(best.LeastConversion)!, At(best.MeanConversion)!);

        static FitInterval? At(double? value) => value is { } v ? new(v, v) : null;
    }

    // of the heights inside the layers; 1 where nobody knows the outline
    private static double Longest(MouldBody mould, IReadOnlyList<HeatLayer> layers) =>
        layers.SelectMany(l => Enumerable.Range(0, Looks).Select(k => l.FromMm + ((l.ToMm - l.FromMm) * (k + 0.5) / Looks))).Select(z => mould.OutlineShare(Math.Min(z, mould.HeightMm)) ?? 1).Max();
}
