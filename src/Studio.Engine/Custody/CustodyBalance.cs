namespace Studio.Engine.Custody;

/// <summary>
/// Where everything is that came in. In pieces, always: <c>came in + divided = held + set in + returned + used + lost</c>.
/// In grams, where everything was weighed: <c>came in = held + set in + returned + used + lost + by difference</c>.
/// </summary>
public sealed record CustodyBalance
{
    /// <summary>What came in, as corrected.</summary>
    public required CustodyAmount CameIn { get; init; }

    /// <summary>How many more pieces there are since it was divided [pieces].</summary>
    public required int Divided { get; init; }

    /// <summary>What is here; its grams are null where nobody knows them until it is weighed.</summary>
    public required CustodyAmount Held { get; init; }

    /// <summary>What is in pieces.</summary>
    public required CustodyAmount SetIn { get; init; }

    /// <summary>What went back.</summary>
    public required CustodyAmount Returned { get; init; }

    /// <summary>What was used up in tests.</summary>
    public required CustodyAmount Used { get; init; }

    /// <summary>What is lost.</summary>
    public required CustodyAmount Lost { get; init; }

    /// <summary>Grams that only the scale tells of: dried off, dust, or left unweighed between two weighings; below 0 where it became heavier [g].</summary>
    public required double ByDifferenceG { get; init; }

    /// <summary>The most that can be here, where something left unweighed and the very figure is not known [g]; null where nothing can be said.</summary>
    public double? HeldAtMostG { get; init; }

    /// <summary>True while something of it is here.</summary>
    public bool InHand => Held.Count > 0 || Held.MassG > CustodyLedger.ScaleSlackG;

    /// <summary>True when the pieces add up.</summary>
    public bool PiecesAddUp => CameIn.Count + Divided == Held.Count + SetIn.Count + Returned.Count + Used.Count + Lost.Count;

    /// <summary>Whether the grams add up; null where one of them was never weighed.</summary>
    public bool? GramsAddUp =>
        CameIn.MassG is { } came && Held.MassG is { } held && SetIn.MassG is { } set && Returned.MassG is { } back && Used.MassG is { } used && Lost.MassG is { } lost
            ? Math.Abs(came - (held + set + back + used + lost + ByDifferenceG)) <= 1e-6 * Math.Max(1, came)
            : null;
}

/// <summary>What one entry put into a piece and is still there.</summary>
/// <param name="EntryId">The entry.</param>
/// <param name="Amount">How much; a copy is nothing of the thing itself.</param>
/// <param name="Copy">True for a copy.</param>
public sealed record CustodySet(int EntryId, CustodyAmount Amount, bool Copy, int? PieceId, int? LayerId, int? PourId);

/// <summary>What is true now of one keepsake.</summary>
public sealed record CustodyState
{
    public required CustodyBalance Balance { get; init; }

    /// <summary>Where what is held lies; empty where nothing is, or nobody said.</summary>
    public required string Place { get; init; }

    /// <summary>True once a copy was made.</summary>
    public required bool Copied { get; init; }

    /// <summary>True when the whole keepsake was logged by mistake.</summary>
    public required bool Withdrawn { get; init; }

    /// <summary>What is in pieces, entry by entry.</summary>
    public required IReadOnlyList<CustodySet> SetIn { get; init; }

    /// <summary>The newest entry that can be taken back; null for none.</summary>
    public required int? UndoId { get; init; }

    /// <summary>What does not add up: the entry and a whole sentence. Empty for a log that only the program wrote.</summary>
    public required IReadOnlyList<CustodyFault> Faults { get; init; }

    /// <summary>A key for lists: where all of it, or what matters most of it, is.</summary>
    public string Whereabouts => this switch
    {
        { Withdrawn: true } => CustodyWhereabouts.Withdrawn,
        { Balance.InHand: true } => CustodyWhereabouts.Here,
        { Balance.SetIn.Count: > 0 } or { Balance.SetIn.MassG: > 0 or null } => CustodyWhereabouts.InPiece,
        { Balance.Returned.Count: > 0 } or { Balance.Returned.MassG: > 0 or null } => CustodyWhereabouts.Returned,
        { Balance.Lost.Count: > 0 } or { Balance.Lost.MassG: > 0 or null } => CustodyWhereabouts.Lost,
        { Balance.Used.Count: > 0 } or { Balance.Used.MassG: > 0 or null } => CustodyWhereabouts.Used,
        _ => CustodyWhereabouts.Here,
    };
}

/// <summary>Something in a log that cannot be.</summary>
/// <param name="EntryId">The entry that shows it.</param>
/// <param name="Message">A whole sentence.</param>
public sealed record CustodyFault(int EntryId, string Message);

/// <summary>Keys of where a keepsake is, for lists.</summary>
public static class CustodyWhereabouts
{
    public const string Here = "here";
    public const string InPiece = "in-piece";
    public const string Returned = "returned";
    public const string Lost = "lost";
    public const string Used = "used";
    public const string Withdrawn = "withdrawn";
}
