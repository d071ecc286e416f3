using Studio.Engine.Cure;

namespace Studio.Engine.Fit;

/// <summary>Cure of a thin film that stays at one temperature: ∫ dα / rate(α), by Simpson's rule.</summary>
internal static class IsothermalClock
{
    private const int Halves = 60;
    private const double Nearly = 0.9999;

    /// <summary>Hours to a conversion [h].</summary>
    public static double Hours(Kinetics kinetics, double celsius, double conversion)
    {
        // α = end·s²: fine where the reaction has only begun and changes fastest
        double sum = 0;
        for (var i = 0; i <= 2 * Halves; i++)
        {
            var s = i / (2.0 * Halves);
            var weight = i is 0 or 2 * Halves ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight * 2 * s * conversion / kinetics.PerS(conversion * s * s, celsius);
        }

        return sum / (6.0 * Halves) / 3600;
    }

    /// <summary>Conversion after some hours, by halving.</summary>
    public static double Conversion(Kinetics kinetics, double celsius, double hours)
    {
        var (low, high) = (0.0, Nearly);
        for (var i = 0; i < 40; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Hours(kinetics, celsius, middle) < hours ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
