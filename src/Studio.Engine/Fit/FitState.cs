using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>
/// What is known of a resin: a normal distribution over the logarithms of rate, κ and heat, the activation energy [kJ/mol], the logarithm of the film factor, the demould
/// and the gel conversion, how much more energy the path by κ takes [kJ/mol], and the two orders m and n; and the numbers that are held. Keep it with the lot; everything
/// else follows from it. One that an earlier release kept lacks the last four: <see cref="Whole"/> gives them what is usual.
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

    /// <summary>How far the model may be from the resin whatever was seen, as a share of what <see cref="FitMembers"/> takes; from its class [ratio].</summary>
    public double Apart { get; init; } = 1;

    /// <summary>Standard deviations of a log's readings are multiplied by this; from the resin's class [ratio].</summary>
    public double LogDoubt { get; init; } = 1;

    /// <summary>Temperatures at which this resin was seen: the sheet's, and that of each log [°C]. Between and near them its rate is known; away from them it is not.</summary>
    public IReadOnlyList<double> SeenCelsius { get; init; } = [];

    /// <summary>
    /// Resins that agree with what was seen as well as the best does, each as the list of its numbers (see <see cref="FitMembers"/>); none where an earlier release kept the
    /// state, which then draws them from the normal distribution alone.
    /// </summary>
    public IReadOnlyList<IReadOnlyList<double>> Kept { get; init; } = [];

    /// <summary>The same with every number that this release fits, those that it lacks as they are before anything is known.</summary>
    public FitState Whole()
    {
        if (Mean.Count >= FitNumbers.Count)
        {
            return this;
        }

        var usual = SheetFit.Usual(null);
        return this with
        {
            Kept = [],
            Mean = [.. Mean, .. usual.Mean.Skip(Mean.Count)],
            PriorSd = [.. PriorSd, .. usual.PriorSd.Skip(PriorSd.Count)],
            Spread = [.. Spread.Select(Filled), .. usual.Spread.Skip(Spread.Count)],
            SeenCelsius = SeenCelsius.Count > 0 ? SeenCelsius : [AtCelsius],
        };

        static IReadOnlyList<double> Filled(IReadOnlyList<double> row) => [.. row, .. Enumerable.Repeat(0.0, FitNumbers.Count - row.Count)];
    }

    /// <summary>The most probable resin.</summary>
    public FitResin Best() => Resin([.. Whole().Mean]);

    /// <summary>
    /// Resins drawn from this state, the same ones every time: run each of them and take <see cref="FitInterval.Of"/> of what they give.
    /// </summary>
    /// <param name="count">How many at most, even; <see cref="FitMembers.Count"/> of them are kept with a state.</param>
    public IReadOnlyList<FitResin> Members(int count = FitMembers.Count)
    {
        if (Kept.Count > 0)
        {
            return [.. Kept.Take(count).Select(x => Resin([.. x]))];
        }

        var whole = Whole();
        return [.. FitDraws.Of(count).Select(z => whole.Resin(FitMembers.Apart(FitMembers.Turned(whole, whole.At(z), z[FitNumbers.Count]), z, Apart)))];
    }

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
                GelConversion = Value(FitNumbers.Gel),
                KappaEnergyJPerMol = 1000 * Value(FitNumbers.KappaEnergyKJ),
                M = Value(FitNumbers.OrderM),
                N = Value(FitNumbers.OrderN),
            },
            DensityKgPerM3, HeatCapacityJPerKgK, ConductivityWPerMK, Math.Exp(Value(FitNumbers.LogFilm)), Value(FitNumbers.Demould));
    }
}
