using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Heat;

/// <summary>Input of <c>calc heat</c> as it is written; names as in docs/calculations.md.</summary>
public sealed record HeatSpec
{
    public required MouldSpec Mould { get; init; }

    /// <summary>The mould's wall; thickness must be given, the rest is silicone unless said.</summary>
    public required WallSpec Wall { get; init; }

    /// <summary>Temperature of the mould at the first pour [°C]; the room's where left out.</summary>
    public double? WallStartCelsius { get; init; }

    public FormerSpec? Former { get; init; }

    public FillSpec? Fill { get; init; }

    public BoundarySpec Boundary { get; init; } = new();

    public required IReadOnlyList<RoomReading> Room { get; init; }

    public required IReadOnlyList<HeatLayerSpec> Layers { get; init; }

    public required double UntilHours { get; init; }

    public required IReadOnlyDictionary<string, HeatResin> Resins { get; init; }
}

/// <summary>One layer: exactly one of <see cref="ThicknessMm"/> and <see cref="ToMm"/>.</summary>
/// <param name="Name">Where it has one; else it is counted.</param>
/// <param name="Resin">Id of its resin.</param>
/// <param name="ThicknessMm">Depth [mm].</param>
/// <param name="ToMm">Height of its top [mm].</param>
/// <param name="PouredAtHours">[h] on the room's scale.</param>
/// <param name="PouredCelsius">Of the mix [°C]; the room's where left out.</param>
public sealed record HeatLayerSpec(string? Name, string Resin, double? ThicknessMm, double? ToMm, double PouredAtHours, double? PouredCelsius);

/// <summary>A resin whose kinetics are known, with what its sheet limits.</summary>
public sealed record HeatResin
{
    public required Kinetics Kinetics { get; init; }

    public double DensityKgPerM3 { get; init; } = 1100;

    public double HeatCapacityJPerKgK { get; init; } = 1900;

    public double ConductivityWPerMK { get; init; } = 0.19;

    /// <summary>Greatest depth of one pour by the sheet [mm].</summary>
    public double? MaxPourMm { get; init; }
}

/// <summary>Result of <c>calc heat</c>.</summary>
public sealed record HeatResult
{
    public required IReadOnlyList<HeatLayerResult> Layers { get; init; }

    /// <summary>Which model gave the numbers, in words.</summary>
    public required string Model { get; init; }

    /// <summary>(stored + lost − released) / released; a check of the arithmetic.</summary>
    public required double EnergyBalance { get; init; }

    public required IReadOnlyList<LayerWarning> Findings { get; init; }
}

/// <summary>One layer between its pour and the next.</summary>
public sealed record HeatLayerResult
{
    public string? Name { get; init; }

    public required double PeakCelsius { get; init; }

    public required double PeakAfterHours { get; init; }

    public required double PeakHeightMm { get; init; }

    public double? FirstGelAfterHours { get; init; }

    public double? LastGelAfterHours { get; init; }

    public required ConversionResult Conversion { get; init; }

    public required double MouldFacePeakCelsius { get; init; }

    public required IReadOnlyList<MomentResult> Curve { get; init; }

    public required IReadOnlyList<LayerWarning> Findings { get; init; }
}

/// <summary>Least and mean conversion in a layer [ratio].</summary>
public sealed record ConversionResult(double Min, double Mean);

/// <summary>A moment of a layer.</summary>
public sealed record MomentResult(double AfterHours, double HottestCelsius, double SurfaceCelsius);
