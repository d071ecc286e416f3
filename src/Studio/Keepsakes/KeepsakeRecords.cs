using Studio.Engine;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>How taking in ended: the number it got, or a sentence that says what to do.</summary>
/// <param name="Words">Empty when it is kept.</param>
/// <param name="EntryNumber">The number to write on the bag; empty when it is not kept.</param>
/// <param name="Again">True when this very form had been kept before and nothing was added.</param>
public sealed record TakenIn(int Id, string EntryNumber, string Words = "", bool Again = false)
{
    public bool Ok => EntryNumber.Length > 0;
}

/// <summary>What the intake needs to know of its commission.</summary>
public sealed record IntakeFor(int CommissionId, string Number, string Title, string Remembers, string Customer, IReadOnlyList<string> Places, int Before);

/// <summary>A photograph of a keepsake.</summary>
public sealed record KeepsakePhoto(int Id, string Hash, string FileName, int WidthPx, int HeightPx, string TakenAt);

/// <summary>One line of the ledger.</summary>
public sealed record LedgerLine
{
    public int Id { get; init; }

    public string EntryNumber { get; init; } = "";

    public string Kind { get; init; } = "";

    public string KindLabel => KeepsakeKinds.Label(Kind);

    public string Description { get; init; } = "";

    public int Count { get; init; }

    public double? MassG { get; init; }

    public string Permits { get; init; } = "";

    public string PermitsLabel => Permissions.For(Permits).OnForm;

    /// <summary>How many are here [pieces].</summary>
    public int HeldCount { get; init; }

    public string Place { get; init; } = "";

    public string Custody { get; init; } = "";

    public DateTime ReceivedAt { get; init; }

    public DateOnly? ReturnBy { get; init; }

    public int CommissionId { get; init; }

    public string Commission { get; init; } = "";

    public string Remembers { get; init; } = "";

    public string Customer { get; init; } = "";

    public string? Hash { get; init; }
}

/// <summary>A part of the ledger.</summary>
/// <param name="Lines">Newest first.</param>
/// <param name="More">True when there are more than were asked for.</param>
/// <param name="Any">True when the studio holds any keepsake at all, whatever was searched.</param>
/// <param name="NumberNote">Set when the search looks like an entry number with a slip in it: what to compare.</param>
public sealed record LedgerView(IReadOnlyList<LedgerLine> Lines, bool More, bool Any, string NumberNote);

/// <summary>One link of the chain as it is read.</summary>
/// <param name="Undone">True when it was taken back later; it stays readable.</param>
/// <param name="CanUndo">True for the newest entry that can be taken back.</param>
/// <param name="SetRight">What went into a piece by this entry and is still there, so that its amount can be set right; null else.</param>
public sealed record ChainLine(int Id, DateTime At, string By, string Kind, string Words, bool Undone, bool CanUndo, CustodyAmount? SetRight = null);

/// <summary>An act that the page offers.</summary>
/// <param name="Act">A key of <see cref="CustodyKind"/>.</param>
/// <param name="Refusal">Why it cannot be done now; null when it can.</param>
public sealed record OfferedAct(string Act, string Label, string? Refusal);

/// <summary>A keepsake's page.</summary>
public sealed record KeepsakeView(
    Keepsake Keepsake,
    string CommissionNumber,
    string Remembers,
    string Customer,
    CustodyState Now,
    string Whereabouts,
    string Balance,
    string Spoken,
    IReadOnlyList<KeepsakePhoto> Photos,
    IReadOnlyList<ChainLine> Chain,
    IReadOnlyList<Finding> Findings,
    IReadOnlyList<OfferedAct> Acts,
    IReadOnlyList<PieceName> Pieces)
{
    /// <summary>What the family permits.</summary>
    public PermissionRule Permission { get; } = Permissions.For(Keepsake.Permits);
}

/// <summary>A keepsake as a piece's design wants it.</summary>
/// <param name="Permits">A key of <see cref="Permissions"/>.</param>
/// <param name="MayBeCast">False when the family's word, the material or its whereabouts forbid it.</param>
/// <param name="WhyNot">The sentence that says why; empty when it may.</param>
/// <param name="Findings">What the material needs before resin.</param>
public sealed record PieceKeepsake(int Id, int Version, string EntryNumber, string Kind, string KindLabel, string Description, int Count, double? MassG, string Permits, string Place, string Custody, string? Hash, bool MayBeCast, string WhyNot, IReadOnlyList<Finding> Findings);
