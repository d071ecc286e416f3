using System.Globalization;
using Studio.Clock;
using Studio.Commissions;
using Studio.Shell;

namespace Studio.Steps;

/// <summary>From facts to the one next step, the others, and the sentence of where it stands.</summary>
public static class NextSteps
{
    /// <summary>Everything that the commission's page says of where it stands.</summary>
    public static StepView Of(StepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        var moves = Moves.From(facts.Stands).Select(m => Move(m.Label, m.To, m.Words, facts)).ToList();
        var main = Next(facts, moves);
        return new(
            facts.CommissionId,
            facts.Stands,
            Sentence(facts),
            main,
            [.. moves.Where(m => m != main)],
            [.. Standing.All.Where(s => s.Key != facts.Stands && moves.TrueForAll(m => m.To != s.Key)).Select(s => Move(s.Label, s.Key, Moves.SetRight(s.Key), facts))]);
    }

    private static Step Move(string label, string to, string words, StepFacts facts) => new(label, "", to, words, Disagreement.With(to, facts));

    private static Step? Next(StepFacts facts, List<Step> moves) => facts.Stands switch
    {
        Standing.Asked or Standing.Quoted => Price(facts, moves),
        Standing.Agreed => Begin(facts, moves),
        Standing.Making => Making(facts, moves),
        Standing.Ready => facts.Here.Count > 0 ? Pack(facts) : moves.Find(m => m.To == Standing.Home),
        Standing.Home or Standing.LetGo => facts.Here.Count > 0 ? Pack(facts) : null,
        _ => null,
    };

    private static Step? Price(StepFacts facts, List<Step> moves) => facts switch
    {
        { Prices.Accepted: not null } => moves.Find(m => m.To == Standing.Agreed),
        { Prices.Sent: { } sent } => facts.Stands == Standing.Quoted ? Step.Page("Note their answer", Address($"/quotes/{sent}")) : moves.Find(m => m.To == Standing.Quoted),
        { Prices.Draft: { } draft } => Step.Page("Look over the price and send it", Address($"/quotes/{draft}")),
        { Pieces: [var piece, ..] } => Step.Page("Make the price", Address($"/pieces/{piece.Id}/quote")),
        _ => Step.Page("Draw the piece", Address($"/commissions/{facts.CommissionId}/pieces/new")),
    };

    private static Step? Begin(StepFacts facts, List<Step> moves) => facts switch
    {
        { Poured: true } => moves.Find(m => m.To == Standing.Making),
        { Pieces.Count: 0 } => Step.Page("Draw the piece", Address($"/commissions/{facts.CommissionId}/pieces/new")),
        { CameIn: 0 } => Step.Page("Take in their keepsakes", Address($"/commissions/{facts.CommissionId}/keepsakes/new")),
        _ => Bench(facts),
    };

    private static Step? Making(StepFacts facts, List<Step> moves) =>
        facts.Pieces.Count > 0 && (Disagreement.Ready(facts).Count == 0 || facts.Pieces.All(p => p.Finished)) ? moves.Find(m => m.To == Standing.Ready) : Bench(facts);

    private static Step Pack(StepFacts facts) => Step.Page("Pack what goes home", Address($"/commissions/{facts.CommissionId}/going-home"));

    // the piece that needs hands first, as on the shelf
    private static Step? Bench(StepFacts facts) => facts.Pieces.Where(p => !p.Finished).OrderBy(p => p.Next.Urgency).ThenBy(p => p.Next.From ?? DateTime.MaxValue).ThenBy(p => p.Id).FirstOrDefault() is { } piece
        ? Step.Page($"{Act(piece.Next)}: {piece.Name}", Address($"/pieces/{piece.Id}/bench"))
        : null;

