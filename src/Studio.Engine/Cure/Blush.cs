namespace Studio.Engine.Cure;

/// <summary>
/// Blush: where a fresh surface is near the dew point, or the air too damp, amine hardeners take up water and carbon dioxide and turn greasy or
/// cloudy, and the next layer does not hold (O'Malley et al., AMPP 2005; facts of coating practice).
/// </summary>
public static class Blush
{
    /// <summary>The surface must be this much warmer than the dew point [K]; coating practice, ISO 8502-4.</summary>
    public const double MarginK = 3;

    /// <summary>Doubts before a pour; none where all is well.</summary>
    /// <param name="airC">Air [°C].</param>
    /// <param name="humidityPercent">Relative humidity [%]; a value outside 1 to 100 is said and not used.</param>
    /// <param name="surfaceC">The surface to be poured on [°C]; as warm as the air where not known.</param>
    /// <param name="maxHumidityPercent">The data sheet's limit [%], where it prints one.</param>
    /// <param name="path">Field for the findings.</param>
    public static IReadOnlyList<Finding> Doubts(double airC, double humidityPercent, double? surfaceC = null, double? maxHumidityPercent = null, string path = "humidityPercent")
    {
        if (!(humidityPercent is >= DewPoint.LeastPercent and <= DewPoint.MostPercent) || !CureCheck.Plausible(airC))
        {
            return [new("humidity-implausible", Severity.Warn, path, FormattableString.Invariant($"{humidityPercent:0.#} % humidity at {airC:0.#} °C cannot be right, so the dew point is not worked out. Look at the sensor."), "our rule")];
        }

        var dew = DewPoint.Celsius(airC, humidityPercent);
        var surface = surfaceC ?? airC;
        var findings = new List<Finding>();
        if (surface < dew + MarginK)
        {
            findings.Add(new("near-dew-point", Severity.Warn, path, FormattableString.Invariant(
                $"The surface is at {surface:0.#} °C and the dew point at {dew:0.#} °C: less than {MarginK:0} K apart. The resin may blush, turn greasy or cloudy. Warm the piece and the room or dry the air before you pour."), "coating practice; ISO 8502-4"));
        }

        if (humidityPercent > maxHumidityPercent)
        {
            findings.Add(new("too-damp", Severity.Warn, path, FormattableString.Invariant(
                $"The air is at {humidityPercent:0.#} % humidity and the data sheet allows {maxHumidityPercent:0.#} %. Dry the air before you pour."), "data sheet"));
        }

        return findings;
    }
}

/// <summary>The temperature to which air must cool for dew to form, by Magnus' formula.</summary>
/// <param name="A">Its first coefficient.</param>
/// <param name="BCelsius">Its second [°C].</param>
public sealed record DewPoint(double A, double BCelsius)
{
    internal const double LeastPercent = 1;
    internal const double MostPercent = 100;

    /// <summary>The coefficients used here: Alduchov and Eskridge 1996, −40 to 50 °C.</summary>
    public static DewPoint Magnus { get; } = new(17.625, 243.04);

    /// <summary>An older pair, 0 to 60 °C, for comparing with other people's tables.</summary>
    public static DewPoint OlderMagnus { get; } = new(17.27, 237.7);

    /// <summary>Dew point [°C] of air at a temperature [°C] and relative humidity [%].</summary>
    /// <exception cref="ArgumentOutOfRangeException">Temperature outside −40 to 60 °C or humidity outside 1 to 100 %.</exception>
    public static double Celsius(double airC, double humidityPercent) => Magnus.Of(airC, humidityPercent);

    /// <summary>As <see cref="Celsius"/> with this pair of coefficients.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Temperature outside −40 to 60 °C or humidity outside 1 to 100 %.</exception>
    public double Of(double airC, double humidityPercent)
    {
        Require.Within(airC, -40, 60, "°C");
        Require.Within(humidityPercent, LeastPercent, MostPercent, "%");
        var g = Math.Log(humidityPercent / 100) + (A * airC / (BCelsius + airC));
        return BCelsius * g / (A - g);
    }
}
