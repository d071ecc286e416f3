using Studio.Clock;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>How the figures on the scale are typed.</summary>
public enum ScaleMode
{
    /// <summary>Each figure is what was added; the scale was set to zero before.</summary>
    Added,

    /// <summary>Each figure is the scale's running total in the cup.</summary>
    Total,
}

/// <summary>Where the weighing of one cup stands.</summary>
public sealed record Weighed
{
    public required double AddedAG { get; init; }

    public required double AddedBG { get; init; }

    /// <summary>What the cup should hold of A in the end: the plan, or more to keep the ratio after too much B [g].</summary>
    public required double GoalAG { get; init; }

    public required double GoalBG { get; init; }

    /// <summary>Still to add [g]; never negative.</summary>
    public double LeftAG => Math.Max(0, GoalAG - AddedAG);

    public double LeftBG => Math.Max(0, GoalBG - AddedBG);

    /// <summary>Part to add next: <c>A</c>, <c>B</c>, or empty when the cup is right.</summary>
    public required string Next { get; init; }

    /// <summary>The part of which there is too much: <c>A</c>, <c>B</c>, or empty.</summary>
    public required string Over { get; init; }

    /// <summary>A whole sentence when there is too much of a part; empty else.</summary>
    public required string TooMuch { get; init; }

    /// <summary>How far B is off the sheet's ratio [%]; null before both parts are in.</summary>
    public double? OffPercent { get; init; }

    /// <summary>Both parts are in and the ratio is as near as the rule asks.</summary>
    public bool Right => Next.Length == 0;
}

/// <summary>The running tally while a cup is weighed: what is in, what is missing, and what to do about too much.</summary>
public static class Weighing
{
    /// <summary>Nearest a kitchen scale is worth [g]; common practice, no source.</summary>
    public const double LeastToleranceG = 0.5;

    /// <summary>Each part this near its goal [% of it] keeps the ratio within 2 %; common practice, no source. The data sheet wins.</summary>
    public const double TolerancePercent = 1;

    /// <summary>From this far off its plan on, a mix is not the layer that was drawn, and its heat not what was foretold [%]; our rule.</summary>
    public const double AmountStopPercent = 10;

    /// <summary>A ratio further off than this [%] is not poured without a reason; common practice, no source.</summary>
    public const double RatioStopPercent = 5;

    /// <summary>How near a part's goal is near enough [g].</summary>
    public static double ToleranceG(double goalG) => Math.Max(LeastToleranceG, goalG * TolerancePercent / 100);

    /// <summary>Where one cup stands.</summary>
    /// <param name="planAG">Part A of this cup by the plan [g].</param>
    /// <param name="planBG">Part B [g].</param>
    /// <param name="tally">All readings; those of other cups are left out.</param>
    /// <param name="batch">The cup, from 1.</param>
    public static Weighed Of(double planAG, double planBG, IEnumerable<ScaleReading> tally, int batch)
    {
        var own = tally.Where(r => r.Batch == batch).ToList();
        var (a, b) = (Sum(own, "A"), Sum(own, "B"));
        var perA = planBG / planAG;
        var (overA, overB) = (a > planAG + ToleranceG(planAG), b > planBG + ToleranceG(planBG));
        var goalA = overB ? Math.Max(planAG, b / perA) : planAG;
        var goalB = overA ? Math.Max(planBG, a * perA) : planBG;
        if (overA && overB)
        {
            // both over: the one further over sets the other
            (goalA, goalB) = a * perA > b ? (a, a * perA) : (b / perA, b);
        }

        var next = goalA - a > ToleranceG(goalA) ? "A" : goalB - b > ToleranceG(goalB) ? "B" : "";
        var over = next.Length == 0 ? "" : overA && a - planAG > 0 && a * perA >= b ? "A" : overB ? "B" : "";
        return new()
        {
            AddedAG = a,
            AddedBG = b,
            GoalAG = overA ? Math.Max(a, goalA) : goalA,
            GoalBG = overB ? Math.Max(b, goalB) : goalB,
            Next = next,
            Over = over,
            TooMuch = over switch
            {
                "A" => TooMuch("A", a - planAG, "B", a * perA),
                "B" => TooMuch("B", b - planBG, "A", b / perA),
                _ => "",
            },
            OffPercent = a > 0 && b > 0 ? ((b / a / perA) - 1) * 100 : null,
        };
    }

    /// <summary>What a figure on the scale means as an addition [g], or why it cannot be.</summary>
    public static (double? Grams, string? Wrong) Read(double figure, ScaleMode mode, IEnumerable<ScaleReading> tally, int batch)
    {
        var inCup = tally.Where(r => r.Batch == batch).Sum(r => r.Grams);
        var grams = Math.Round(mode is ScaleMode.Total ? figure - inCup : figure, 3);
        return figure switch
        {
            _ when !double.IsFinite(figure) || Math.Abs(figure) > 1e6 => (null, "That is more than a bench scale can show. Type what it says, in grams."),
            _ when mode is ScaleMode.Total && grams < 0 => (null, $"The scale showed {Say.Grams(inCup)} before. A smaller total means that it was set to zero: type what was added instead, or take the last figure back."),
            _ when grams <= 0 => (null, "Nothing was added by that figure. Type more than zero, or take the last figure back."),
            _ => (grams, null),
        };
    }

    /// <summary>B for each A as it is, against the sheet: "2.02 to 1 (sheet 2 to 1, 1 % off)".</summary>
    public static double? OffPercent(double actualAG, double actualBG, double planAG, double planBG) =>
        actualAG > 0 && actualBG > 0 && planAG > 0 && planBG > 0 ? ((actualBG / actualAG / (planBG / planAG)) - 1) * 100 : null;

    /// <summary>All of a part that went into any cup, to the milligram [g].</summary>
    public static double SumG(IEnumerable<ScaleReading> tally, string part) => Math.Round(tally.Where(r => r.Part == part).Sum(r => r.Grams), 3);

    private static double Sum(List<ScaleReading> readings, string part) => readings.Where(r => r.Part == part).Sum(r => r.Grams);

    private static string TooMuch(string part, double byG, string other, double otherGoalG) =>
        $"{Say.Grams(byG)} too much {part}. To keep the ratio this cup needs {Say.Grams(otherGoalG)} of {other} in all.";
}
