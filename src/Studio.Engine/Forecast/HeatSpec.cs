using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

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
/// <param name="Name">For a person; may be left out.</param>
/// <param name="Resin">Its resin's id.</param>
/// <param name="ThicknessMm">Depth [mm].</param>
/// <param name="ToMm">Height of its top [mm].</param>
/// <param name="PouredAtHours">[h] on the room's scale.</param>
/// <param name="PouredCelsius">Of the mix [°C]; the room's where left out.</param>
public sealed record HeatLayerSpec(string? Name, string Resin, double? ThicknessMm, double? ToMm, double PouredAtHours, double? PouredCelsius);

/// <summary>A resin by its kinetics or by its data sheet. With both, the kinetics count as exact and the sheet limits depth and times.</summary>
public sealed record HeatResin
{
    public Kinetics? Kinetics { get; init; }

    public DataSheet? DataSheet { get; init; }

    /// <summary>Of the mixed resin [kg/m³]; the sheet's, else 1100 where left out.</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>[J/(kg K)]; 1900 where left out.</summary>
    public double? HeatCapacityJPerKgK { get; init; }

    /// <summary>[W/(m K)]; 0.19 where left out.</summary>
    public double? ConductivityWPerMK { get; init; }

    /// <summary>Greatest depth of one pour by the sheet [mm].</summary>
    public double? MaxPourMm { get; init; }

    /// <summary>The sheet as it is fitted; null where the kinetics are given.</summary>
    internal DataSheet? ToFit => Kinetics is not null || DataSheet is null ? null : DataSheet with
    {
        Class = DataSheet.Class ?? SheetClass.Of(DataSheet),
        DensityKgPerM3 = DataSheet.DensityKgPerM3 ?? DensityKgPerM3,
        MaxPourMm = Depth ?? DataSheet.MaxPourMm,
    };

    /// <summary>The stricter of what stands in the sheet and beside it.</summary>
    internal double? Depth => MaxPourMm is { } beside && DataSheet?.MaxPourMm is { } printed ? Math.Min(beside, printed) : MaxPourMm ?? DataSheet?.MaxPourMm;
}

/// <summary>Result of <c>calc heat</c>.</summary>
public sealed record HeatResult
{
    public required IReadOnlyList<HeatLayerResult> Layers { get; init; }

    /// <summary>Which model gave the numbers, in words.</summary>
    public required string Model { get; init; }

    /// <summary>(stored + lost − released) / released; a check of the arithmetic.</summary>
    public required double EnergyBalance { get; init; }

    /// <summary>What was fitted, by the resin's id; empty where every resin's kinetics were given.</summary>
    public required IReadOnlyDictionary<string, ResinFit> Fit { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }
}

/// <summary>One layer from its pour to the end.</summary>
/// <param name="Name">As given.</param>
/// <param name="PouredAtHours">[h] on the room's scale.</param>
/// <param name="Heat">What it does.</param>
/// <param name="Findings">What is to be said of it.</param>
public sealed record HeatLayerResult(string? Name, double PouredAtHours, ForecastLayer Heat, IReadOnlyList<Finding> Findings);
