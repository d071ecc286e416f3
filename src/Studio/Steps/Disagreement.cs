using System.Globalization;
using Studio.Commissions;
using Studio.Keepsakes;
using Studio.Shell;

namespace Studio.Steps;

/// <summary>What speaks against a commission standing somewhere: sentences written from facts, none where nothing does.</summary>
public static class Disagreement
{
    /// <summary>What disagrees with standing at <paramref name="standing"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No such place to stand.</exception>
    public static IReadOnlyList<string> With(string standing, StepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return standing switch
        {
            Standing.Asked => [.. Agreed(facts), .. Layers(facts)],
            Standing.Quoted => [.. facts.Prices.Sent is null ? ["No price that was sent waits for an answer."] : Array.Empty<string>(), .. Agreed(facts), .. Layers(facts)],
            Standing.Agreed => [.. facts.Prices.Accepted is null ? ["No price is agreed."] : Array.Empty<string>(), .. Layers(facts)],
            Standing.Making => Making(facts),
            Standing.Ready => Ready(facts),
            Standing.Home => [.. Ready(facts), .. Things(facts), .. Owed(facts)],
            Standing.LetGo => [.. Layers(facts), .. Things(facts), .. Paid(facts)],
            Standing.CrossedOut => CrossedOut(facts),
            _ => throw new ArgumentOutOfRangeException(nameof(standing), standing, "No such place for a commission to stand."),
        };
    }

    /// <summary>Why it cannot be crossed out as logged by mistake, whatever reason is given: things, pours and money are no mistake.</summary>
    public static IReadOnlyList<string> CrossedOut(StepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return [.. Layers(facts), .. Things(facts), .. Paid(facts)];
    }

    /// <summary>The pieces, in whole sentences: what keeps them from being ready.</summary>
    public static IReadOnlyList<string> Ready(StepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var pieces = facts.Pieces.Count == 0 && facts.Owed.Count == 0 ? ["No piece is drawn for it."] : facts.Pieces.SelectMany(p => Piece(p, facts));
        return [.. facts.Owed.Select(name => $"{name} failed, and none is made in its place."), .. pieces];
    }

    /// <summary>What of the family's is here; none where nothing is.</summary>
    public static IReadOnlyList<string> Things(StepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return
        [
            .. facts.Here.Count == 0 ? Array.Empty<string>() : [$"{Count(facts.Here.Count, "keepsake is", "keepsakes are")} still here: {string.Join("; ", facts.Here.Select(Thing))}."],
            .. facts.Staying.Count == 0 ? Array.Empty<string>() : [$"In a piece that does not go to them: {string.Join("; ", facts.Staying)}."],
        ];
    }

    private static string[] Making(StepFacts facts) => facts switch
    {
        { Pieces.Count: 0 } => ["No piece is drawn for it."],
        { Poured: false } => ["No layer is poured yet."],
        _ => [],
    };

    private static IEnumerable<string> Piece(StepPiece piece, StepFacts facts)
    {
        foreach (var (number, name) in piece.Unpoured)
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"{piece.Name}: layer {number}, {name}, is not poured.");
        }

        if (piece is { Unpoured.Count: 0, Poured: 0 })
        {
            yield return $"{piece.Name}: its layers are not designed.";
        }

        if (piece.Stage == Pieces.Making.Casting)
        {
            yield return $"{piece.Name} is in its mould.";
        }
        else if (piece.Stage == Pieces.Making.Demoulded)
        {
            yield return piece.HandWork.Count == 0 ? $"{piece.Name} is not finished." : $"{piece.Name} is not finished: {string.Join(", ", piece.HandWork)}.";
        }

        if (piece.Poured > 0 && piece.Unpoured.Count == 0)
        {
            if (piece.FullCure.At is not { } at)
            {
                yield return $"When {piece.Name} is fully cured is not known. {piece.FullCure.RestsOn}";
            }
            else if (!piece.FullCure.Reached(facts.Now))
            {
                yield return $"{piece.Name} is fully cured {Say.When(at, facts.Zone, facts.Now)}, not before.";
            }
        }
    }

    private static string[] Agreed(StepFacts facts) => facts.Prices.Accepted is null ? [] : ["A price is agreed."];

    private static IEnumerable<string> Layers(StepFacts facts) => facts.Pieces.Where(p => p.Poured > 0).Select(p => $"{p.Name}: {Count(p.Poured, "layer is", "layers are")} poured.");

    private static string[] Owed(StepFacts facts) => facts.Money switch
    {
        { Agreed: null } => ["No price is agreed, so nothing is known of what they owe."],
        { Left: > 0 } m => [$"{Say.Money(m.Left, m.Currency)} of {Say.Money(m.Agreed ?? 0, m.Currency)} is open."],
        { TooMuch: > 0 } m => [$"{Say.Money(m.TooMuch, m.Currency)} more was paid than agreed."],
        _ => [],
    };

    private static string[] Paid(StepFacts facts) => facts.Money.Paid > 0 ? [$"{Say.Money(facts.Money.Paid, facts.Money.Currency)} was paid."] : [];

    private static string Thing(StepThing t) => $"{t.EntryNumber}, {t.Description} ({CustodyWords.Amount(t.Held.Count, t.Held.MassG)}{(t.Place.Length > 0 ? ", " + t.Place : "")})";

    private static string Count(int n, string one, string many) => n == 1 ? "1 " + one : string.Create(CultureInfo.InvariantCulture, $"{n} {many}");
}
