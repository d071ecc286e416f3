namespace Studio.Pieces;

/// <summary>What is cut and fitted for the room for lights.</summary>
public sealed record PieceParts;
