namespace Studio.Engine.Bubbles;

/// <summary>Boyle's law for bubbles under pressure: at one temperature, pressure × volume stays. Pressures are absolute inside; a gauge shows what is above the air's.</summary>
/// <remarks>Bubbles come back when the pressure is let off before gel; dissolved air as well (Henry's law). Keep the pressure until gel.</remarks>
public static class Squeeze
{
    /// <summary>Standard atmosphere [bar].</summary>
    public const double AtmosphereBar = 1.01325;

    /// <summary>One pound-force per square inch [bar].</summary>
    public const double BarPerPsi = 0.0689475729317831;

    /// <summary>Volume after a change of absolute pressure, both in one unit; the volume's unit is the caller's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A figure is not above zero.</exception>
    public static double Volume(double volume, double pressureBefore, double pressureAfter) =>
        Require.Positive(volume, "volume") * Require.Positive(pressureBefore, "absolute pressure") / Require.Positive(pressureAfter, "absolute pressure");

    /// <summary>Share of its volume that a bubble keeps at a gauge pressure [ratio].</summary>
    /// <param name="gaugeBar">What the gauge shows [bar]; negative for a vacuum, down to the air's pressure.</param>
    /// <param name="ambientBar">Pressure of the air, absolute [bar].</param>
    /// <exception cref="ArgumentOutOfRangeException">The absolute pressure would not be above zero.</exception>
    public static double VolumeRatio(double gaugeBar, double ambientBar = AtmosphereBar) => Volume(1, ambientBar, ambientBar + gaugeBar);

    /// <summary>Share of its diameter that a bubble keeps at a gauge pressure [ratio]: the cube root of the volume's.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The absolute pressure would not be above zero.</exception>
    public static double DiameterRatio(double gaugeBar, double ambientBar = AtmosphereBar) => Math.Cbrt(VolumeRatio(gaugeBar, ambientBar));
}
