namespace Studio.Bench.Tools.OtherResins;

/// <summary>How a mix reacts while its molecules move freely, on a time scale of its own.</summary>
internal abstract record Chemistry
{
    private const double GasConstant = 8.314462618;

    /// <summary>Conversion per unit of time.</summary>
    public abstract double Rate(double conversion, double celsius);

    /// <summary>By how much an activation energy [kJ/mol] quickens from 23 °C to a temperature.</summary>
    protected static double Quicker(double kJPerMol, double celsius) => Math.Exp(-1000 * kJPerMol / GasConstant * ((1 / (celsius + 273.15)) - (1 / 296.15)));
}

/// <summary>Kamal and Sourour's form with an activation energy for each path and orders of its own.</summary>
/// <param name="Kappa">First path's share of the second's constant at 23 °C.</param>
internal sealed record TwoEnergies(double Kappa, double FirstKJ, double SecondKJ, double M, double N) : Chemistry
{
    public override double Rate(double conversion, double celsius) => conversion >= 1 ? 0
        : ((Kappa * Quicker(FirstKJ, celsius)) + (Quicker(SecondKJ, celsius) * Math.Pow(Math.Max(0, conversion), M))) * Math.Pow(1 - conversion, N);
}

/// <summary>Šesták and Berggren's form with an activation energy that falls as the reaction goes on (as isoconversional analysis finds; Vyazovkin and Sbirrazzuoli 1996, from memory).</summary>
/// <param name="Seed">What is added to the conversion so that it begins at all.</param>
/// <param name="StartKJ">At the beginning [kJ/mol].</param>
/// <param name="EndKJ">Later [kJ/mol].</param>
/// <param name="Over">Conversion over which most of the fall lies.</param>
internal sealed record MovingEnergy(double Seed, double StartKJ, double EndKJ, double Over, double M, double N) : Chemistry
{
    public override double Rate(double conversion, double celsius) => conversion >= 1 ? 0
        : Quicker(EndKJ + ((StartKJ - EndKJ) * Math.Exp(-Math.Max(0, conversion) / Over)), celsius) * Math.Pow(Seed + Math.Max(0, conversion), M) * Math.Pow(1 - conversion, N);
}
