using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>
/// What is known of a resin: a normal distribution over the logarithms of rate, κ and heat, the activation energy [kJ/mol], the logarithm of the film factor and the
/// demould conversion, and the numbers that are held. Keep it with the lot; everything else follows from it.
/// </summary>
public sealed record FitState
{
    /// <summary>Most probable values.</summary>
    public required IReadOnlyList<double> Mean { get; init; }

    /// <summary>Lower triangle L of the covariance L·Lᵀ, row by row.</summary>
    public required IReadOnlyList<IReadOnlyList<double>> Spread { get; init; }

    /// <summary>Standard deviations before any number of this resin was seen.</summary>
    public required IReadOnlyList<double> PriorSd { get; init; }

    /// <summary>Temperature for which the sheet's numbers are printed [°C].</summary>
    public required double AtCelsius { get; init; }

    /// <summary>[°C].</summary>
    public required double GlassEndC { get; init; }

    /// <summary>[kg/m³].</summary>
    public required double DensityKgPerM3 { get; init; }

    /// <summary>[J/(kg K)].</summary>
    public double HeatCapacityJPerKgK { get; init; } = 1900;

    /// <summary>[W/(m K)].</summary>
    public double ConductivityWPerMK { get; init; } = 0.19;

    /// <summary>Hours to complete cure that the sheet prints [h].</summary>
    public double? FullCureHours { get; init; }

    /// <summary>Standard deviations of a log's readings are multiplied by this; from the resin's class [ratio].</summary>
    public double LogDoubt { get; init; } = 1;

    /// <summary>The most probable resin.</summary>
    public FitResin Best() => Resin([.. Mean]);

    /// <summary>
    /// Resins drawn from this state, the same ones every time: run each of them and take <see cref="FitInterval.Of"/> of what they give.
    /// </summary>
    /// <param name="count">How many, even, 24 to 64 as a rule.</param>
    public IReadOnlyList<FitResin> Members(int count = 32) => [.. FitDraws.Of(count).Select(z => Resin(At(z)))];

    /// <summary>Conversion at the printed hours of complete cure at the sheet's temperature; null where none are printed.</summary>
    public double? FullCureConversion() => FullCureHours is { } hours ? IsothermalClock.Conversion(Best().Kinetics, AtCelsius, hours) : null;

    internal double Sd(int number) => Math.Sqrt(Spread[number].Sum(x => x * x));

    internal double[] At(double[] z) => [.. Enumerable.Range(0, FitNumbers.Count).Select(i => Mean[i] + Spread[i].Select((l, j) => l * z[j]).Sum())];

    internal FitResin Resin(double[] state)
    {
        double Value(int number) => FitNumbers.Held(state, number);
        return new(
            new Kinetics
            {
                RateAt23CPerS = Math.Exp(Value(FitNumbers.LogRate)),
                Kappa = Math.Exp(Value(FitNumbers.LogKappa)),
                HeatJPerKg = Math.Exp(Value(FitNumbers.LogHeat)),
                ActivationJPerMol = 1000 * Value(FitNumbers.ActivationKJ),
                GlassEndC = GlassEndC,
            },
            DensityKgPerM3, HeatCapacityJPerKgK, ConductivityWPerMK, Math.Exp(Value(FitNumbers.LogFilm)), Value(FitNumbers.Demould));
    }
}
