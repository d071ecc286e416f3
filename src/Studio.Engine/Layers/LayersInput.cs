using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>Input of <c>calc layers</c>; names as in docs/calculations.md.</summary>
public sealed record LayersInput
{
    public required MouldSpec Mould { get; init; }

    public required IReadOnlyDictionary<string, ResinSpec> Resins { get; init; }

    public required IReadOnlyList<LayerSpec> Layers { get; init; }

    public FormerSpec? Former { get; init; }

    public WasteSpec? Waste { get; init; }
}

/// <summary>One layer in pouring order: exactly one of <see cref="ToMm"/>, <see cref="ThicknessMm"/>, <see cref="ResinMl"/>.</summary>
public sealed record LayerSpec
{
    public required string Name { get; init; }

    /// <summary>Key into <see cref="LayersInput.Resins"/>.</summary>
    public required string Resin { get; init; }

    /// <summary>Height of the layer's top above the mould's lowest inner point [mm].</summary>
    public double? ToMm { get; init; }

    /// <summary>Depth of the layer [mm].</summary>
    public double? ThicknessMm { get; init; }

    /// <summary>Amount of resin to use up [ml]; the level is solved.</summary>
    public double? ResinMl { get; init; }

    public IReadOnlyList<AdditionSpec> Additions { get; init; } = [];

    public IReadOnlyList<ScatterSpec> Scatter { get; init; } = [];

    public IReadOnlyList<PlacedSpec> Placed { get; init; } = [];
}

/// <summary>Pigment, powder or the like, by mass of the mixed resin.</summary>
public sealed record AdditionSpec
{
    public required string Name { get; init; }

    /// <summary>Mass as a percentage of the mixed resin's mass [%].</summary>
    public required double PercentOfResin { get; init; }

    public required double DensityGPerMl { get; init; }
}

/// <summary>Loose material that the resin fills around: mass and density, or bulk volume and packing.</summary>
public sealed record ScatterSpec
{
    public required string Name { get; init; }

    public double? MassG { get; init; }

    public double? DensityGPerMl { get; init; }

    public double? BulkMl { get; init; }

    /// <summary>Solid share of the bulk volume, 0.6 when left out [fraction].</summary>
    public double? PackingFraction { get; init; }
}

/// <summary>A thing set in by hand: mass and density, or the volume it displaces.</summary>
public sealed record PlacedSpec
{
    public required string Name { get; init; }

    public double? MassG { get; init; }

    public double? DensityGPerMl { get; init; }

    public double? DisplacedMl { get; init; }
}

/// <summary>The centred box that leaves room for lights, from a height up to the open top.</summary>
public sealed record FormerSpec
{
    public required double OuterWidthMm { get; init; }

    public required double OuterDepthMm { get; init; }

    public required double FromMm { get; init; }

    /// <summary>Wall thickness [mm]; needed unless solid.</summary>
    public double? WallMm { get; init; }

    /// <summary>Height up to which resin stands inside the hollow box [mm].</summary>
    public double? FloorMm { get; init; }

    public bool Solid { get; init; }
}

/// <summary>What is mixed and not poured.</summary>
public sealed record WasteSpec
{
    /// <summary>Percent of the net mass.</summary>
    public double Percent { get; init; }

    /// <summary>What stays in each cup [g].</summary>
    public double PerBatchG { get; init; }
}
