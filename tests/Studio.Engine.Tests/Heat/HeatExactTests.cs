using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>Exact solutions of conduction, by which the grid and the time steps are known to be right.</summary>
public sealed class HeatExactTests
{
    // a resin that does not react, with round numbers: diffusivity 1e-7 m2/s
    private static readonly Kinetics Inert = new() { RateAt23CPerS = 1e-30, Kappa = 1, ActivationJPerMol = 0, HeatJPerKg = 0 };

    /// <summary>
    /// A body at 100 °C in a room at 0 °C with Bi = h L / k = 1.5, at Fo = a t / L² = 0.25, in its middle: cylinder 0.748332, cube 0.717079
    /// (one-term and full series, Carslaw and Jaeger, Conduction of Heat in Solids, chapters 6 and 7; restated and checked in our study).
    /// Long enough along its axis that the ends do not matter; the wall is a micrometre thick, so it takes no part.
    /// </summary>
    [Theory]
    [InlineData("cone", 0.748332)]
    [InlineData("cuboid", 0.801146)] // a square rod: the slab's 0.895067 squared
    public void A_long_body_cools_as_the_series_says_and_the_error_falls_with_the_square_of_the_cell(string shape, double exact)
    {
        var errors = new[] { 4, 8, 16 }.Select(n => Math.Abs(Middle(shape, n) - exact)).ToList();
        errors[2].ShouldBeLessThan(1.2e-3, string.Join(" ", errors));
        Order(errors).ShouldBeGreaterThan(shape == "cone" ? 1.5 : 1.8);
    }

    [Fact]
    public void Heat_shut_in_rises_by_what_is_released() // adiabatic: H a / c
    {
        var kinetics = new Kinetics { RateAt23CPerS = 1e-3, Kappa = 0.05, ActivationJPerMol = 0, HeatJPerKg = 380_000, VitrificationOffsetK = 1000, GlassEndC = 50 };
        var outcome = Run("cone", kinetics, new BoundarySpec(0, 0, 0, 0), 20, 20, 40, new HeatFineness(2, 4, 1), wallCapacity: 1);
        var layer = outcome.Layers[0];
        (layer.PeakCelsius - 20).ShouldBe(380_000 * layer.MeanConversion / 2000, 1e-6 * 190);
        outcome.EnergyMiss.ShouldBe(0, 1e-9);
    }

    [Fact]
    public void Two_bodies_in_contact_meet_at_their_mean_by_effusivity() // (e1 T1 + e2 T2)/(e1 + e2), Carslaw and Jaeger 2.15; of equal resins, the mean
    {
        var spec = new MouldSpec("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = 400, ["topDiameterMm"] = 400, ["heightMm"] = 200 });
        var layers = new[] { 100.0, 200 }.Select((to, i) => new HeatLayer(Inert, 1000, 2000, 0.2, to - 100, to, i * 1e-6, i == 0 ? 60 : 20)).ToList();
        var input = Input(spec, layers, new BoundarySpec(0, 0, 0, 0), 60, 20, 0.5, 1e-6);
        var outcome = HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(2, 40, 1), stop: TestContext.Current.CancellationToken);
        outcome.Layers[1].Curve[^1].HottestC.ShouldBe(40, 0.05); // the warmest of the upper layer is the common face
    }

    [Fact]
    public void A_thin_layer_over_a_thick_one_is_as_hot_as_over_a_thin_one() // the same cured resin, told as one layer or as two
    {
        var fast = new Kinetics { RateAt23CPerS = 8e-4, Kappa = 0.06, ActivationJPerMol = 57_000, HeatJPerKg = 390_000, GlassEndC = 60 };
        double Peak(params double[] tops)
        {
            var spec = new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 10 });
            var layers = tops.Select((to, i) => new HeatLayer(i == tops.Length - 1 ? fast : Inert, 1100, 1900, 0.19, i == 0 ? 0 : tops[i - 1], to, i * 1e-3, 23)).ToList();
            var input = new HeatInput { Mould = spec, Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10 }, Boundary = new BoundarySpec(), Room = [new RoomReading(0, 23)], Layers = layers, UntilHours = 3 };
            return HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(8, 10, 3), stop: TestContext.Current.CancellationToken).Layers[^1].PeakCelsius;
        }

        var split = Peak(132, 140, 146, 149.75);
        split.ShouldBeGreaterThan(40);
        Peak(146, 149.75).ShouldBe(split, 0.03 * (split - 23));
    }

    private static double Middle(string shape, int cells)
    {
        // L = 20 mm, k = 0.2, h = 15: Bi 1.5; a = 1e-7: t = 0.25 L²/a = 1000 s
        var outcome = Run(shape, Inert, new BoundarySpec(0, 15, 0, 0), 0, 100, 1000 / 3600.0, new HeatFineness(cells, 2, 1, 0.1), wallCapacity: 1e-3);
        return outcome.Layers[0].Curve[^1].HottestC / 100;
    }

    private static HeatOutcome Run(string shape, Kinetics kinetics, BoundarySpec boundary, double roomC, double poured, double hours, HeatFineness fineness, double wallCapacity)
    {
        var sizes = shape == "cone"
            ? new Dictionary<string, double> { ["bottomDiameterMm"] = 40, ["topDiameterMm"] = 40, ["heightMm"] = 40 }
            : new Dictionary<string, double> { ["widthMm"] = 40, ["depthMm"] = 40, ["heightMm"] = 40 };
        var spec = new MouldSpec(shape, sizes);
        var input = Input(spec, [new HeatLayer(kinetics, 1000, 2000, 0.2, 0, 40, 0, poured)], boundary, poured, roomC, hours, wallCapacity);
        return HeatRun.Run(input, MouldShapes.Make(spec).Value, fineness, stop: TestContext.Current.CancellationToken);
    }

    private static HeatInput Input(MouldSpec spec, IReadOnlyList<HeatLayer> layers, BoundarySpec boundary, double startC, double roomC, double hours, double wallCapacity) => new()
    {
        Mould = spec,
        Wall = new WallSpec { ThicknessMm = 0.001, FloorMm = 0.001, ConductivityWPerMK = 0.2, DensityKgPerM3 = wallCapacity, HeatCapacityJPerKgK = 1, StartCelsius = startC },
        Boundary = boundary,
        Room = [new RoomReading(0, roomC)],
        Layers = layers,
        UntilHours = hours,
    };

    private static double Order(List<double> errors) => Math.Log2(errors[^2] / errors[^1]);
}