    private static string Act(NextAct next) => next.Kind switch
    {
        ActKind.PourFirst when next.Wants.Length > 0 => "See what it waits for",
        ActKind.PourFirst => "Pour the first layer",
        ActKind.PourNext or ActKind.WindowClosed => string.Create(CultureInfo.InvariantCulture, $"Pour layer {next.LayerOrder + 1}"),
        ActKind.Demould => "Take it out of its mould",
        ActKind.Finish => "Finish it",
        ActKind.WaitReading => "Log the room's temperature",
        ActKind.WaitForWindow or ActKind.WaitDemould or ActKind.WaitFullCure or ActKind.AskSheet or ActKind.WaitOthers or ActKind.Done => "See at the bench what it waits for",
        _ => throw new InvalidOperationException($"Nobody has said what to call the act {next.Kind}."),
    };

    /// <summary>Where it stands, in whole sentences that the facts carry.</summary>
    public static string Sentence(StepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return facts.Stands switch
        {
            Standing.Asked => facts.Prices switch
            {
                { Accepted: not null } => "They asked, and a price is agreed.",
                { Sent: not null } => "They asked, and a price was sent.",
                { Draft: not null } => "They asked; a price is being worked out.",
                _ => "They asked; there is no price yet.",
            },
            Standing.Quoted => facts.Prices switch
            {
                { Accepted: not null } => "A price is agreed.",
                { Sent: null } => "No price that was sent waits for an answer.",
                { Lapsed: true } => "A price was sent; the day until which it stands is over, and no answer is written down.",
                _ => "A price was sent; no answer is written down.",
            },
            Standing.Agreed => string.Join(" ", [facts.Prices.Accepted is null ? "It is to be made; no price is agreed." : "They said yes.", .. Waits(facts)]),
            Standing.Making => string.Join(" ", facts.Pieces.Count == 0 ? ["No piece is drawn for it."] : facts.Pieces.Select(Progress)),
            Standing.Ready => string.Join(" ", Disagreement.Ready(facts) is { Count: > 0 } open ? ["Marked as ready, but:", .. open] : ["Finished, fully cured, and waiting to go home."]),
            Standing.Home => string.Join(" ", ["It went home.", .. Disagreement.Things(facts) is { Count: > 0 } things ? things : [Nothing(facts)], .. Left(facts)]),
            Standing.LetGo => string.Join(" ", [$"It was let go.{Why(facts)}", .. Disagreement.Things(facts) is { Count: > 0 } things ? things : [Nothing(facts)]]),
            Standing.CrossedOut => $"Crossed out: it was logged by mistake.{Why(facts)}",
            var unknown => $"Where it stands is not known (“{unknown}”).",
        };
    }

    private static string Nothing(StepFacts facts) => facts.CameIn == 0 ? "Nothing of theirs came in for it." : "Nothing of theirs remains with us.";

    private static IEnumerable<string> Left(StepFacts facts) => facts.Money.Left > 0 ? [$"{Say.Money(facts.Money.Left, facts.Money.Currency)} is open."] : [];

    private static string Why(StepFacts facts) => facts.EndedWhy.Length > 0 ? $" The reason: {Say.Sentence(facts.EndedWhy)}" : "";

    private static IEnumerable<string> Waits(StepFacts facts)
    {
        if (facts.CameIn == 0)
        {
            yield return "No keepsake has come in.";
        }

        if (facts.Money.Agreed is not null && facts.Money.Paid < facts.Money.Deposit)
        {
            yield return $"{Say.Money(facts.Money.Deposit - facts.Money.Paid, facts.Money.Currency)} of the deposit is open.";
        }
    }

    private static string Progress(StepPiece p) => p.Stage switch
    {
        Pieces.Making.Drawn or Pieces.Making.Casting when p.Poured + p.Unpoured.Count > 0 =>
            string.Create(CultureInfo.InvariantCulture, $"{p.Name}: {p.Poured} of {p.Poured + p.Unpoured.Count} layers poured."),
        _ => $"{p.Name}: {Pieces.Making.Label(p.Stage).ToLowerInvariant()}.",
    };

    private static string Address(FormattableString path) => path.ToString(CultureInfo.InvariantCulture);
}
