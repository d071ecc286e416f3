using Studio.Engine.Fit;
using Studio.Engine.Heat;

namespace Studio.Engine.Forecast;

/// <summary>A piece's heat as foretold.</summary>
/// <param name="Layers">In pouring order.</param>
/// <param name="Heat">The run of the most probable resins.</param>
/// <param name="Model">Which model gave the numbers, in words.</param>
public sealed record ForecastOutcome(IReadOnlyList<ForecastLayer> Layers, HeatOutcome Heat, string Model);

/// <summary>One layer from its pour to the end, whatever is poured on it, with its interval where its resin was fitted.</summary>
public sealed record ForecastLayer
{
    /// <summary>What the most probable resins do.</summary>
    public required LayerHeat Best { get; init; }

    /// <summary>What the mix would reach if nothing cooled it: its temperature when poured, and the whole heat of its reaction [°C].</summary>
    public double AdiabaticC => Best.AdiabaticCelsius;

    /// <summary>5 to 95 %; null where every resin's kinetics are exact.</summary>
    public ForecastIntervals? Intervals { get; init; }

    /// <summary>The drawn resin whose peak is nearest to the upper bound; 0 where none is drawn.</summary>
    internal int HottestMember { get; init; }

    /// <summary>Hottest place, most probable [°C].</summary>
    public double PeakC => Best.PeakCelsius;

    /// <summary>Lower bound of the peak [°C]; the peak itself where there is no interval.</summary>
    public double PeakLowC => Intervals?.PeakC.From ?? PeakC;

    /// <summary>Upper bound of the peak [°C]; the peak itself where there is no interval. What is decided rests on it.</summary>
    public double PeakHighC => Intervals?.PeakC.To ?? PeakC;

    public double PeakAfterHours => Best.PeakAfterHours;

    public double PeakHeightMm => Best.PeakHeightMm;

    /// <summary>Hottest place where resin touches the mould, most probable [°C].</summary>
    public double FaceC => Best.MouldFacePeakCelsius;

    /// <summary>Its upper bound [°C].</summary>
    public double FaceHighC => Intervals?.FaceC.To ?? FaceC;

    public double? FirstGelAfterHours => Best.FirstGelAfterHours;

    public double? LastGelAfterHours => Best.LastGelAfterHours;

    public double LeastConversion => Best.LeastConversion;

    public IReadOnlyList<HeatMoment> Curve => Best.Curve;

    /// <summary>No number is shown then but 'run-away: do not pour'.</summary>
    public bool RunAway => PeakHighC > HeatLimit.RunAwayC;
}

/// <summary>Nine times in ten the truth lies inside, if the model is of the right kind. The most probable value always does.</summary>
/// <param name="PeakC">[°C].</param>
/// <param name="PeakAfterHours">[h after the pour].</param>
/// <param name="FaceC">Where resin touches the mould [°C].</param>
/// <param name="FirstGelAfterHours">[h]; null where not every resin of the interval gels in time.</param>
/// <param name="LastGelAfterHours">[h]; likewise.</param>
/// <param name="LeastConversion">At the end [0 to 1].</param>
/// <param name="MeanConversion">At the end [0 to 1].</param>
public sealed record ForecastIntervals(
    FitInterval PeakC, FitInterval PeakAfterHours, FitInterval FaceC, FitInterval? FirstGelAfterHours, FitInterval? LastGelAfterHours, FitInterval LeastConversion, FitInterval MeanConversion);
