using Studio.Engine;
using Studio.Engine.Moulds;

namespace Studio.Moulds;

/// <summary>A mould's water checks against its measures.</summary>
public sealed record WaterLook
{
    /// <summary>In the order they were taken; the number is the check's place in the mould's list.</summary>
    public IReadOnlyList<WaterRow> Rows { get; init; } = [];

    /// <summary>Null while there is no check, or one cannot be compared.</summary>
    public WaterCheckResult? Sum { get; init; }

    /// <summary>What cannot be compared: paths such as <c>checks[1].heightMm</c>.</summary>
    public IReadOnlyList<InputError> Errors { get; init; } = [];

    /// <summary>Scaling by the sum's factor is sensible and would change something.</summary>
    public bool Offer { get; init; }
}

/// <summary>One check as it is shown.</summary>
/// <param name="ComputedMl">Null when it cannot be compared.</param>
/// <param name="OffPercent">Measured against computed; positive where it holds more.</param>
public sealed record WaterRow(int Number, WaterCheck Check, double? ComputedMl, double? OffPercent);

/// <summary>What a tilt does to a layer's line.</summary>
/// <param name="ZMm">Height of the line [mm].</param>
/// <param name="AcrossMm">Greatest width of the mould there [mm].</param>
/// <param name="MostDegrees">Tilt that keeps the line within what is visible [°].</param>
/// <param name="MostPer100Mm">The same as a rise over 100 mm [mm].</param>
/// <param name="RunOffMm">How far the line runs off for the tilt asked about [mm]; null where none was.</param>
public sealed record LevelLook(double ZMm, double AcrossMm, double MostDegrees, double MostPer100Mm, double? RunOffMm);

/// <summary>How a mesh file reads, in whichever unit.</summary>
public sealed record MeshLook
{
    /// <summary>Width, depth and height that it would have in each unit [mm]; empty while it cannot be read.</summary>
    public IReadOnlyList<MeshSize> Sizes { get; init; } = [];

    /// <summary>Everything that is wrong with it.</summary>
    public IReadOnlyList<InputError> Errors { get; init; } = [];

    /// <summary>What was mended or is worth knowing.</summary>
    public IReadOnlyList<Finding> Notes { get; init; } = [];

    public int Triangles { get; init; }
}

/// <summary>A mesh's size if the file is in a unit.</summary>
/// <param name="Likely">A size that a mould has: its longest side between 10 mm and 600 mm.</param>
public sealed record MeshSize(string Unit, double WidthMm, double DepthMm, double HeightMm, bool Likely);
