using Studio.Clock;
using Studio.Engine.Custody;
using Studio.Money;
using Studio.Pieces;

namespace Studio.Steps;

/// <summary>What is written down of a commission, from which follows where it stands and what may come next. Nothing in it is a sentence.</summary>
public sealed record StepFacts
{
    public required int CommissionId { get; init; }

    /// <summary>A key of <see cref="Commissions.Standing"/>.</summary>
    public required string Stands { get; init; }

    /// <summary>Why it ended; empty while it goes on.</summary>
    public string EndedWhy { get; init; } = "";

    /// <summary>Pieces that are to go home: those that failed or were let go are not among them.</summary>
    public required IReadOnlyList<StepPiece> Pieces { get; init; }

    /// <summary>How many keepsakes came in for it and were not crossed out.</summary>
    public required int CameIn { get; init; }

    /// <summary>What of them is here.</summary>
    public required IReadOnlyList<StepThing> Here { get; init; }

    /// <summary>What of them is cast into pieces that do not go to the family: a line each.</summary>
    public IReadOnlyList<string> Staying { get; init; } = [];

    /// <summary>Pieces that failed and in whose place none is made.</summary>
    public IReadOnlyList<string> Owed { get; init; } = [];

    public required CommissionMoney Money { get; init; }

    public required StepPrices Prices { get; init; }

    /// <summary>The moment at which all this is so [UTC].</summary>
    public required DateTime Now { get; init; }

    /// <summary>Where the studio is, for the words.</summary>
    public required TimeZoneInfo Zone { get; init; }

    /// <summary>True when layers lie in a mould or came out of one.</summary>
    public bool Poured => Pieces.Any(p => p.Poured > 0);
}

/// <summary>One piece that is to go home.</summary>
/// <param name="Stage">A key of <see cref="Making"/>.</param>
/// <param name="Unpoured">Layers of the design that are not poured, from the lowest: number from 1, and name.</param>
/// <param name="Poured">Layers that are.</param>
/// <param name="HandWork">The work by hand that its design names.</param>
public sealed record StepPiece(int Id, string Name, string Stage, IReadOnlyList<(int Number, string Name)> Unpoured, int Poured, NextAct Next, ClockTime FullCure, IReadOnlyList<string> HandWork)
{
    /// <summary>True once its work by hand is done.</summary>
    public bool Finished => Stage is Making.Finished or Making.Home;
}

/// <summary>Something of the family's that is here.</summary>
/// <param name="Held">How much of it.</param>
/// <param name="Place">Where it lies; empty where nobody said.</param>
public sealed record StepThing(int Id, string EntryNumber, string Description, CustodyAmount Held, string Place);

/// <summary>The newest price in each state; null for none.</summary>
/// <param name="Sent">One that was sent and not answered.</param>
/// <param name="Lapsed">True where the day until which it stands is over.</param>
public sealed record StepPrices(int? Draft, int? Sent, int? Accepted, bool Lapsed);
