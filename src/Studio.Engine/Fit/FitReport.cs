using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>A fit as <c>calc heat</c> answers it.</summary>
/// <param name="Kinetics">The most probable ones.</param>
/// <param name="Misfit">Root of the mean square of what is off, in standard deviations.</param>
/// <param name="Identifiable">Names of the numbers that the sheet tells.</param>
/// <param name="Data">Each printed number beside the fitted one.</param>
/// <param name="Known">Each fitted number with its interval and what it rests on.</param>
public sealed record FitReport(Kinetics Kinetics, double Misfit, IReadOnlyList<string> Identifiable, IReadOnlyList<FitDatum> Data, IReadOnlyList<FitKnown> Known)
{
    /// <summary>Of a fit.</summary>
    public static FitReport Of(ResinFit fit) => new(fit.Best.Kinetics, fit.Misfit, fit.Identifiable, fit.Data, fit.Known);
}
