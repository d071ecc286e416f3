using Studio.Commissions;
using Studio.Customers;
using Studio.Engine.Custody;
using Studio.Money;

namespace Studio.Story;

/// <summary>What the list of commissions is asked for.</summary>
/// <param name="Search">What is typed.</param>
/// <param name="Stands">Keys of where they stand; empty means no choice was made.</param>
/// <param name="Finished">With no choice made: also those at home and those let go.</param>
/// <param name="Take">How many lines.</param>
public sealed record CommissionQuestion(string Search, IReadOnlyCollection<string> Stands, bool Finished, int Take);

/// <summary>One line of the list.</summary>
public sealed record CommissionLine(int Id, string Number, string Title, string Remembers, string Customer, string Stands, DateOnly? NeededBy, int Pieces, int Keepsakes)
{
    /// <summary>True while a promised day still matters.</summary>
    public bool Open => !Standing.Ends(Stands);
}

/// <summary>The list as far as it was asked for.</summary>
/// <param name="Lines">By the day they are needed; finished ones last, the newest of those first.</param>
/// <param name="More">True when there are further ones.</param>
/// <param name="AlsoFinished">A search among open ones that would also find finished ones.</param>
/// <param name="Any">True when there is any commission at all.</param>
public sealed record CommissionList(IReadOnlyList<CommissionLine> Lines, bool More, bool AlsoFinished, bool Any);

/// <summary>Everything about one commission.</summary>
public sealed record CommissionStory(
    Commission Commission,
    Customer Customer,
    IReadOnlyList<StoryPiece> Pieces,
    IReadOnlyList<StoryKeepsake> Keepsakes,
    IReadOnlyList<StoryQuote> Quotes,
    CommissionMoney Money,
    IReadOnlyList<StoryDay> Days,
    DateOnly Today,
    TimeZoneInfo Zone);

/// <summary>One casting.</summary>
/// <param name="Time">When it can be with the family; null once it is home, failed or let go.</param>
/// <param name="Failed">Why it failed; empty for one that did not.</param>
public sealed record StoryPiece(int Id, string Name, string Stage, int Layers, int Poured, string Failed, Engine.Time.TimeResult? Time = null);

public sealed record StoryKeepsake(string EntryNumber, string Description, int Count, string Permits, string Custody, string Place, DateOnly? ReturnBy)
{
    public string PermitsLabel => Permissions.For(Permits).OnForm;
}

/// <summary>One version of a price.</summary>
/// <param name="Total">Null while it is not worked out.</param>
public sealed record StoryQuote(int Id, int PieceId, string Piece, int VersionNo, string State, decimal? Total, string Currency, DateOnly ValidUntil);

/// <summary>One day of the day book, newest first, and what happened on it, newest first.</summary>
public sealed record StoryDay(DateOnly Day, IReadOnlyList<StoryLine> Lines);

/// <summary>One sentence of the day book.</summary>
/// <param name="Time">The studio's wall clock.</param>
public sealed record StoryLine(DateTime At, TimeOnly Time, string By, string Kind, string Words);
