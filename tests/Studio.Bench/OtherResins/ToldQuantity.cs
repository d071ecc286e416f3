using Studio.Engine.Fit;

namespace Studio.Bench.Tools.OtherResins;

/// <summary>One quantity of one resin at one stage: what is so, and what a user of Studio would be told.</summary>
/// <param name="What">Name.</param>
/// <param name="Temperature">True for a peak [°C]; false for a time [h].</param>
/// <param name="True">What is so.</param>
/// <param name="Said">Most probable value told.</param>
/// <param name="Interval">90 % interval told; null where none was (a time that a drawn resin does not reach).</param>
internal sealed record ToldQuantity(string What, bool Temperature, double True, double Said, FitInterval? Interval)
{
    /// <summary>Above this a peak is a run-away, and no number of it is shown [°C].</summary>
    public const double RunAwayC = Engine.Forecast.HeatLimit.RunAwayC;

    public bool RunAway => Temperature && True > RunAwayC;

    public bool SaysRunAway => Interval is { } i && i.To > RunAwayC;

    public bool Held => Interval is { } i && i.Holds(True);

    /// <summary>The miss that lets a person do what they should not: hotter, or later, than the upper bound.</summary>
    public bool Permissive => Interval is { } i && True > i.To;

    /// <summary>[K] of a peak, share of a time.</summary>
    public double Error => Math.Abs(Said - True) / (Temperature ? 1 : True);

    /// <summary>[K] of a peak, share of a time.</summary>
    public double Width => Interval is { } i ? (i.To - i.From) / (Temperature ? 1 : True) : double.PositiveInfinity;
}

/// <summary>What is known at one stage.</summary>
/// <param name="Stage">From 0: sheet alone, one log, second log.</param>
/// <param name="Told">Its quantities, always in the same order.</param>
/// <param name="Findings">Codes of what the fit remarked.</param>
/// <param name="Misfit">Of the fit.</param>
internal sealed record ToldStage(int Stage, IReadOnlyList<ToldQuantity> Told, IReadOnlyList<string> Findings, double Misfit)
{
    public static readonly string[] Names = ["sheet alone", "and one log", "and a second at 28 °C"];
}
