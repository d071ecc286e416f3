namespace Studio.Commissions;

/// <summary>An act that moves a commission on.</summary>
/// <param name="From">Where it stands before.</param>
/// <param name="To">Where it stands after.</param>
/// <param name="Label">What the person says who does it.</param>
/// <param name="Words">What the day book says.</param>
public sealed record Move(string From, string To, string Label, string Words);

/// <summary>Which acts are offered where; the first is the usual way on.</summary>
public static class Moves
{
    public static IReadOnlyList<Move> All { get; } =
    [
        new(Standing.Asked, Standing.Quoted, "The price is sent", "A price was sent; we wait for their answer."),
        new(Standing.Asked, Standing.Agreed, "They said yes", "They said yes."),
        new(Standing.Asked, Standing.LetGo, "They decided against it", "They decided not to go ahead."),
        new(Standing.Asked, Standing.CrossedOut, "Logged by mistake", "Crossed out: it was logged by mistake."),
        new(Standing.Quoted, Standing.Agreed, "They said yes", "They said yes to the price."),
        new(Standing.Quoted, Standing.LetGo, "They decided against it", "They decided not to go ahead."),
        new(Standing.Agreed, Standing.Making, "Making has begun", "The making has begun."),
        new(Standing.Agreed, Standing.LetGo, "They decided against it", "They decided not to go ahead after all."),
        new(Standing.Making, Standing.Ready, "It is finished", "Finished, and waiting to go home."),
        new(Standing.Making, Standing.LetGo, "They decided against it", "It was let go in the making."),
        new(Standing.Ready, Standing.Home, "It went home", "Handed over: it went home."),
        new(Standing.Ready, Standing.Making, "It needs more work", "Back on the bench: it needs more work."),
        new(Standing.Ready, Standing.LetGo, "They decided against it", "It was let go when it was finished."),
        new(Standing.Home, Standing.Making, "It came back for work", "It came back for work."),
        new(Standing.LetGo, Standing.Asked, "They asked again", "They asked again."),
        new(Standing.CrossedOut, Standing.Asked, "It was no mistake", "It was no mistake: it counts again."),
    ];

    public static IEnumerable<Move> From(string standing) => All.Where(m => m.From == standing);

    /// <summary>What the day book says when a move is taken back.</summary>
    public static string TakenBack(string to) => $"Taken back: it stands at “{Standing.Label(to)}” again.";

    /// <summary>What the day book says when where it stands is set by hand.</summary>
    public static string SetRight(string to) => $"Set right by hand: it stands at “{Standing.Label(to)}”.";
}
