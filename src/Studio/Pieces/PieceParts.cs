using Studio.Engine.Parts;

namespace Studio.Pieces;

/// <summary>What is cut and fitted for the room for lights, as the maker chose it. Nothing computed is kept.</summary>
public sealed record PieceParts
{
    public CutSpec Cut { get; init; } = new();

    /// <summary>Null where nothing closes the opening.</summary>
    public CoverSpec? Cover { get; init; }

    public FeetSpec? Feet { get; init; }

    public IReadOnlyList<FittingSpec> Fittings { get; init; } = [];

    /// <summary>Null where nothing was said of current and cells.</summary>
    public LightSpec? Light { get; init; }
}
