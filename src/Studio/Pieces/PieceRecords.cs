using Studio.Moulds;
using Studio.Resins;
using Studio.Stores;

namespace Studio.Pieces;

/// <summary>Everything the design page shows of one piece.</summary>
public sealed record PieceDesk
{
    /// <summary>The design, loose from the database, with mould and resins.</summary>
    public required Piece Piece { get; init; }

    /// <summary>The design as it was read, to see whether somebody else kept another meanwhile.</summary>
    public required string ReadAs { get; init; }

    public required string CommissionNumber { get; init; }

    public required string CommissionTitle { get; init; }

    public required string Remembers { get; init; }

    /// <summary>Those in use and those this piece uses already.</summary>
    public required IReadOnlyList<Mould> Moulds { get; init; }

    public required IReadOnlyList<Resin> Resins { get; init; }

    public required IReadOnlyList<Material> Materials { get; init; }

    public required KeepsakeShelf Keepsakes { get; init; }

    public required IReadOnlyList<MouldLayer> Poured { get; init; }
}

/// <summary>What the page that begins a piece offers.</summary>
public sealed record PieceChoices
{
    public required int CommissionId { get; init; }

    public required string CommissionNumber { get; init; }

    public required string CommissionTitle { get; init; }

    public required string Remembers { get; init; }

    public required IReadOnlyList<Mould> Moulds { get; init; }

    public required IReadOnlyList<Resin> Resins { get; init; }

    /// <summary>Pieces already drawn for this commission.</summary>
    public required IReadOnlyList<string> Siblings { get; init; }
}
