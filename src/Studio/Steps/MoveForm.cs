namespace Studio.Steps;

/// <summary>A move as it is asked for.</summary>
/// <param name="From">Where the page showed it; somebody else may have moved it meanwhile.</param>
/// <param name="To">A key of <see cref="Commissions.Standing"/>.</param>
/// <param name="Words">What the day book says.</param>
/// <param name="Why">The reason, where one is asked; it stays in the history.</param>
/// <param name="Spent">What had been spent on it when it ended, in the studio's money; null where nobody said.</param>
public sealed record MoveForm(string From, string To, string Words, string Why = "", decimal? Spent = null);
