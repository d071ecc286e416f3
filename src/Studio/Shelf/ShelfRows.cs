using Studio.Clock;
using Studio.Engine.Layers;
using Studio.Pieces;

namespace Studio.Shelf;

/// <summary>What the database says for the shelf, before the clock looks at it; a page keeps it and recomputes as time goes by.</summary>
public sealed record ShelfRows
{
    /// <summary>Pieces in the making, and drawn ones whose commission is agreed or waits for a yes.</summary>
    public required IReadOnlyList<ShelfPiece> Pieces { get; init; }

    public required ILookup<int, ShelfLayer> Layers { get; init; }

    public required ILookup<int, ShelfPour> Pours { get; init; }

    /// <summary>What a layer lacks before it can be poured, by piece and layer from 0.</summary>
    public required ILookup<(int PieceId, int Order), string> Wants { get; init; }

    /// <summary>What is known of the lots in the moulds.</summary>
    public required LotCures Cures { get; init; }

    /// <summary>By place, from the earliest pour on; empty before the first pour.</summary>
    public required IReadOnlyDictionary<string, ClockRoom> Rooms { get; init; }

    /// <summary>True when there are more pieces than a shelf shows.</summary>
    public required bool Cut { get; init; }
}

/// <summary>One piece as the shelf needs it, no more.</summary>
public sealed record ShelfPiece
{
    public required int Id { get; init; }

    public required string Name { get; init; }

    public required string Stage { get; init; }

    /// <summary>Where it cures; empty for the casting room.</summary>
    public required string StandsIn { get; init; }

    public DateTime? DemouldedAt { get; init; }

    public FormerSpec? Former { get; init; }

    /// <summary>Hand work beyond pouring, for the minutes that finishing takes.</summary>
    public required List<PieceTask> Tasks { get; init; }

    public required Moulds.Mould Mould { get; init; }

    public required int CommissionId { get; init; }

    public required string Number { get; init; }

    public required string Remembers { get; init; }

    public required string Stands { get; init; }

    public DateOnly? NeededBy { get; init; }

    /// <summary>Keepsakes that came in for the commission; counted only while the piece is drawn.</summary>
    public required int Keepsakes { get; init; }

    /// <summary>A deposit was received.</summary>
    public required bool Deposit { get; init; }
}

/// <summary>A layer of the design.</summary>
public sealed record ShelfLayer(int PieceId, int Order, string Name, string Colour, double? ToMm, double? ThicknessMm);

/// <summary>A layer that was poured.</summary>
public sealed record ShelfPour(int Id, int PieceId, int Order, string Name, string Colour, double FromMm, double ToMm, DateTime StartedAt, Engine.Cure.CureSheet Sheet, Engine.Cure.Kinetics? Kinetics)
{
    public int ResinId { get; init; }

    public string Lot { get; init; } = "";

    /// <summary>What was foretold of it when it was poured.</summary>
    public PourForetold? Foretold { get; init; }
}
