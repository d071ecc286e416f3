namespace Studio.Engine.Resins;

/// <summary>What the layer arithmetic needs to know of a resin. All from its data sheet.</summary>
public sealed record ResinSpec
{
    /// <summary>Density of the mixed resin [g/ml]; may be left out where both part densities are given (ideal mixing).</summary>
    public double? DensityGPerMl { get; init; }

    /// <summary>Mixing ratio.</summary>
    public required MixSpec Mix { get; init; }

    /// <summary>Greatest depth of one pour [mm].</summary>
    public double? MaxPourMm { get; init; }

    /// <summary>Greatest mass of one mixed batch [g], the cup's residue included.</summary>
    public double? MaxBatchG { get; init; }

    /// <summary>Pot life [min].</summary>
    public double? PotLifeMinutes { get; init; }
}

/// <summary>Parts A to parts B, by weight or by volume.</summary>
public sealed record MixSpec
{
    /// <summary>Parts of A (resin), above zero.</summary>
    public required double PartsA { get; init; }

    /// <summary>Parts of B (hardener), above zero.</summary>
    public required double PartsB { get; init; }

    /// <summary><c>weight</c> or <c>volume</c>; by volume needs both densities.</summary>
    public required string By { get; init; }

    /// <summary>Density of A [g/ml].</summary>
    public double? DensityAGPerMl { get; init; }

    /// <summary>Density of B [g/ml].</summary>
    public double? DensityBGPerMl { get; init; }
}
