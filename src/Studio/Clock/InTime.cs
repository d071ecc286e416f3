using Studio.Engine.Time;
using Studio.Shell;

namespace Studio.Clock;

/// <summary>Whether a piece can be with the family in time, in whole sentences that its reckoning carries.</summary>
/// <param name="Words">The answer.</param>
/// <param name="Late">True when it cannot be there on the day that was promised, or where none was, on which it is needed.</param>
/// <param name="Tight">True when it can, but not with the studio's reserve.</param>
/// <param name="OnTag">The same on a paper tag; empty where nothing presses.</param>
public sealed record InTime(string Words, bool Late, bool Tight, string OnTag = "")
{
    /// <summary>The answer.</summary>
    /// <param name="time">The reckoning; it knows the day on which the family needs it.</param>
    /// <param name="today">The studio's day.</param>
    public static InTime Of(TimeResult time, DateOnly today)
    {
        ArgumentNullException.ThrowIfNull(time);
        return (time.EarliestOn, time.DaysToSpare) switch
        {
            (null, _) => new($"When it can be with them is not known. {time.FinishedAt.Reason ?? string.Join(" ", time.Findings.Select(f => f.Message))}".TrimEnd(), false, false),
            ({ } earliest, null) => new($"It can be with them {On(earliest, today)} at the earliest{Promise(time, today)}.", false, false),
            ({ } earliest, < 0 and var late) => new($"Not in time: it can be with them {On(earliest, today)} at the earliest, {Days(-late)} after the day {time.NeededAs}.", true, false, $"Not in time: at least {Days(-late)} late."),
            ({ } earliest, { } spare) when time.PromiseOn is { } promise && promise > earliest.AddDays(spare) =>
                new($"Only just in time: it can be with them {On(earliest, today)} at the earliest, {Days(spare)} to spare, less than your reserve.", false, true, $"Only just in time: {Days(spare)} to spare."),
            ({ } earliest, { } spare) => new($"In time: it can be with them {On(earliest, today)} at the earliest, {Days(spare)} to spare.", false, false),
        };
    }

    private static string Promise(TimeResult time, DateOnly today) => time.PromiseOn is { } day && day != time.EarliestOn ? $"; with your reserve, promise {Say.Day(day, today)}" : "";

    private static string On(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        >= -1 and <= 1 => Say.Day(day, today),
        _ => "on " + Say.Day(day, today),
    };

    private static string Days(int n) => n == 1 ? "1 day" : FormattableString.Invariant($"{n} days");
}
