using System.Globalization;
using Studio.Engine.Custody;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>Names that a log's references stand for now.</summary>
/// <param name="Pieces">By id.</param>
/// <param name="Pours">By id.</param>
public sealed record CustodyNames(IReadOnlyDictionary<int, string> Pieces, IReadOnlyDictionary<int, PourName> Pours)
{
    public static CustodyNames None { get; } = new(new Dictionary<int, string>(), new Dictionary<int, PourName>());
}

/// <summary>Writes an entry of the log as a sentence, from its data and the names as they are now.</summary>
public static class CustodyWords
{
    /// <summary>The sentence.</summary>
    /// <param name="e">The entry.</param>
    /// <param name="log">The whole log, for what the entry refers to and where it lay before.</param>
    /// <param name="names">What its references are called.</param>
    public static string Of(KeepsakeEvent e, IReadOnlyList<KeepsakeEvent> log, CustodyNames names)
    {
        ArgumentNullException.ThrowIfNull(e);
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(names);
        return e.OldWords.Length > 0 ? Old(e) : e.Kind switch
        {
            CustodyKind.Received => $"Came {e.Words}{(e.Whom.Length > 0 ? $" from {e.Whom}" : "")}{At(e, " and was put here: ")}.{Weighed(e)}",
            CustodyKind.Moved => $"Moved{From(e, log)} to {e.Place}{Typed(e, ": ")}",
            CustodyKind.Weighed => $"Weighed: {Grams(e.MassG)}.{Typed(e, " ")}",
            CustodyKind.Prepared => "Prepared" + Typed(e, ": "),
            CustodyKind.Divided => $"Divided: {Pieces(e.Count ?? 0)} more.{Typed(e, " ")}",
            CustodyKind.Copied => "Copied" + Typed(e, ": "),
            CustodyKind.SetIn => $"{Amount(e)} set into {Where(e, names)}{At(e, "; the rest lies here: ")}.{Typed(e, " ")}",
            CustodyKind.CopySetIn => $"A copy was set into {Where(e, names)}; the original stayed here.{Typed(e, " ")}",
            CustodyKind.TakenOut => $"Out of {Where(e, names)} again, for its pour was taken back{At(e, ". It lies here: ")}.{Typed(e, " ")}",
            CustodyKind.Returned => $"{Amount(e)} went back{(e.Whom.Length > 0 ? $" with {e.Whom}" : "")}.{Typed(e, " ")}",
            CustodyKind.Used => $"{Amount(e)} used up in a test{Typed(e, ": ")}",
            CustodyKind.Lost => $"{Amount(e)} declared lost{Typed(e, ": ")}",
            CustodyKind.Corrected => $"Corrected: {string.Join("; ", e.Changes.Select(Change))}. Why: {Say.Sentence(e.Words)}",
            CustodyKind.Photographed => e.Count is 1 ? "A photograph was added." : $"{N(e.Count ?? 0)} photographs were added.",
            CustodyKind.Note => Say.Sentence(e.Words),
            CustodyKind.Undone => log.FirstOrDefault(o => o.Id == e.RefId) is { } taken ? $"Taken back: “{Of(taken, log, names)}”{Typed(e, " ")}" : "An earlier entry was taken back.",
            CustodyKind.Withdrawn => "Crossed out: it was logged by mistake" + Typed(e, ". "),
            CustodyKind.HomeInPiece => $"Went home in its piece{(e.Whom.Length > 0 ? $" with {e.Whom}" : "")}.",
            var unknown => $"An entry of a kind that this version does not know (“{unknown}”).",
        };
    }

    /// <summary>An amount: "5 of them", "40.0 g", "5 of them, 10.0 g", "a part, not weighed".</summary>
    public static string Amount(int? count, double? massG) => (count ?? 0, massG) switch
    {
        (0, null) => "a part, not weighed",
        (0, { } g) => Say.Grams(g),
        (var n, null) => Pieces(n),
        (var n, { } g) => $"{Pieces(n)}, {Say.Grams(g)}",
    };

