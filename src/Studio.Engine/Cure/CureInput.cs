namespace Studio.Engine.Cure;

/// <summary>Input of <c>calc cure</c>; names as in docs/calculations.md.</summary>
public sealed record CureInput
{
    /// <summary>By the id that layers name.</summary>
    public required IReadOnlyDictionary<string, CureResin> Resins { get; init; }

    /// <summary>From the lowest up.</summary>
    public required IReadOnlyList<CureLayer> Layers { get; init; }

    /// <summary>Readings in any order; at least one.</summary>
    public required IReadOnlyList<RoomReading> Room { get; init; }

    /// <summary>Conversion is told as of this time, and milestones after it are not reached [h].</summary>
    public required double UntilHours { get; init; }
}

/// <summary>A resin by its kinetics, its data sheet or both; then the careful one of the two counts.</summary>
public sealed record CureResin
{
    /// <summary>How it cures, where known.</summary>
    public Kinetics? Kinetics { get; init; }

    /// <summary>What its data sheet prints, where known.</summary>
    public DataSheet? DataSheet { get; init; }

    /// <summary>Resins that would print the same sheet; put in by who can fit one.</summary>
    public LikelyCure? Likely { get; init; }

    /// <summary>Used by calc heat only [kg/m³].</summary>
    public double? DensityKgPerM3 { get; init; }

    /// <summary>Used by calc heat only [J/(kg K)].</summary>
    public double? HeatCapacityJPerKgK { get; init; }

    /// <summary>Used by calc heat only [W/(m K)].</summary>
    public double? ConductivityWPerMK { get; init; }
}

/// <summary>A data sheet's numbers, any subset. The clock uses the times and their temperature; a fit of the kinetics uses all but the next-pour window.</summary>
public sealed record DataSheet
{
    /// <summary>Temperature the times are printed for where the sheet does not say [°C]; common practice.</summary>
    public const double UsualCelsius = 23;

    /// <summary>Classes a sheet may be of.</summary>
    public static IReadOnlyList<string> Classes { get; } = ["deepPour", "casting", "fast"];

    public string? Class { get; init; }

    public double? PotLifeMinutes { get; init; }

    public double? GelMinutes { get; init; }

    public double? CupMassG { get; init; }

    public double? AtCelsius { get; init; }

    public double? PeakCelsius { get; init; }

    public double? MaxPourMm { get; init; }

    public double? NextPourFromHours { get; init; }

    public double? NextPourUntilHours { get; init; }

    public double? DemouldHours { get; init; }

    public double? FullCureHours { get; init; }

    public double? GlassEndC { get; init; }

    public double? DensityKgPerM3 { get; init; }

    /// <summary>Temperature the numbers are printed for [°C].</summary>
    public double PrintedAtC => AtCelsius ?? UsualCelsius;

    /// <summary>The times as the clock takes them: one row.</summary>
    public CureSheet Times => new()
    {
        Times =
        [
            new()
            {
                AtCelsius = PrintedAtC, GelHours = GelMinutes / 60, NextPourFromHours = NextPourFromHours,
                NextPourUntilHours = NextPourUntilHours, DemouldHours = DemouldHours, FullCureHours = FullCureHours,
            },
        ],
    };
}

/// <summary>A layer as given: poured at a time, or when another has gelled.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Resin">Its resin's id.</param>
/// <param name="PouredAtHours">When [h] on the room's scale.</param>
/// <param name="AfterGelOf">Name of the layer upon whose gel it is poured.</param>
public sealed record CureLayer(string Name, string Resin, double? PouredAtHours, string? AfterGelOf)
{
    /// <summary>Its depth [mm]; with a mould its own heat decides its gel, without one a thin layer's does.</summary>
    public double? ThicknessMm { get; init; }

    /// <summary>Temperature of the mix [°C]; the room's where left out.</summary>
    public double? PouredCelsius { get; init; }
}

/// <summary>What the clock itself cannot work out: a fit of a sheet, a run of a layer's heat. Put in by the room above it.</summary>
public interface ICureModels
{
    /// <summary>Resins that would print the same sheet; null where none can be fitted, or the kinetics are given.</summary>
    LikelyCure? Likely(CureResin resin);

    /// <summary>What a run of this layer's heat says of its gel, with what is poured under it; null where it cannot be run.</summary>
    /// <param name="input">With the resins' <see cref="CureResin.Likely"/>.</param>
    /// <param name="index">Of the layer.</param>
    /// <param name="pouredAt">When each layer is poured, as far as that is known [h]; this one's is.</param>
    HeatGel? Heat(CureInput input, int index, IReadOnlyList<double?> pouredAt);
}
