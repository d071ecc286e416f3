namespace Studio.Engine.Time;

/// <summary>The doubts of <c>calc time</c>: codes, weights and words in one place.</summary>
internal static class TimeFindings
{
    private const string OurRule = "our rule";

    internal static Finding NotKnown(string path, string reason) =>
        new("not-known", Severity.Warn, path, $"When it can be with the family is not known. {reason}", OurRule);

    internal static Finding PastStart(string path, DateTime fact, DateTime start) =>
        new("past-start", Severity.Note, path, $"This was done on {WallText.Say(fact)}, after the start, {WallText.Say(start)}. Give as the start when hands can go on; nothing is planned before it.", OurRule);

    internal static Finding WindowMissed(string path, PlannedPour layer, string below, DateTime closes, DateTime poured, int abradeMinutes, bool belowLies) =>
        new("window-missed", Severity.Warn, path,
            $"Hands have layer {layer.Name} in the mould on {WallText.Say(poured)} at the earliest, {(belowLies ? $"after the window of layer {below} has closed" : $"and the window of layer {below} closes on {WallText.Say(closes)}")}. {abradeMinutes} minutes are added to abrade and clean it first{(belowLies ? "" : $"; pouring {below} at another hour may save them")}.",
            "data sheet; minutes: common practice, no source");

    internal static Finding? NeededBy(DateOnly neededBy, DateOnly earliestOn, DateOnly promiseOn, int reserveDays, bool toPour) => (neededBy.DayNumber - earliestOn.DayNumber) switch
    {
        < 0 and var late => new("too-late", Severity.Stop, "neededBy",
            $"It can be with the family on {WallText.Say(earliestOn)} at the earliest and is needed on {WallText.Say(neededBy)}: {Days(-late)} too late. Agree a later day{(toPour ? ", or plan fewer pours or a resin that is ready sooner" : "")}.", OurRule),
        var spare when neededBy < promiseOn => new("no-reserve", Severity.Warn, "neededBy",
            $"It can be with the family on {WallText.Say(earliestOn)} and is needed on {WallText.Say(neededBy)}: {Days(spare)} to spare, and the studio keeps {Days(reserveDays)} in hand.{(toPour ? " One pour that must be made again makes it late." : "")}", OurRule),
        _ => null,
    };

    private static string Days(int days) => days == 1 ? "1 day" : FormattableString.Invariant($"{days} days");
}
