using Studio.Engine.Meshes;

namespace Studio.Engine.Moulds;

/// <summary>A mould as the contract names it: a shape key and that shape's dimensions by their contract names.</summary>
/// <param name="Shape">Shape key from <see cref="MouldShapes.All"/>, such as <c>pyramid</c>.</param>
/// <param name="Dimensions">Dimension name with unit, such as <c>baseMm</c>, to its number. Missing ones take the shape's default.</param>
public sealed record MouldSpec(string Shape, IReadOnlyDictionary<string, double> Dimensions)
{
    /// <summary>A mould of any shape has been filled with water, and all volumes are scaled by it [ratio]; 1 leaves them as computed.</summary>
    public double VolumeFactor { get; init; } = 1;

    /// <summary>How far the fills lie apart, as a share of the volume [%]; null where nobody filled it.</summary>
    public double? VolumeSpreadPercent { get; init; }

    /// <summary>For <c>measured</c>: the fill, from the bottom up; null where left out.</summary>
    public IReadOnlyList<FillReading>? Readings { get; init; }

    /// <summary>For <c>mesh</c>: the file it came from.</summary>
    public MeshSource? Mesh { get; init; }

    /// <summary>For <c>mesh</c>: the cavity, read and checked by whoever may open files.</summary>
    public Cavity? Cavity { get; init; }
}

/// <summary>One reading of a water fill: so much stands in the mould up to so high.</summary>
/// <param name="HeightMm">Height of the water above the lowest inner point [mm].</param>
/// <param name="VolumeMl">Water poured in up to there [ml].</param>
public sealed record FillReading(double HeightMm, double VolumeMl);
