using Studio.Clock;
using Studio.Shell;

namespace Studio.Shelf;

/// <summary>The first sentence of the shelf: which piece needs hands next, when, and why.</summary>
/// <param name="Words">One sentence.</param>
/// <param name="Then">A second, smaller one: the time left, what it rests on, or what could be done meanwhile.</param>
/// <param name="First">The piece it speaks of; null when nobody is needed.</param>
/// <param name="Pressing">Overdue or closing.</param>
public sealed record ShelfLead(string Words, string Then, ShelfPiece? First, bool Pressing)
{
    internal static ShelfLead Of(IReadOnlyList<Standee> pieces, DateTime now, TimeZoneInfo zone)
    {
        if (pieces.FirstOrDefault(p => p.Next.Urgency != Urgency.Waiting) is not { } first)
        {
            return pieces.Count == 0
                ? new("The shelf is empty.", "", null, false)
                : new("Nothing needs your hands.", "Every piece waits for somebody else.", null, false);
        }

        var (next, name) = (first.Next, first.Piece.Name);
        var pressing = next.Urgency is Urgency.Overdue or Urgency.Closing;
        var words = new ClockWords(now, zone);
        return new(Sentence(next, name, words), string.Join(" ", new[] { next.Wants.Length > 0 ? "First: " + next.Wants : "", Left(next, now) + Meanwhile(pieces, first) }.Where(w => w.Length > 0)), first.Piece, pressing);
    }

    private static string Sentence(NextAct next, string name, ClockWords words) => next.Kind switch
    {
        ActKind.PourNext when next.Until is { } until => $"Pour {next.LayerName} into {name} before {words.Clock(until)}.",
        ActKind.PourNext => $"Pour {next.LayerName} into {name} now.",
        ActKind.WindowClosed => $"Abrade and clean {name}: its window closed {words.At(next.Since!.Value)}.",
        ActKind.Demould => $"{name} is ready to leave its mould.",
        ActKind.WaitReading => $"Log the room’s temperature: {name} is curing by no clock.",
        ActKind.WaitForWindow => $"Nothing needs your hands until {words.Clock(next.From!.Value)}: then {next.LayerName} goes into {name}.",
        ActKind.WaitDemould => $"Nothing needs your hands until {words.Clock(next.From!.Value)}: then {name} may leave its mould.",
        ActKind.WaitFullCure => $"Nothing needs your hands until {words.Clock(next.From!.Value)}: then {name} is fully cured.",
        ActKind.PourFirst => $"{name} can begin whenever you are ready.",
        ActKind.Finish => $"{name} is cured and waits to be finished.",
        _ => $"{name}: {next.Words}",
    };

    private static string Left(NextAct next, DateTime now) => next.Kind switch
    {
        ActKind.PourNext when next.Until is { } until => $"{Cap(Say.Duration(until - now))} left. {next.RestsOn}",
        ActKind.WindowClosed => $"{Cap(Say.Duration(now - next.Since!.Value))} ago. A layer poured now does not bond by itself.",
        ActKind.Demould => $"Since {Say.Duration(now - next.Since!.Value)}. {next.RestsOn}",
        ActKind.WaitForWindow or ActKind.WaitDemould or ActKind.WaitFullCure => $"In {Say.Duration(next.From!.Value - now)}. {next.RestsOn}",
        _ => "",
    };

    private static string Meanwhile(IReadOnlyList<Standee> pieces, Standee first) =>
        first.Next.Kind is ActKind.WaitForWindow or ActKind.WaitDemould or ActKind.WaitFullCure && pieces.FirstOrDefault(p => p.Next.Urgency == Urgency.Whenever) is { } other
            ? other.Next.Kind == ActKind.Finish ? $" Meanwhile {other.Piece.Name} could be finished." : $" Meanwhile {other.Piece.Name} could begin."
            : "";

    private static string Cap(string words) => words.Length == 0 ? words : char.ToUpperInvariant(words[0]) + words[1..];
}
