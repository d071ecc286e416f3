using System.Globalization;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>The kinds of link in a chain of custody.</summary>
public static class CustodyLink
{
    public const string Received = "received";
    public const string Moved = "moved";
    public const string Weighed = "weighed";
    public const string Prepared = "prepared";
    public const string Copied = "copied";
    public const string Embedded = "embedded";
    public const string CopyCast = "copy-cast";
    public const string Returned = "returned";
    public const string Corrected = "corrected";
    public const string Photographed = "photographed";
    public const string Note = "note";

    private const string UndonePrefix = "undone:";

    /// <summary>The kind of a link that takes back another one.</summary>
    public static string Undoes(int eventId) => UndonePrefix + eventId.ToString(CultureInfo.InvariantCulture);

    /// <summary>Which link this kind takes back; null for any other kind.</summary>
    public static int? UndoneBy(string kind) =>
        kind.StartsWith(UndonePrefix, StringComparison.Ordinal) && int.TryParse(kind.AsSpan(UndonePrefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : null;

    /// <summary>True for links that can be taken back; a receipt cannot, and a correction is corrected again.</summary>
    public static bool CanBeUndone(string kind) => kind is Moved or Weighed or Prepared or Copied or Embedded or CopyCast or Returned or Note;
}

/// <summary>What is true now.</summary>
/// <param name="Place">Where it is; empty for a chain without a place.</param>
/// <param name="Custody"><c>here</c>, <c>in-piece</c> or <c>returned</c>.</param>
/// <param name="MassG">As last weighed [g], whatever was cast or went back since.</param>
/// <param name="CastG">What went into pieces since, where it was weighed [g].</param>
/// <param name="ReturnedG">What went back, where it was weighed [g].</param>
/// <param name="LeftOver">True when a part is cast and the rest is still here.</param>
/// <param name="Copied">True when a copy was made.</param>
/// <param name="UndoId">The one link that can be taken back now.</param>
public sealed record ChainNow(string Place, string Custody, double? MassG, double? CastG, double? ReturnedG, bool LeftOver, bool Copied, int? UndoId)
{
    /// <summary>True while there is something of it to touch in the studio.</summary>
    public bool InHand => Custody == CustodyChain.Here || LeftOver;

    /// <summary>What should still be here by the scale [g]; null where nobody weighed.</summary>
    public double? InHandG => MassG - (CastG ?? 0) - (ReturnedG ?? 0);
}

/// <summary>Reads the chain: what is true now follows from the links that stand, and from nothing else.</summary>
public static class CustodyChain
{
    public const string Here = "here";
    public const string InPiece = "in-piece";
    public const string Returned = "returned";

    /// <summary>The links that were not taken back, oldest first, without the links that took others back.</summary>
    public static IReadOnlyList<KeepsakeEvent> Standing(IEnumerable<KeepsakeEvent> events)
    {
        var all = events.OrderBy(e => e.Id == 0 ? int.MaxValue : e.Id).ToList(); // one not saved yet is the newest
        var undone = all.Select(e => CustodyLink.UndoneBy(e.Kind)).OfType<int>().ToHashSet();
        return [.. all.Where(e => CustodyLink.UndoneBy(e.Kind) is null && (e.Id == 0 || !undone.Contains(e.Id)))];
    }

    /// <summary>What the chain says now.</summary>
    public static ChainNow Now(IEnumerable<KeepsakeEvent> events)
    {
        var links = Standing(events);
        var custody = links.LastOrDefault(e => e.Kind is CustodyLink.Received or CustodyLink.Embedded or CustodyLink.Returned)?.Kind switch
        {
            CustodyLink.Embedded => InPiece,
            CustodyLink.Returned => Returned,
            _ => Here,
        };
        var mass = links.LastOrDefault(e => e.MassG is not null && e.Kind is CustodyLink.Received or CustodyLink.Weighed or CustodyLink.Corrected);
        // a weighing counts only what is in hand, so what left before it is left out of the sum
        var scale = links.LastOrDefault(e => e.Kind == CustodyLink.Weighed);
        var since = links.SkipWhile(e => scale is not null && !ReferenceEquals(e, scale)).ToList();
        return new ChainNow(
            links.LastOrDefault(e => e.Place.Length > 0)?.Place ?? "",
            custody,
            mass?.MassG,
            Sum(since, CustodyLink.Embedded),
            Sum(since, CustodyLink.Returned),
            custody == InPiece && links.Last(e => e.Kind == CustodyLink.Embedded).Place.Length == 0,
            links.Any(e => e.Kind == CustodyLink.Copied),
            links.LastOrDefault(e => CustodyLink.CanBeUndone(e.Kind))?.Id);
    }

    /// <summary>What came in, what was cast and what went back by the scale, as a sentence; null where fewer than two of them were weighed.</summary>
    public static string? MassStory(IEnumerable<KeepsakeEvent> events)
    {
        var links = Standing(events);
        var came = links.LastOrDefault(e => e.MassG is not null && e.Kind is CustodyLink.Received or CustodyLink.Corrected)?.MassG;
        var (cast, back) = (Sum(links, CustodyLink.Embedded), Sum(links, CustodyLink.Returned));
        if (came is null || (cast ?? back) is null)
        {
            return null;
        }

        List<string> said = [$"{Say.Grams(came.Value)} came in"];
        said.AddRange(cast is { } c ? [$"{Say.Grams(c)} went into the casting"] : []);
        said.AddRange(back is { } b ? [$"{Say.Grams(b)} went back"] : []);
        var rest = came.Value - (cast ?? 0) - (back ?? 0);
        var story = string.Join(", ", said) + ".";
        return Math.Abs(rest) < 0.05 || Now(links).Custody != Returned ? story : $"{story} {Say.Grams(Math.Abs(rest))} {(rest > 0 ? "are not accounted for: dust, drying, or a slip of the scale." : "more than came in: weigh again, or correct a figure.")}";
    }

    private static double? Sum(IReadOnlyList<KeepsakeEvent> links, string kind) =>
        links.Any(e => e.Kind == kind && e.MassG is not null) ? links.Where(e => e.Kind == kind).Sum(e => e.MassG ?? 0) : null;
}
