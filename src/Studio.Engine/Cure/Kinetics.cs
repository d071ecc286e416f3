namespace Studio.Engine.Cure;

/// <summary>
/// How a resin cures: dα/dt = k(T)(κ + αᵐ)(1 − α)ⁿ·f_d with k(T) = rate·exp(−E/R (1/T − 1/296.15 K)) (Kamal and Sourour's autocatalytic form with one
/// activation energy), slowed by f_d = 1/(1 + exp((Tg − T − offset)/width)) where the glass transition Tg(α) (DiBenedetto) comes near the temperature.
/// </summary>
public sealed record Kinetics
{
    /// <summary>Gas constant [J/(mol K)].</summary>
    public const double GasConstant = 8.314462618;

    /// <summary>Temperature at which the rate is given [K].</summary>
    public const double ReferenceK = 296.15;

    private const double ZeroC = 273.15;

    /// <summary>Rate constant at 23 °C [1/s].</summary>
    public required double RateAt23CPerS { get; init; }

    /// <summary>Share of the path that needs no reacted groups [ratio].</summary>
    public required double Kappa { get; init; }

    /// <summary>How much more activation energy that path takes than the other: κ at a temperature is κ·exp(−this/R (1/T − 1/296.15 K)) [J/mol].</summary>
    public double KappaEnergyJPerMol { get; init; }

    /// <summary>Order of the autocatalysis.</summary>
    public double M { get; init; } = 1;

    /// <summary>Order of what is left.</summary>
    public double N { get; init; } = 2;

    /// <summary>Activation energy [J/mol].</summary>
    public required double ActivationJPerMol { get; init; }

    /// <summary>Heat of the whole reaction [J/kg].</summary>
    public required double HeatJPerKg { get; init; }

    /// <summary>Glass transition of the unreacted mix [°C].</summary>
    public double GlassStartC { get; init; } = -40;

    /// <summary>Glass transition of the fully reacted resin [°C].</summary>
    public double GlassEndC { get; init; } = 55;

    /// <summary>DiBenedetto's λ, ratio of the heat capacity steps.</summary>
    public double Lambda { get; init; } = 0.4;

    /// <summary>The reaction is half stopped when the glass transition is this far above the temperature [K].</summary>
    public double VitrificationOffsetK { get; init; } = 8;

    /// <summary>Over how many kelvin it stops [K].</summary>
    public double VitrificationWidthK { get; init; } = 5;

    /// <summary>Conversion at which it no longer flows (Flory and Stockmayer for 4 and 2 functions: 1/√3).</summary>
    public double GelConversion { get; init; } = 0.577;

    /// <summary>Rate constant at a temperature [1/s].</summary>
    public double RatePerS(double celsius) => RateAt23CPerS * Math.Exp(-ActivationJPerMol / GasConstant * ((1 / (celsius + ZeroC)) - (1 / ReferenceK)));

    /// <summary>κ at a temperature [ratio].</summary>
    public double KappaAt(double celsius) => KappaEnergyJPerMol == 0 ? Kappa : Kappa * Math.Exp(-KappaEnergyJPerMol / GasConstant * ((1 / (celsius + ZeroC)) - (1 / ReferenceK)));

    /// <summary>Glass transition at a conversion [°C].</summary>
    public double GlassC(double conversion) =>
        GlassStartC + ((GlassEndC - GlassStartC) * Lambda * conversion / (1 - ((1 - Lambda) * conversion)));

    /// <summary>Conversion at which the glass transition is at a temperature [°C]; 0 below the whole range, 1 above it.</summary>
    public double ConversionAtGlass(double celsius)
    {
        var share = GlassEndC > GlassStartC ? Math.Clamp((celsius - GlassStartC) / (GlassEndC - GlassStartC), 0, 1) : celsius < GlassStartC ? 0 : 1;
        return share / (Lambda + ((1 - Lambda) * share));
    }

    /// <summary>How much of the rate vitrification leaves, 0 to 1.</summary>
    public double Mobility(double conversion, double celsius) =>
        1 / (1 + Math.Exp((GlassC(conversion) - celsius - VitrificationOffsetK) / VitrificationWidthK));

    /// <summary>Share of the reaction per second, vitrification left out, at a rate constant of 1 per second.</summary>
    public double Order(double conversion, double celsius)
    {
        var left = Math.Max(0, 1 - conversion);
        var done = Math.Max(0, conversion);
        return (KappaAt(celsius) + (M == 1 ? done : Math.Pow(done, M))) * (N == 2 ? left * left : left == 0 ? 0 : Math.Pow(left, N));
    }

    /// <summary>Conversion per second.</summary>
    public double PerS(double conversion, double celsius) => RatePerS(celsius) * Order(conversion, celsius) * Mobility(conversion, celsius);
}
