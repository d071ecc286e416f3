namespace Studio.Engine.Fit;

/// <summary>What a resin's data sheet prints, as far as it bears on heat and cure; any number may be missing.</summary>
public sealed record PrintedSheet
{
    /// <summary>Key of the class of resin, from <see cref="ResinClass.All"/>: <c>deepPour</c>, <c>casting</c> or <c>fast</c>.</summary>
    public required string Class { get; init; }

    /// <summary>How long the mixed cup can be worked [min].</summary>
    public double? PotLifeMinutes { get; init; }

    /// <summary>When the mixed cup has gelled [min].</summary>
    public double? GelMinutes { get; init; }

    /// <summary>Mass of that cup [g]; a pot life without it says little.</summary>
    public double? CupMassG { get; init; }

    /// <summary>Temperature for which the sheet's numbers are printed [°C].</summary>
    public double AtCelsius { get; init; } = 23;

    /// <summary>Highest temperature of that cup [°C].</summary>
    public double? PeakCelsius { get; init; }

    /// <summary>Greatest depth of one pour [mm].</summary>
    public double? MaxPourMm { get; init; }

    /// <summary>When a piece may leave its mould [h].</summary>
    public double? DemouldHours { get; init; }

    /// <summary>When the cure is complete [h].</summary>
    public double? FullCureHours { get; init; }

    /// <summary>Glass transition of the cured resin [°C].</summary>
    public double? GlassEndC { get; init; }

    /// <summary>Of the mixed resin [kg/m³].</summary>
    public double? DensityKgPerM3 { get; init; }
}
