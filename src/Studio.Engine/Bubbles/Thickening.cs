using Studio.Engine.Cure;

namespace Studio.Engine.Bubbles;

/// <summary>
/// How a resin thickens from its mixing to its gel, told as the fluidity gathered until gel, ∫ dt/µ: the way of every bubble is that number times
/// its diameter squared.
/// </summary>
/// <param name="FluidityPerPa">∫ dt/µ from the pour to gel [1/Pa].</param>
/// <param name="GelHours">From pour to gel [h].</param>
public sealed record Thickening(double FluidityPerPa, double GelHours)
{
    private const double SecondsPerHour = 3600;
    private const int Pieces = 2000;

    // Castro and Macosko's exponent; study, from memory
    private const double Steepness = 1.5;

    /// <summary>Viscosity that doubles by the end of every pot life, until gel: 2^(t/potLife).</summary>
    /// <param name="startPaS">Of the fresh mix [Pa s].</param>
    /// <param name="potLifeHours">Time in which it doubles [h]; common practice: a pot life ends when the viscosity has doubled.</param>
    /// <param name="gelHours">From pour to gel [h].</param>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not above zero.</exception>
    public static Thickening Doubling(double startPaS, double potLifeHours, double gelHours)
    {
        Require.Positive(startPaS, "Pa s");
        var rate = Math.Log(2) / (Require.Positive(potLifeHours, "h") * SecondsPerHour);
        var seconds = Require.Positive(gelHours, "h") * SecondsPerHour;
        return new((1 - Math.Exp(-rate * seconds)) / (rate * startPaS), gelHours);
    }

    /// <summary>Viscosity µ₀·(α_gel/(α_gel − α))^1.5 (Castro and Macosko) along a layer's clock.</summary>
    /// <param name="startPaS">Of the fresh mix [Pa s].</param>
    /// <param name="clock">The layer's clock.</param>
    /// <returns>Null when the layer does not gel.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The viscosity is not above zero.</exception>
    public static Thickening? Along(double startPaS, KineticClock clock)
    {
        Require.Positive(startPaS, "Pa s");
        if (clock.Gel.AtHours is not { } gelAt)
        {
            return null;
        }

        // midpoints; the fluidity falls evenly to nothing at gel
        var piece = (gelAt - clock.PouredAtHours) / Pieces;
        var gel = clock.Aims.Gel.Conversion;
        var sum = Enumerable.Range(0, Pieces).Sum(i => 1 / At(startPaS, clock.ConversionAt(clock.PouredAtHours + ((i + 0.5) * piece)), gel));
        return new(sum * piece * SecondsPerHour, gelAt - clock.PouredAtHours);
    }

    /// <summary>Viscosity at a conversion [Pa s]; infinite from gel on.</summary>
    public static double At(double startPaS, double conversion, double gelConversion) =>
        conversion < gelConversion ? startPaS * Math.Pow(gelConversion / (gelConversion - conversion), Steepness) : double.PositiveInfinity;
}