    /// <summary>Where a keepsake is, in a few words.</summary>
    /// <exception cref="InvalidOperationException">The key is none of <see cref="CustodyWhereabouts"/>.</exception>
    public static string Label(string whereabouts) => whereabouts switch
    {
        CustodyWhereabouts.Here => "Here",
        CustodyWhereabouts.InPiece => "In a piece",
        CustodyWhereabouts.Returned => "Gone home",
        CustodyWhereabouts.Lost => "Lost",
        CustodyWhereabouts.Used => "Used in a test",
        CustodyWhereabouts.Withdrawn => "Crossed out",
        var unknown => throw new InvalidOperationException($"There is no whereabouts '{unknown}'."),
    };

    /// <summary>The balance as sentences: what came in and where it all is.</summary>
    public static string Balance(CustodyBalance b)
    {
        ArgumentNullException.ThrowIfNull(b);
        var parts = new List<string>();
        Add(b.Held, "here");
        Add(b.SetIn, "in a piece");
        Add(b.Returned, "back with the family");
        Add(b.Used, "used up in a test");
        Add(b.Lost, "lost");
        var came = $"{Amount(b.CameIn.Count, b.CameIn.MassG)} came in{(b.Divided > 0 ? $", divided into {N(b.CameIn.Count + b.Divided)}" : "")}";
        var scale = Math.Abs(b.ByDifferenceG) >= 0.05 ? $" {Say.Grams(Math.Abs(b.ByDifferenceG))} {(b.ByDifferenceG > 0 ? "less by the scale: dried off, dust, or a slip" : "more by the scale: moisture, or a slip")}." : "";
        var unknown = b is { CameIn.MassG: not null, GramsAddUp: null } ? " The grams cannot be added up: something left that nobody weighed." : "";
        return parts.Count == 1 && b.Held == b.CameIn && scale.Length == 0 ? came + "; all of it is here." : $"{came}: {string.Join(", ", parts)}.{scale}{unknown}";

        void Add(CustodyAmount amount, string where)
        {
            if (amount.Count > 0 || amount.MassG is not 0)
            {
                parts.Add($"{Amount(amount.Count, amount.MassG)} {where}");
            }
        }
    }

    /// <summary>Ends what was typed with a full stop, so that the log reads as sentences.</summary>
    internal static string Change(FieldChange c) => $"{c.Field} from {Quoted(c.Was)} to {Quoted(c.Became)}";

    private static string Old(KeepsakeEvent e) => (e.Kind, e.PieceId) switch
    {
        (CustodyKind.SetIn or CustodyKind.CopySetIn, null) => $"{Say.Sentence(e.OldWords)} (As it was written then; which piece that is now is not known.)",
        _ => Say.Sentence(e.OldWords),
    };

    private static string Amount(KeepsakeEvent e) => Upper(Amount(e.Count, e.MassG)) + (e.Kind == CustodyKind.Returned ? "" : e is { Count: 1 } or { Count: null or 0, MassG: null } ? " was" : " were");

    private static string Where(KeepsakeEvent e, CustodyNames names)
    {
        var pour = e.PourId is { } p ? names.Pours.GetValueOrDefault(p) : null;
        var piece = (e.PieceId ?? pour?.PieceId) is { } id ? names.Pieces.GetValueOrDefault(id, "a piece that is not in the book any more") : "a piece that is not known";
        return pour is null ? piece : $"{piece}, layer {N(pour.LayerNumber)}, {pour.LayerName}";
    }

    private static string From(KeepsakeEvent e, IReadOnlyList<KeepsakeEvent> log)
    {
        var before = CustodyLog.Read(log.Where(o => o.Id < e.Id)).Place;
        return before.Length > 0 ? " from " + before : "";
    }

    private static string At(KeepsakeEvent e, string lead) => e.Place.Length > 0 ? lead + e.Place : "";

    private static string Weighed(KeepsakeEvent e) => e.MassG is { } g ? $" It weighed {Say.Grams(g)}." : "";

    private static string Typed(KeepsakeEvent e, string lead) => e.Words.Trim().Length > 0 ? lead + Say.Sentence(e.Words) : lead is ": " or ". " ? "." : "";

    private static string Pieces(int n) => n == 1 ? "1 piece" : N(n) + " pieces";

    private static string Quoted(string text) => string.IsNullOrWhiteSpace(text) ? "nothing" : $"“{text.Trim()}”";

    private static string Grams(double? g) => g is { } grams ? Say.Grams(grams) : "nothing";

    private static string Upper(string text) => char.ToUpperInvariant(text[0]) + text[1..];

    private static string N(int n) => n.ToString(CultureInfo.InvariantCulture);
}
