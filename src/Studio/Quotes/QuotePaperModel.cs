using Studio.Papers;

namespace Studio.Quotes;

/// <summary>What the quote for the family says. Prices only: what a piece costs the studio has no place here.</summary>
public sealed record QuotePaperModel
{
    public required PaperLetterhead Studio { get; init; }

    public required PaperFormat Format { get; init; }

    /// <summary>The quote's number with its version, such as "Q-26-0012, version 2".</summary>
    public required string Number { get; init; }

    public required DateTime WrittenUtc { get; init; }

    /// <summary>A word for a paper that was not sent, or is drawn again; empty for the one that is sent.</summary>
    public string State { get; init; } = "";

    /// <summary>A sentence for a paper that is not the one that was sent; null for all others.</summary>
    public string? DrawnAgain { get; init; }

    /// <summary>The number of the commission that it is for; null leaves it out.</summary>
    public string? Commission { get; init; }

    /// <summary>The version that it replaces; null for the first.</summary>
    public int? Replaces { get; init; }

    public required PaperPerson For { get; init; }

    /// <summary>Whom the piece remembers; null where nobody is named.</summary>
    public string? Remembers { get; init; }

    /// <summary>A few words of the maker's own, set above the piece.</summary>
    public string? Message { get; init; }

    public required IReadOnlyList<QuotePaperPiece> Pieces { get; init; }

    /// <summary>What the price covers, one thing a line.</summary>
    public IReadOnlyList<string> Included { get; init; } = [];

    public required decimal Net { get; init; }

    /// <summary>Name of the tax, such as VAT.</summary>
    public string TaxName { get; init; } = "Tax";

    /// <summary>Zero leaves the tax line out.</summary>
    public decimal TaxPercent { get; init; }

    public decimal Tax { get; init; }

    public required decimal Total { get; init; }

    public decimal Deposit { get; init; }

    public decimal Balance { get; init; }

    /// <summary>The last day on which the offer stands.</summary>
    public DateOnly? ValidUntil { get; init; }

    /// <summary>The day the family named: a wish, never a promise.</summary>
    public DateOnly? NeededBy { get; init; }

    /// <summary>The day the studio promises; null where none is.</summary>
    public DateOnly? PromiseOn { get; init; }

    /// <summary>How it comes to them, as a sentence: "You collect it from the studio."</summary>
    public string? Delivery { get; init; }

    /// <summary>What of the net is the way to them; zero where that is no line of the price.</summary>
    public decimal DeliveryPrice { get; init; }

    /// <summary>Each keepsake and what will be done with it, a line each.</summary>
    public IReadOnlyList<QuotePaperKeepsake> Keepsakes { get; init; } = [];

    public bool HasLights { get; init; }

    public bool HasButtonCells { get; init; }

    /// <summary>Fittings of which it is not settled whether they hold a button cell.</summary>
    public IReadOnlyList<string> CellsNotSettled { get; init; } = [];

    /// <summary>Care notes beyond the standing ones.</summary>
    public IReadOnlyList<string> Care { get; init; } = [];

    /// <summary>The studio's own words on cancelling, in place of the standing ones.</summary>
    public string? CancellationNote { get; init; }
}

/// <summary>One piece in plain words.</summary>
/// <param name="Size">Its true outer size: "About 126 mm square at the foot, 105 mm high".</param>
/// <param name="Contains">What will be in it, in the order of the drawing.</param>
/// <param name="Price">Its own price where a quote holds several; tax as in the total's net.</param>
public sealed record QuotePaperPiece(string Name, string? Description, string? Size, IReadOnlyList<string> Contains, PaperDrawing? Section = null, int Quantity = 1, decimal? Price = null);

/// <summary>A keepsake and what becomes of it.</summary>
/// <param name="WhatWeDo">Such as "set whole in the second layer" or "copied on film; the photograph itself comes back to you".</param>
public sealed record QuotePaperKeepsake(string Description, string WhatWeDo, string? EntryNumber = null);
