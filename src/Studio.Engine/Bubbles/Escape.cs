namespace Studio.Engine.Bubbles;

/// <summary>Whether a bubble at the bottom of a layer leaves it before gel.</summary>
/// <param name="Leaves">True when even a bubble with a stiff skin rises through the whole layer.</param>
/// <param name="RiseMm">How far it rises until gel [mm].</param>
/// <param name="SmallestMm">Diameter of the smallest bubble that leaves from the bottom [mm].</param>
/// <param name="Message">A whole sentence for a page.</param>
public sealed record Escape(bool Leaves, double RiseMm, double SmallestMm, string Message)
{
    /// <summary>Reckons with the slower, stiff skin: a promise that a bubble leaves is kept.</summary>
    /// <param name="diameterMm">The bubble [mm].</param>
    /// <param name="depthMm">The layer [mm].</param>
    /// <param name="densityKgPerM3">Of the mixed resin [kg/m³].</param>
    /// <param name="thickening">How it thickens.</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not above zero.</exception>
    public static Escape Of(double diameterMm, double depthMm, double densityKgPerM3, Thickening thickening)
    {
        Require.Positive(depthMm, "mm");
        var perSquare = Rise.StiffMmPerS(1, 1, densityKgPerM3) * thickening.FluidityPerPa;
        var rise = perSquare * Require.Positive(diameterMm, "mm") * diameterMm;
        var smallest = Math.Sqrt(depthMm / perSquare);
        return new(rise >= depthMm, rise, smallest, Sentence(diameterMm, depthMm, rise, smallest));
    }

    private static string Sentence(double diameterMm, double depthMm, double rise, double smallest) => rise >= depthMm
        ? FormattableString.Invariant($"A bubble of {diameterMm:0.##} mm leaves this layer of {depthMm:0.#} mm before gel; the smallest that does is {Up(smallest):0.##} mm.")
        : FormattableString.Invariant($"A bubble of {diameterMm:0.##} mm rises {rise:0.#} mm before gel and stays in this layer of {depthMm:0.#} mm; only bubbles from {Up(smallest):0.##} mm on leave. Stir slowly, pour in a thin stream, or let it gel under pressure in a pot rated for it.");

    private static double Up(double mm) => Math.Ceiling(mm * 100) / 100;
}
