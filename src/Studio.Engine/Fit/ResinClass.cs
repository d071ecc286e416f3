namespace Studio.Engine.Fit;

/// <summary>What is taken for a class of resin before its sheet has said anything.</summary>
/// <remarks>
/// Heat: 98 to 110 kJ per epoxide equivalent (Rozenberg, Adv. Polym. Sci. 75, 1986, from memory) over the mass of an equivalent with its hardener gives 350 to 420 kJ/kg.
/// Activation energy: 44 to 61 kJ/mol for amine-cured epoxies near room temperature (Barral et al., J. Appl. Polym. Sci. 56, 1995, 1029, and others).
/// Gel: 0.577 for ideal networks of 4 and 2 functions (Flory and Stockmayer); rings delay it with polyether amines, of which deep-pour hardeners are made (Tanaka, Stanford and
/// Stepto, Prog. Colloid Polym. Sci. 136, 2009), and more functions make it sooner: 0.50 to 0.65 in all (our study).
/// Rates by class are common practice, no source: they only matter where a sheet prints no time at all.
/// </remarks>
public sealed record ResinClass
{
    /// <summary>Standard deviation of a gel conversion within its class: 0.50 to 0.65 then holds more than nine in ten.</summary>
    public const double GelSd = 0.04;

    private ResinClass(string key, string words, double rateAt23CPerS, double heatJPerKg, double glassEndC, double gel, double widen, double logDoubt, double apart) =>
        (Key, Words, RateAt23CPerS, HeatJPerKg, GlassEndC, GelConversion, Widen, LogDoubt, Apart) = (key, words, rateAt23CPerS, heatJPerKg, glassEndC, gel, widen, logDoubt, apart);

    /// <summary>All classes, from the slowest.</summary>
    public static IReadOnlyList<ResinClass> All { get; } =
    [
        new("deepPour", "deep-pour resin", 4e-5, 360e3, 52, 0.595, 1.25, 1.3, 0.7),
        new("casting", "casting resin", 1.3e-4, 380e3, 55, 0.59, 1.45, 1.25, 1),
        new("fast", "fast resin", 8e-4, 390e3, 58, 0.6, 1.45, 1.4, 1),
    ];

    /// <summary>Key in the contract.</summary>
    public string Key { get; }

    /// <summary>For a person.</summary>
    public string Words { get; }

    /// <summary>Rate constant [1/s].</summary>
    public double RateAt23CPerS { get; }

    /// <summary>[J/kg].</summary>
    public double HeatJPerKg { get; }

    /// <summary>[°C].</summary>
    public double GlassEndC { get; }

    /// <summary>Conversion at which it no longer flows [0 to 1]; known to <see cref="GelSd"/> at best before a log says more.</summary>
    public double GelConversion { get; }

    /// <summary>
    /// Intervals from a sheet alone are made wider by this, or, below 1, the sheet's numbers trusted more, so that nine in ten of them hold the truth of made-up resins, a fifth of them of another form
    /// (docs/measurements.md; set on other resins than those reported there).
    /// </summary>
    public double Widen { get; }

    /// <summary>A log's readings are trusted less by this, set and measured likewise: what the model leaves out shows more in a deep layer than in a thin one.</summary>
    public double LogDoubt { get; }

    /// <summary>What the model leaves out, as a share of what <see cref="FitMembers"/> takes for it; set and measured likewise.</summary>
    public double Apart { get; }

    /// <summary>The class of a key; null when there is none.</summary>
    public static ResinClass? Find(string? key) => All.FirstOrDefault(c => c.Key == key);
}
