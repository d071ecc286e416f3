namespace Studio.Pieces;

/// <summary>A photograph printed on film and set into the piece.</summary>
/// <param name="Name">What the maker calls it.</param>
public sealed record PieceSheet(string Name);
