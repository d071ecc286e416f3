namespace Studio.Engine.Fit;

/// <summary>The numbers that are fitted, in the order of a state's lists.</summary>
internal static class FitNumbers
{
    public const int LogRate = 0;
    public const int LogKappa = 1;
    public const int LogHeat = 2;
    public const int ActivationKJ = 3;
    public const int LogFilm = 4;
    public const int Demould = 5;
    public const int Gel = 6;
    public const int KappaEnergyKJ = 7;
    public const int OrderM = 8;
    public const int OrderN = 9;
    public const int Count = 10;

    /// <summary>How many a state had that was kept by an earlier release: those up to <see cref="Demould"/>.</summary>
    public const int CountBefore = 6;

    /// <summary>Names as results say them.</summary>
    public static readonly string[] Names = ["rateAt23CPerS", "kappa", "heatJPerKg", "activationJPerMol", "filmFactor", "demouldConversion", "gelConversion", "kappaEnergyJPerMol", "m", "n"];

    /// <summary>Steps for differences: large against the solver's own noise, small against the curve.</summary>
    public static readonly double[] Steps = [0.04, 0.12, 0.03, 1.5, 0.08, 0.01, 0.01, 3, 0.05, 0.06];

    // a resin outside these is none; a trial step is held inside them
    private static readonly double[] Least = [Math.Log(1e-7), Math.Log(0.002), Math.Log(120e3), 25, Math.Log(0.3), 0.5, 0.45, -20, 0.5, 1.2];
    private static readonly double[] Most = [Math.Log(2e-2), Math.Log(0.5), Math.Log(620e3), 95, Math.Log(3.0), 0.97, 0.72, 60, 1.6, 2.9];

    public static double Held(double[] state, int number) => Math.Clamp(state[number], Least[number], Most[number]);
}
