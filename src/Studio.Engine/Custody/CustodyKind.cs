namespace Studio.Engine.Custody;

/// <summary>What can happen to a keepsake: open keys, stored with each entry of its log.</summary>
public static class CustodyKind
{
    /// <summary>It came in: count, grams where weighed, from whom, place.</summary>
    public const string Received = "received";

    /// <summary>It lies elsewhere in the studio.</summary>
    public const string Moved = "moved";

    /// <summary>All that is here was put on the scale.</summary>
    public const string Weighed = "weighed";

    /// <summary>Something was done to it before resin.</summary>
    public const string Prepared = "prepared";

    /// <summary>It was cut or taken apart; the entry's count is how many more pieces there are.</summary>
    public const string Divided = "divided";

    /// <summary>A copy was made of it.</summary>
    public const string Copied = "copied";

    /// <summary>So much of it went into a layer.</summary>
    public const string SetIn = "set-in";

    /// <summary>A copy of it went into a layer; nothing of the thing itself.</summary>
    public const string CopySetIn = "copy-set-in";

    /// <summary>What an earlier entry set in is out again: its pour was withdrawn.</summary>
    public const string TakenOut = "taken-out";

    /// <summary>So much of it went back to the family.</summary>
    public const string Returned = "returned";

    /// <summary>So much of it was used up in a test that is named.</summary>
    public const string Used = "used";

    /// <summary>So much of it is lost; why stands with it.</summary>
    public const string Lost = "lost";

    /// <summary>What was written down was wrong; count and grams are what came in, as it should have read.</summary>
    public const string Corrected = "corrected";

    /// <summary>Photographs were added.</summary>
    public const string Photographed = "photographed";

    /// <summary>A remark.</summary>
    public const string Note = "note";

    /// <summary>An earlier entry was a mistake and counts no longer.</summary>
    public const string Undone = "undone";

    /// <summary>The whole keepsake was logged by mistake; it is kept, crossed out.</summary>
    public const string Withdrawn = "withdrawn";

    /// <summary>It went home inside its piece; written by versions before 0.4, where a piece's going home was not known.</summary>
    public const string HomeInPiece = "home-in-piece";

    /// <summary>All keys.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        Received, Moved, Weighed, Prepared, Divided, Copied, SetIn, CopySetIn, TakenOut, Returned, Used, Lost, Corrected, Photographed, Note, Undone, Withdrawn, HomeInPiece,
    ];

    /// <summary>Entries by which an amount leaves the hand.</summary>
    public static bool Leaves(string kind) => kind is SetIn or Returned or Used or Lost;

    /// <summary>Entries that a person can take back where the rest of the log still adds up without them.</summary>
    public static bool CanBeUndone(string kind) => kind is Moved or Weighed or Prepared or Divided or Copied or SetIn or CopySetIn or Returned or Used or Lost or Note or Withdrawn;
}
