using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>Input of <c>calc heat</c> after its resins' kinetics are known; names as in docs/calculations.md.</summary>
public sealed record HeatInput
{
    public required MouldSpec Mould { get; init; }

    public required WallSpec Wall { get; init; }

    public FormerSpec? Former { get; init; }

    /// <summary>What stands in the former's room; null where there is no former.</summary>
    public FillSpec? Fill { get; init; }

    public required BoundarySpec Boundary { get; init; }

    /// <summary>Readings of the room, linear between, the ends held.</summary>
    public required IReadOnlyList<RoomReading> Room { get; init; }

    public required IReadOnlyList<HeatLayer> Layers { get; init; }

    public required double UntilHours { get; init; }

    /// <summary>Height of a thermometer on the middle line [mm]; null where there is none.</summary>
    public double? ProbeMm { get; init; }

    /// <summary>When a picture of the section is wanted [h] on the room's scale, in any order.</summary>
    public IReadOnlyList<double> PictureHours { get; init; } = [];
}

/// <summary>The mould's wall: of one thickness measured level, with a floor under it and perhaps a roof over it.</summary>
public sealed record WallSpec
{
    /// <summary>Measured level, the same at every height [mm].</summary>
    public required double ThicknessMm { get; init; }

    public double FloorMm { get; init; }

    public double RoofMm { get; init; }

    public double ConductivityWPerMK { get; init; } = 0.25;

    public double DensityKgPerM3 { get; init; } = 1150;

    public double HeatCapacityJPerKgK { get; init; } = 1300;

    public double StartCelsius { get; init; } = 23;
}

/// <summary>The former's room.</summary>
/// <param name="Silicone">True for a plug of the wall's material, there from the start; false for air.</param>
/// <param name="WPerM2K">Film coefficient to the air in it [W/(m² K)].</param>
public sealed record FillSpec(bool Silicone, double WPerM2K);

/// <summary>Film coefficients to the room [W/(m² K)].</summary>
public sealed record BoundarySpec(double TopWPerM2K = 10, double SideWPerM2K = 8, double BottomWPerM2K = 5, double VoidWPerM2K = 5);

/// <summary>A poured layer.</summary>
/// <param name="Kinetics">How its resin cures.</param>
/// <param name="DensityKgPerM3">Of the mixed resin [kg/m³].</param>
/// <param name="HeatCapacityJPerKgK">[J/(kg K)].</param>
/// <param name="ConductivityWPerMK">[W/(m K)].</param>
/// <param name="FromMm">Bottom [mm].</param>
/// <param name="ToMm">Top [mm].</param>
/// <param name="PouredAtHours">[h] on the room's scale.</param>
/// <param name="PouredCelsius">Temperature of the mix [°C].</param>
public sealed record HeatLayer(
    Kinetics Kinetics, double DensityKgPerM3, double HeatCapacityJPerKgK, double ConductivityWPerMK,
    double FromMm, double ToMm, double PouredAtHours, double PouredCelsius);

/// <summary>How fine the grid is.</summary>
/// <param name="Across">Cells from the middle to the wall.</param>
/// <param name="Through">Cells through each layer.</param>
/// <param name="InWall">Cells through wall, floor and roof.</param>
/// <param name="Time">Changes allowed in one step, as a share of the usual ones.</param>
public sealed record HeatFineness(int Across = 6, int Through = 8, int InWall = 2, double Time = 1);
