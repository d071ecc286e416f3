using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>A resin as fitted, or one of the resins that would print the same sheet.</summary>
/// <param name="Kinetics">How it cures.</param>
/// <param name="DensityKgPerM3">[kg/m³].</param>
/// <param name="HeatCapacityJPerKgK">[J/(kg K)].</param>
/// <param name="ConductivityWPerMK">[W/(m K)].</param>
/// <param name="FilmFactor">Every film to the room is multiplied by this [ratio].</param>
/// <param name="DemouldConversion">Conversion at which its maker lets it leave the mould [0 to 1].</param>
public sealed record FitResin(
    Kinetics Kinetics, double DensityKgPerM3, double HeatCapacityJPerKgK, double ConductivityWPerMK, double FilmFactor, double DemouldConversion);
