namespace Studio.Bench.Tools.OtherResins;

/// <summary>
/// Epoxide with primary and then secondary amine, catalysed by hydroxyl: E + A1 → A2 + OH, E + A2 → A3 + OH, each with k = catalysed·(impurity + OH formed) + uncatalysed
/// (Horie 1970 and after, from memory). All reactions share k, so what is left of each amine follows from the epoxide consumed alone; it is tabled once.
/// </summary>
internal sealed record AmineScheme : Chemistry
{
    private const int Parts = 2000;
    private readonly double[] hydrogens = new double[Parts + 1];
    private readonly double most;

    /// <summary>Tables the scheme.</summary>
    /// <param name="reactivity">Of a secondary amine's hydrogen beside a primary's.</param>
    /// <param name="amineRatio">Amine hydrogens per epoxide.</param>
    public AmineScheme(double reactivity, double amineRatio)
    {
        (Reactivity, AmineRatio) = (reactivity, amineRatio);
        most = Math.Min(1, amineRatio);
        for (var i = 0; i <= Parts; i++)
        {
            var (primary, secondary) = Amines(most * i / Parts);
            hydrogens[i] = (2 * primary) + (reactivity * secondary);
        }
    }

    public double Reactivity { get; }

    public double AmineRatio { get; }

    /// <summary>Hydroxyl or accelerator there from the start, per epoxide.</summary>
    public required double Impurity { get; init; }

    /// <summary>Uncatalysed rate constant at 23 °C as a share of the catalysed one's.</summary>
    public required double Uncatalysed { get; init; }

    /// <summary>[kJ/mol].</summary>
    public required double UncatalysedKJ { get; init; }

    /// <summary>[kJ/mol].</summary>
    public required double CatalysedKJ { get; init; }

    /// <summary>Epoxide consumed at full conversion, of all epoxide.</summary>
    public double Most => most;

    public override double Rate(double conversion, double celsius)
    {
        if (conversion >= 1)
        {
            return 0;
        }

        var consumed = most * Math.Max(0, conversion);
        var place = Math.Max(0, conversion) * Parts;
        var below = Math.Min((int)place, Parts - 1);
        var left = hydrogens[below] + ((place - below) * (hydrogens[below + 1] - hydrogens[below]));
        return Constant(consumed, celsius) * (1 - consumed) * left / most;
    }

    /// <summary>k at an epoxide consumption.</summary>
    public double Constant(double consumed, double celsius) =>
        (Quicker(CatalysedKJ, celsius) * (Impurity + consumed)) + (Uncatalysed * Quicker(UncatalysedKJ, celsius));

    /// <summary>Primary and secondary amine left, by halving over the primary amine's share.</summary>
    public (double Primary, double Secondary) Amines(double consumed)
    {
        var start = AmineRatio / 2;
        var (low, high) = (0.0, 1.0);
        for (var i = 0; i < 60; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = (2 * start) - (2 * start * middle) - Secondary(middle) > consumed ? (middle, high) : (low, middle);
        }

        return (start * low, Secondary(low));

        // dA2/dA1 = (−2·A1 + r·A2) / (2·A1), from no A2 at the start
        double Secondary(double share) => start * (Math.Pow(share, Reactivity / 2) - share) / (1 - (Reactivity / 2));
    }
}
