using Studio.Engine.Heat;

namespace Studio.Engine.Tests.Heat;

/// <summary>
/// Bodies at 100 °C that cool in a room at 0 °C with Bi = h L/k = 1.5: at Fo = a t/L² = 0.25 against the full series
/// (Carslaw and Jaeger, Conduction of Heat in Solids, 2nd ed.: slab 3.11, cylinder 7.7, sphere 9.4; cube by the product 5.6; from memory, and the values in
/// our study agree to six digits).
/// </summary>
public sealed class HeislerTests
{
    private const double Bi = 1.5;
    private const double Fo = 0.25;

    [Theory]
    [InlineData("slab", 0.895067)]
    [InlineData("cylinder", 0.748332)]
    [InlineData("sphere", 0.594109)]
    [InlineData("cube", 0.717079)]
    public void Series_are_those_of_the_tables(string body, double value) => Exact(body)(0, 0).ShouldBe(value, 1e-6);

    [Theory]
    [InlineData("slab", 4, 2e-4)]
    [InlineData("cylinder", 4, 4e-4)]
    [InlineData("sphere", 4, 1e-3)]
    [InlineData("rod", 4, 2e-4)]
    [InlineData("rod by eighths", 6, 4e-4)]
    [InlineData("cube", 3, 4e-4)]
    [InlineData("cube by eighths", 3, 1e-3)]
    [Trait("Slow", "solver")]
    public void Error_falls_with_the_square_of_the_cell(string body, int coarsest, double most)
    {
        var exact = Exact(body.Split(' ')[0]);
        var errors = new[] { 1, 2, 4 }.Select(n => Error(body, n * coarsest, exact)).ToList();
        var orders = errors.Zip(errors.Skip(1), (a, b) => Math.Log2(a / b)).ToList();
        errors[2].ShouldBeLessThan(most);
        orders.ShouldAllBe(o => o > 1.8, string.Join(" ", errors));
    }

    // root of the mean square over the section's nodes
    private static double Error(string body, int cells, Func<double, double, double> exact)
    {
        var film = Bi * 0.2 / ExactBodies.HalfM;
        var hours = Fo * ExactBodies.HalfM * ExactBodies.HalfM / 1e-7 / 3600;
        var (input, grid) = ExactBodies.Make(body, cells, film, hours, 100);
        var outcome = HeatRun.Run(input with { PictureHours = [hours] }, grid, 0.1, TestContext.Current.CancellationToken);
        var (section, picture) = (outcome.Section!, outcome.Pictures.ShouldHaveSingleItem());
        const double half = 1000 * ExactBodies.HalfM;
        return Math.Sqrt(Enumerable.Range(0, section.XMm.Length)
            .Select(n => (X: section.XMm[n] / half, Z: (section.ZMm[n] / half) - 1, At: picture.Celsius[n] / 100))
            .Where(n => n.X < 1.00001 && Math.Abs(n.Z) < 1.00001)
            .Average(n => Math.Pow(n.At - exact(n.X, n.Z), 2)));
    }

    private static Func<double, double, double> Exact(string body)
    {
        var slab = Slab();

        // x J1(x) = Bi J0(x); 2 J1/(x (J0² + J1²)) J0(x r)
        var cylinder = Terms(x => (x * J(1, x)) - (Bi * J(0, x)), x => 2 * J(1, x) / (x * ((J(0, x) * J(0, x)) + (J(1, x) * J(1, x)))));

        // 1 − x cot x = Bi; 4 (sin x − x cos x)/(2x − sin 2x) sin(x r)/(x r)
        var sphere = Terms(x => ((1 - Bi) * Math.Sin(x)) - (x * Math.Cos(x)), x => 4 * (Math.Sin(x) - (x * Math.Cos(x))) / ((2 * x) - Math.Sin(2 * x)));
        double Flat(double x) => slab.Sum(t => t.Share * Math.Cos(t.Root * x));
        return body switch
        {
            "slab" => (_, z) => Flat(z),
            "rod" => (x, _) => Flat(x) * Flat(0),
            "cube" => (x, z) => Flat(x) * Flat(0) * Flat(z),
            "cylinder" => (x, _) => cylinder.Sum(t => t.Share * J(0, t.Root * x)),
            _ => (x, z) => sphere.Sum(t => t.Share * Sinc(t.Root * Math.Sqrt((x * x) + (z * z)))),
        };
    }

    private static double Sinc(double x) => x < 1e-9 ? 1 : Math.Sin(x) / x;

    // x tan x = Bi; 4 sin x/(2x + sin 2x) cos(x z)
    private static List<(double Root, double Share)> Slab() =>
        Terms(x => (x * Math.Sin(x)) - (Bi * Math.Cos(x)), x => 4 * Math.Sin(x) / ((2 * x) + Math.Sin(2 * x)));

    // the roots between 0 and 20, each found by halving, with what is left of each at Fo; what is left out is below 1e-40
    private static List<(double Root, double Share)> Terms(Func<double, double> zero, Func<double, double> share)
    {
        var terms = new List<(double Root, double Share)>();
        const double step = 0.05;
        for (var x = 0.02; x < 20; x += step)
        {
            var (low, high) = (x, x + step);
            if (zero(low) * zero(high) > 0)
            {
                continue;
            }

            for (var n = 0; n < 60; n++)
            {
                var middle = (low + high) / 2;
                (low, high) = zero(low) * zero(middle) > 0 ? (middle, high) : (low, middle);
            }

            terms.Add((low, share(low) * Math.Exp(-low * low * Fo)));
        }

        return terms;
    }

    // Bessel's integral, by the trapezium rule (exact for a periodic integrand)
    private static double J(int order, double x) => Enumerable.Range(0, 100).Average(k => Math.Cos((order * Math.PI * k / 50) - (x * Math.Sin(Math.PI * k / 50))));
}
