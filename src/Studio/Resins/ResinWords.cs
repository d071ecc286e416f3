using System.Globalization;
using Studio.Engine.Cure;
using Studio.Shell;

namespace Studio.Resins;

/// <summary>How a resin is said in words.</summary>
public static class ResinWords
{
    /// <summary>Key, words and what the class means, in the order a form offers them.</summary>
    public static IReadOnlyList<(string Key, string Words, string Means)> Classes { get; } =
    [
        ("deepPour", "Deep-pour", "thin and slow, for layers of some centimetres"),
        ("casting", "Casting", "for layers of one or two centimetres"),
        ("fast", "Fast", "thick and quick, for thin layers and coats"),
    ];

    /// <summary>"Deep-pour".</summary>
    public static string Class(string key) => Classes.FirstOrDefault(c => c.Key == key).Words ?? key;

    /// <summary>"100 : 43 by weight".</summary>
    public static string Mix(double partsA, double partsB, string by) => string.Create(CultureInfo.InvariantCulture, $"{partsA:0.###} : {partsB:0.###} by {by}");

    /// <summary>"6 to 24 hours after pouring, at 23 °C"; says so when the sheet does not.</summary>
    public static string NextPour(CureTimes? times) => times switch
    {
        { NextPourFromHours: { } from, NextPourUntilHours: { } until } => $"{Span(from, until)} at {Say.Celsius(times.AtCelsius)}",
        { NextPourFromHours: { } from } => $"from {Hours(from)} at {Say.Celsius(times.AtCelsius)}",
        { NextPourUntilHours: { } until } => $"until {Hours(until)} at {Say.Celsius(times.AtCelsius)}",
        _ => "the sheet does not say",
    };

    /// <summary>"24 hours at 23 °C".</summary>
    public static string Demould(CureTimes? times) => times?.DemouldHours is { } hours ? $"{Hours(hours)} at {Say.Celsius(times.AtCelsius)}" : "the sheet does not say";

    /// <summary>"7 days", "6 hours".</summary>
    public static string Hours(double hours) => Say.Duration(TimeSpan.FromHours(hours));

    // "2 to 3 days" where both are whole days, "6 to 24 hours" where both are hours
    private static string Span(double from, double until)
    {
        var (a, b) = (Hours(from), Hours(until));
        var (unitA, unitB) = (a[(a.LastIndexOf(' ') + 1)..], b[(b.LastIndexOf(' ') + 1)..]);
        return unitA == unitB && a.Count(c => c == ' ') == 1 ? $"{a[..a.IndexOf(' ', StringComparison.Ordinal)]} to {b}" : $"{a} to {b}";
    }
}
