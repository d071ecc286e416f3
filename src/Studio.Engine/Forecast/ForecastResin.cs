using Studio.Engine.Fit;

namespace Studio.Engine.Forecast;

/// <summary>What is known of a layer's resin.</summary>
/// <param name="State">A fit to its sheet or its logs; null where the kinetics in the input are exact, and then there is no interval.</param>
/// <param name="MaxPourMm">Greatest depth of one pour that its sheet prints [mm]; no advice goes above it.</param>
public sealed record ForecastResin(FitState? State, double? MaxPourMm)
{
    /// <summary>Earliest next pour that its sheet prints, at the sheet's temperature [h]; no advice comes before it.</summary>
    public double? NextPourFromHours { get; init; }

    /// <summary>End of the sheet's next-pour window [h]; no advice comes after it.</summary>
    public double? NextPourUntilHours { get; init; }

    /// <summary>Coldest room that its sheet allows [°C]; no advice goes below it.</summary>
    public double? MinRoomC { get; init; }
}
