using System.Globalization;
using Studio.Engine;
using Studio.Engine.Fit;
using Studio.Resins;

namespace Studio.Calibration;

/// <summary>How a log and its refit are said.</summary>
internal static class LogWords
{
    /// <summary>Where the thermometer was, in the order the form offers them.</summary>
    internal static IReadOnlyList<(LogPlace Key, string Words, string Means)> Places { get; } =
    [
        (LogPlace.Hottest, "In the middle of the layer", "half way up, on the middle line: where it grows hottest"),
        (LogPlace.Surface, "On its surface", "in the middle, touching the resin"),
        (LogPlace.Height, "At a height of its own", "on the middle line, measured from the mould’s lowest point"),
    ];

    internal static string Said(InputError error) => error.Path switch
    {
        "heightMm" => "Height of the thermometer: ",
        "gelAfterHours" => "When its surface had gelled: ",
        "demouldAfterHours" => "When it was firm: ",
        "readings" => "Readings: ",
        _ => "",
    } + error.Message;

    /// <summary>The peak and the two numbers that decide about it, before and after.</summary>
    internal static IReadOnlyList<LogNarrowed> Narrowed(LogRefit refit)
    {
        List<LogNarrowed> all = [];
        if (refit.Series.Count > 0)
        {
            var (was, now) = (refit.Series.MaxBy(m => m.BeforeC)!, refit.Series.MaxBy(m => m.AfterC)!);
            all.Add(new(
                "Warmest at the thermometer", $"{CureWords.Peak(was.BeforeC)} ({CureWords.Peak(was.Before)})", $"{CureWords.Peak(now.AfterC)} ({CureWords.Peak(now.After)})",
                Narrowing(Width(was.Before), Width(now.After))));
        }

        foreach (var known in refit.Fit.Known)
        {
            var said = CureWords.Known(known, "the log with what was known before");
            all.Add(new(said.What, "", said.Value, char.ToUpperInvariant(said.RestsOn[0]) + said.RestsOn[1..] + "."));
        }

        return all;

        static double Width(FitInterval i) => Math.Max(0.1, i.To - i.From);
    }

    private static string Narrowing(double before, double after) => (before / after) switch
    {
        > 1.15 and var ratio => string.Create(CultureInfo.InvariantCulture, $"The interval is {ratio:0.#} times narrower."),
        < 0.87 => "The interval is wider than before: this log says something else than what was known.",
        _ => "The interval is about as wide as before.",
    };
}
