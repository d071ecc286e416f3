namespace Studio.Engine.Fit;

/// <summary>One number that was fitted to, beside what the fitted model gives for it.</summary>
/// <param name="Name">Field of the sheet or the log, such as <c>gelMinutes</c>.</param>
/// <param name="Printed">As printed or observed, in the field's unit.</param>
/// <param name="Fitted">What the fitted model gives, in the field's unit.</param>
/// <param name="OffSd">How far the two lie apart in standard deviations; positive when the model gives more.</param>
public sealed record FitDatum(string Name, double Printed, double Fitted, double OffSd);

/// <summary>How well one number of the kinetics is known.</summary>
/// <param name="Name">Such as <c>kappa</c>.</param>
/// <param name="Value">Most probable, in the unit of its name.</param>
/// <param name="Interval">5 to 95 %, in the same unit.</param>
/// <param name="Share">Its standard deviation as a share of what it was before anything was known of this resin [0 to 1].</param>
/// <param name="RestsOn"><c>data</c> (share under 0.5), <c>both</c> (under 0.8) or <c>prior</c>.</param>
public sealed record FitKnown(string Name, double Value, FitInterval Interval, double Share, string RestsOn);

/// <summary>What a fit gives.</summary>
public sealed record ResinFit
{
    /// <summary>The most probable resin.</summary>
    public required FitResin Best { get; init; }

    /// <summary>Everything that later fits and members follow from; keep this.</summary>
    public required FitState State { get; init; }

    /// <summary>Root of the mean square of <see cref="FitDatum.OffSd"/>; about 1 or less when the numbers go together, 0 when there were none.</summary>
    public required double Misfit { get; init; }

    public required IReadOnlyList<FitDatum> Data { get; init; }

    /// <summary>Each fitted number: what it rests on.</summary>
    public required IReadOnlyList<FitKnown> Known { get; init; }

    /// <summary>Names of the numbers that the data tell: those with a share under 0.5.</summary>
    public IReadOnlyList<string> Identifiable => [.. Known.Where(k => k.RestsOn == "data").Select(k => k.Name)];

    /// <summary>Numbers that contradict each other, and what was assumed.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    internal static ResinFit Of(FitState state, IReadOnlyList<FitDatum> data, IReadOnlyList<Finding> findings) => new()
    {
        Best = state.Best(),
        State = state,
        Data = data,
        Misfit = data.Count == 0 ? 0 : Math.Sqrt(data.Average(d => d.OffSd * d.OffSd)),
        Known = [.. Enumerable.Range(0, FitNumbers.Count).Select(i => Tell(state, i))],
        Findings = findings,
    };

    private static FitKnown Tell(FitState state, int number)
    {
        const double five = 1.6449;
        var (mean, sd) = (state.Mean[number], state.Sd(number));
        var share = Math.Min(1, sd / state.PriorSd[number]);
        return new(
            FitNumbers.Names[number], Unit(number, mean), new(Unit(number, mean - (five * sd)), Unit(number, mean + (five * sd))), share,
            share < 0.5 ? "data" : share < 0.8 ? "both" : "prior");
    }

    private static double Unit(int number, double value) => number switch
    {
        FitNumbers.ActivationKJ or FitNumbers.KappaEnergyKJ => 1000 * value,
        FitNumbers.Demould or FitNumbers.Gel or FitNumbers.OrderM or FitNumbers.OrderN => value,
        _ => Math.Exp(value),
    };
}
