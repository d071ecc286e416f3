namespace Studio.Engine.Bubbles;

/// <summary>How fast a bubble rises: the air's own weight and the walls are left out, and it must creep (Reynolds number below about 1).</summary>
public static class Rise
{
    /// <summary>Standard gravity [m/s²].</summary>
    public const double Gravity = 9.80665;

    /// <summary>
    /// A bubble whose skin is stiff with dirt, as of a rigid ball (Stokes): d²·ρ·g/(18 µ). The slowest a small bubble rises, so what is
    /// reckoned with.
    /// </summary>
    /// <param name="diameterMm">[mm].</param>
    /// <param name="viscosityPaS">[Pa s]; 1 Pa s is 1000 mPa s or 1000 cP.</param>
    /// <param name="densityKgPerM3">Of the liquid [kg/m³].</param>
    /// <param name="gravity">[m/s²].</param>
    /// <returns>[mm/s].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not above zero.</exception>
    public static double StiffMmPerS(double diameterMm, double viscosityPaS, double densityKgPerM3, double gravity = Gravity)
    {
        var m = Require.Positive(diameterMm, "mm") / 1000;
        return 1000 * m * m * Require.Positive(densityKgPerM3, "kg/m³") * gravity / (18 * Require.Positive(viscosityPaS, "Pa s"));
    }

    /// <summary>A bubble with a clean, moving skin (Hadamard and Rybczynski): one and a half times as fast [mm/s].</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not above zero.</exception>
    public static double CleanMmPerS(double diameterMm, double viscosityPaS, double densityKgPerM3, double gravity = Gravity) =>
        1.5 * StiffMmPerS(diameterMm, viscosityPaS, densityKgPerM3, gravity);

    /// <summary>Reynolds number of a rise; above about 1 the two speeds are too fast.</summary>
    public static double Reynolds(double diameterMm, double mmPerS, double viscosityPaS, double densityKgPerM3) =>
        densityKgPerM3 * (mmPerS / 1000) * (diameterMm / 1000) / viscosityPaS;
}
