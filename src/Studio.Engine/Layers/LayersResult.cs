namespace Studio.Engine.Layers;

/// <summary>Result of <c>calc layers</c>.</summary>
public sealed record LayersResult
{
    /// <summary>Volume of the empty mould to its rim [ml].</summary>
    public required double CapacityMl { get; init; }

    /// <summary>Resin, additions and everything of known mass; the former left out [g].</summary>
    public required double FinishedMassG { get; init; }

    /// <summary>Height of the centre of mass above the mould's lowest inner point [mm].</summary>
    public required double CentreOfMassMm { get; init; }

    public required IReadOnlyList<LayerResult> Layers { get; init; }
}

/// <summary>One layer's volumes, grams, batches and warnings.</summary>
public sealed record LayerResult
{
    public required string Name { get; init; }

    public required double FromMm { get; init; }

    public required double ToMm { get; init; }

    public required double DepthMm { get; init; }

    /// <summary>MouldBody alone between the two heights [ml].</summary>
    public required double GrossMl { get; init; }

    /// <summary>Former, scatter and placed [ml].</summary>
    public required double DisplacedMl { get; init; }

    public required double ResinMl { get; init; }

    public required IReadOnlyList<AdditionResult> Additions { get; init; }

    /// <summary>Net resin [g].</summary>
    public required double ResinG { get; init; }

    /// <summary>To be mixed, waste included [g].</summary>
    public required double MixG { get; init; }

    /// <summary>How far <see cref="MixG"/> may be off by the mould's water check [g], to either side; null where there was none, or where the resin was given.</summary>
    public double? MixSpreadG { get; init; }

    /// <summary>Where the resin was given: how far the level may be off by the mould's water check [mm], to either side.</summary>
    public double? LevelSpreadMm { get; init; }

    public required double PartAG { get; init; }

    public required double PartBG { get; init; }

    public double? PartAMl { get; init; }

    public double? PartBMl { get; init; }

    public required IReadOnlyList<BatchResult> Batches { get; init; }

    /// <summary>From z = 0 to the layer's top along the middle of a face or the generator [mm].</summary>
    public required double FaceMarkMm { get; init; }

    public required IReadOnlyList<LayerWarning> Warnings { get; init; }
}

public sealed record AdditionResult(string Name, double Grams);

public sealed record BatchResult(double PartAG, double PartBG);

/// <summary>A doubt of the trade; codes: pour-too-deep, batch-split, scatter-overflows, floats, former-too-close, over-filled, pot-life-short.</summary>
public sealed record LayerWarning(string Code, string Message);
