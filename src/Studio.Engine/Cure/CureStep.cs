using System.Runtime.InteropServices;

namespace Studio.Engine.Cure;

/// <summary>One step of the integration: the temperature is linear in it, the conversion never falls.</summary>
/// <param name="FromHours">Start [h].</param>
/// <param name="ToHours">End [h].</param>
/// <param name="FromConversion">At the start [ratio].</param>
/// <param name="ToConversion">At the end [ratio].</param>
/// <param name="FromC">Temperature at the start [°C].</param>
/// <param name="CPerHour">How it changes [°C/h].</param>
[StructLayout(LayoutKind.Auto)]
internal readonly record struct CureStep(double FromHours, double ToHours, double FromConversion, double ToConversion, double FromC, double CPerHour)
{
    internal double CelsiusAt(double hours) => FromC + (CPerHour * (hours - FromHours));

    /// <summary>Conversion at a time within the step: one shorter step from its start, so no less exact than the step itself.</summary>
    internal double ConversionAt(Kinetics kinetics, double hours) =>
        hours <= FromHours ? FromConversion
        : hours >= ToHours ? ToConversion
        : Math.Clamp(DormandPrince.Step(kinetics, FromConversion, FromC, CPerHour, hours - FromHours).Conversion, FromConversion, ToConversion);
}

/// <summary>
/// Dormand and Prince's Runge–Kutta pair of orders 5 and 4 (J. Comput. Appl. Math. 6 (1980) 19; coefficients from memory, checked by the
/// closed form in the tests): the fifth order is carried on, the difference tells the step's error.
/// </summary>
internal static class DormandPrince
{
    private const double SecondsPerHour = 3600;

    /// <summary>Conversion per hour.</summary>
    internal static double PerHour(Kinetics kinetics, double conversion, double celsius) => SecondsPerHour * kinetics.PerS(conversion, celsius);

    /// <summary>One step of <paramref name="h"/> hours.</summary>
    internal static (double Conversion, double Error, double LastPerHour) Step(Kinetics kinetics, double a, double c, double cPerHour, double h, double? firstPerHour = null)
    {
        double Rate(double share, double rise) => PerHour(kinetics, a + (h * rise), c + (cPerHour * h * share));
        var k1 = firstPerHour ?? PerHour(kinetics, a, c);
        var k2 = Rate(0.2, k1 / 5);
        var k3 = Rate(0.3, (3 * k1 / 40) + (9 * k2 / 40));
        var k4 = Rate(0.8, (44 * k1 / 45) - (56 * k2 / 15) + (32 * k3 / 9));
        var k5 = Rate(8.0 / 9, (19372 * k1 / 6561) - (25360 * k2 / 2187) + (64448 * k3 / 6561) - (212 * k4 / 729));
        var k6 = Rate(1, (9017 * k1 / 3168) - (355 * k2 / 33) + (46732 * k3 / 5247) + (49 * k4 / 176) - (5103 * k5 / 18656));
        var rise = (35 * k1 / 384) + (500 * k3 / 1113) + (125 * k4 / 192) - (2187 * k5 / 6784) + (11 * k6 / 84);
        var k7 = Rate(1, rise);
        var error = (71 * k1 / 57600) - (71 * k3 / 16695) + (71 * k4 / 1920) - (17253 * k5 / 339200) + (22 * k6 / 525) - (k7 / 40);
        return (Math.Min(1, a + (h * rise)), Math.Abs(h * error), k7);
    }
}
