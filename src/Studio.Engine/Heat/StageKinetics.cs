using System.Numerics;
using Studio.Engine.Cure;

namespace Studio.Engine.Heat;

/// <summary>Conversion per second at many points of one layer, and how it changes: <see cref="Kinetics.PerS"/>, several at once. Allocates nothing.</summary>
internal readonly struct StageKinetics
{
    private const double ZeroC = 273.15;

    // a stage of a step that will be refused may look far outside; no resin is either [°C]
    private const double ColdestC = -100;
    private const double HottestC = 350;

    // a resin that runs away is done within seconds, and nobody asks in which part of one [1/s]
    private const double MostPerS = 0.5;

    // where α^m has no slope any more for m below 1
    private const double LeastConversion = 1e-9;

    private readonly Kinetics kinetics;
    private readonly bool usual;
    private readonly Vector<double> energy;
    private readonly Vector<double> given;
    private readonly Vector<double> kappaEnergy;
    private readonly Vector<double> kappaGiven;
    private readonly Vector<double> from;
    private readonly Vector<double> span;
    private readonly Vector<double> less;
    private readonly Vector<double> width;

    public StageKinetics(Kinetics kinetics)
    {
        this.kinetics = kinetics;
        usual = kinetics is { M: 1, N: 2, KappaEnergyJPerMol: 0 };
        energy = new(kinetics.ActivationJPerMol / Kinetics.GasConstant);
        given = new((kinetics.ActivationJPerMol / Kinetics.GasConstant / Kinetics.ReferenceK) + Math.Log(kinetics.RateAt23CPerS));
        kappaEnergy = new(kinetics.KappaEnergyJPerMol / Kinetics.GasConstant);
        kappaGiven = new((kinetics.KappaEnergyJPerMol / Kinetics.GasConstant / Kinetics.ReferenceK) + Math.Log(Math.Max(1e-300, kinetics.Kappa)));
        from = new(kinetics.GlassStartC - kinetics.VitrificationOffsetK);
        span = new((kinetics.GlassEndC - kinetics.GlassStartC) * kinetics.Lambda);
        less = new(1 - kinetics.Lambda);
        width = new(1 / kinetics.VitrificationWidthK);
    }

    /// <summary>Fills the rates [1/s] from conversions and temperatures [°C].</summary>
    public void Rates(ReadOnlySpan<double> conversion, ReadOnlySpan<double> celsius, Span<double> rate)
    {
        var (k, w) = (0, Vector<double>.Count);
        for (; k <= rate.Length - w; k += w)
        {
            Rate(new Vector<double>(conversion[k..]), new Vector<double>(celsius[k..])).CopyTo(rate[k..]);
        }

        if (k < rate.Length)
        {
            Span<double> few = stackalloc double[2 * w];
            few.Clear();
            conversion[k..].CopyTo(few);
            celsius[k..].CopyTo(few[w..]);
            Rate(new Vector<double>(few), new Vector<double>(few[w..])).CopyTo(few);
            few[..(rate.Length - k)].CopyTo(rate[k..]);
        }
    }

    /// <summary>The same with its slopes by conversion [1/s] and by temperature [1/(s K)].</summary>
    public void Slopes(ReadOnlySpan<double> conversion, ReadOnlySpan<double> celsius, Span<double> rate, Span<double> byConversion, Span<double> byKelvin)
    {
        Span<double> few = stackalloc double[5 * Vector<double>.Count];
        for (var k = 0; k < rate.Length; k += Vector<double>.Count)
        {
            var n = Math.Min(Vector<double>.Count, rate.Length - k);
            if (n == Vector<double>.Count)
            {
                Few(conversion[k..], celsius[k..], rate[k..], byConversion[k..], byKelvin[k..]);
                continue;
            }

            var w = Vector<double>.Count;
            few.Clear();
            conversion.Slice(k, n).CopyTo(few);
            celsius.Slice(k, n).CopyTo(few[w..]);
            Few(few, few[w..], few[(2 * w)..], few[(3 * w)..], few[(4 * w)..]);
            few.Slice(2 * w, n).CopyTo(rate[k..]);
            few.Slice(3 * w, n).CopyTo(byConversion[k..]);
            few.Slice(4 * w, n).CopyTo(byKelvin[k..]);
        }
    }

    private Vector<double> Rate(Vector<double> a, Vector<double> celsius)
    {
        var c = Held(celsius);
        var kelvin = c + new Vector<double>(ZeroC);
        var (left, order, _) = Order(a, kelvin);
        return Vector.Min(new Vector<double>(MostPerS), Vector.Exp(given - (energy / kelvin)) * order * left * Mobility(a, c));
    }

    private static Vector<double> Held(Vector<double> celsius) => Vector.Min(new Vector<double>(HottestC), Vector.Max(new Vector<double>(ColdestC), celsius));

    private void Few(ReadOnlySpan<double> conversion, ReadOnlySpan<double> celsius, Span<double> rate, Span<double> byConversion, Span<double> byKelvin)
    {
        var (one, a, c) = (Vector<double>.One, new Vector<double>(conversion), Held(new Vector<double>(celsius)));
        var kelvin = c + new Vector<double>(ZeroC);
        var (left, order, kappa) = Order(a, kelvin);
        var (done, rest) = (Vector.Max(new Vector<double>(LeastConversion), a), Vector.Max(new Vector<double>(LeastConversion), one - a));
        var mobility = Mobility(a, c);
        var constant = Vector.Exp(given - (energy / kelvin)) * mobility;
        var r = constant * order * left;
        var most = new Vector<double>(MostPerS);
        var slower = Vector.ConditionalSelect(Vector.GreaterThan(r, most), most / r, one);
        (r, constant) = (r * slower, constant * slower);
        var stopping = r * (one - mobility) * width;
        var glass = one - (less * a);
        r.CopyTo(rate);
        ((constant * left * ((new Vector<double>(kinetics.M) * (order - kappa) / done) - (new Vector<double>(kinetics.N) * order / rest))) - (stopping * span / (glass * glass))).CopyTo(byConversion);
        (((r * energy) + (constant * left * kappa * kappaEnergy)) / (kelvin * kelvin) + stopping).CopyTo(byKelvin);
    }

    // (1 − α)ⁿ, κ + αᵐ and κ
    private (Vector<double> Left, Vector<double> Order, Vector<double> Kappa) Order(Vector<double> a, Vector<double> kelvin)
    {
        var (left, done) = (Vector.Max(Vector<double>.Zero, Vector<double>.One - a), Vector.Max(Vector<double>.Zero, a));
        if (usual)
        {
            var same = new Vector<double>(kinetics.Kappa);
            return (left * left, same + done, same);
        }

        var kappa = kinetics.KappaEnergyJPerMol == 0 ? new Vector<double>(kinetics.Kappa) : Vector.Exp(kappaGiven - (kappaEnergy / kelvin));
        return (Power(left, kinetics.N), kappa + Power(done, kinetics.M), kappa);
    }

    private static Vector<double> Power(Vector<double> x, double exponent) => exponent switch
    {
        0 => Vector<double>.One,
        1 => x,
        2 => x * x,
        _ => Vector.ConditionalSelect(Vector.GreaterThan(x, Vector<double>.Zero), Vector.Exp(new Vector<double>(exponent) * Vector.Log(Vector.Max(new Vector<double>(1e-300), x))), Vector<double>.Zero),
    };

    private Vector<double> Mobility(Vector<double> a, Vector<double> celsius) =>
        Vector<double>.One / (Vector<double>.One + Vector.Exp((from + (span * a / (Vector<double>.One - (less * a))) - celsius) * width));
}
