using System.Numerics;
using Studio.Engine.Cure;

namespace Studio.Engine.Heat;

/// <summary>Conversion per second at many points of one layer: <see cref="Kinetics.PerS"/>, several at once.</summary>
internal static class StageKinetics
{
    private const double ZeroC = 273.15;

    /// <summary>Fills the rates [1/s] from conversions and temperatures [°C]; allocates nothing.</summary>
    public static void PerS(Kinetics kinetics, ReadOnlySpan<double> conversion, ReadOnlySpan<double> celsius, Span<double> rate)
    {
        var k = kinetics.M == 1 && kinetics.N == 2 ? Many(kinetics, conversion, celsius, rate) : 0;
        for (; k < rate.Length; k++)
        {
            rate[k] = kinetics.PerS(conversion[k], celsius[k]);
        }
    }

    private static int Many(Kinetics kinetics, ReadOnlySpan<double> conversion, ReadOnlySpan<double> celsius, Span<double> rate)
    {
        var (step, one) = (Vector<double>.Count, Vector<double>.One);
        var energy = kinetics.ActivationJPerMol / Kinetics.GasConstant;
        var (warm, given) = (new Vector<double>(energy), new Vector<double>(energy / Kinetics.ReferenceK));
        var (at23, kappa) = (new Vector<double>(kinetics.RateAt23CPerS), new Vector<double>(kinetics.Kappa));
        var (from, span, less) = (new Vector<double>(kinetics.GlassStartC - kinetics.VitrificationOffsetK), new Vector<double>((kinetics.GlassEndC - kinetics.GlassStartC) * kinetics.Lambda), new Vector<double>(1 - kinetics.Lambda));
        var (width, zero) = (new Vector<double>(1 / kinetics.VitrificationWidthK), new Vector<double>(ZeroC));
        var k = 0;
        for (; k <= rate.Length - step; k += step)
        {
            var (a, t) = (new Vector<double>(conversion[k..]), new Vector<double>(celsius[k..]));
            var left = Vector.Max(Vector<double>.Zero, one - a);
            var order = (kappa + Vector.Max(Vector<double>.Zero, a)) * left * left;
            var stopped = Vector.Exp((from + (span * a / (one - (less * a))) - t) * width);
            (at23 * Vector.Exp(given - (warm / (t + zero))) * order / (one + stopped)).CopyTo(rate[k..]);
        }

        return k;
    }
}
