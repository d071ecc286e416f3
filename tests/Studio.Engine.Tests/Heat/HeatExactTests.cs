using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>Exact solutions of conduction, by which the grid and the time steps are known to be right.</summary>
public sealed class HeatExactTests
{
    [Fact]
    public void Heat_shut_in_rises_by_what_is_released() // adiabatic: H a / c
    {
        var kinetics = new Kinetics { RateAt23CPerS = 1e-3, Kappa = 0.05, ActivationJPerMol = 0, HeatJPerKg = 380_000, VitrificationOffsetK = 1000, GlassEndC = 50 };
        var spec = Cylinder(40, 40);
        var input = Input(spec, [new HeatLayer(kinetics, 1000, 2000, 0.2, 0, 40, 0, 20)], 20, 40, 1e-6);
        var outcome = HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(2, 4, 1), stop: TestContext.Current.CancellationToken);
        var layer = outcome.Layers[0];
        layer.MeanConversion.ShouldBeGreaterThan(0.99);
        (layer.PeakCelsius - 20).ShouldBe(380_000 * layer.MeanConversion / 2000, 1e-9 * 190);
        outcome.EnergyMiss.ShouldBe(0, 1e-9);
    }

    /// <summary>Two half spaces brought together: their face is at (e1 T1 + e2 T2)/(e1 + e2), e = √(k ρ c) (Carslaw and Jaeger, 2nd ed., 2.15; from memory).</summary>
    [Theory]
    [InlineData(0.2, 1000, 2000, 40)] // alike: the mean
    [InlineData(0.8, 2000, 1000, 33.3333333)] // e doubled: (60 + 2 × 20)/3 = 33.33
    public void Two_bodies_in_contact_meet_at_their_mean_by_effusivity(double conductivity, double density, double heat, double face)
    {
        var spec = Cylinder(400, 200);
        HeatLayer[] layers =
        [
            new(ExactBodies.Inert, 1000, 2000, 0.2, 0, 100, 0, 60),
            new(ExactBodies.Inert, density, heat, conductivity, 100, 200, 1e-6, 20),
        ];
        var input = Input(spec, layers, 20, 0.5, 1e-6);
        var outcome = HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(2, 80, 1), stop: TestContext.Current.CancellationToken);
        outcome.Layers[1].Curve[^1].HottestC.ShouldBe(face, 0.02); // the warmest of the upper layer is the common face
    }

    [Fact]
    public void A_thin_layer_over_a_thick_one_is_as_hot_as_over_a_thin_one() // the same cured resin, told as one layer or as two
    {
        var fast = new Kinetics { RateAt23CPerS = 8e-4, Kappa = 0.06, ActivationJPerMol = 57_000, HeatJPerKg = 390_000, GlassEndC = 60 };
        double Peak(params double[] tops)
        {
            var spec = new MouldSpec("pyramid", new Dictionary<string, double> { ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 10 });
            var layers = tops.Select((to, i) => new HeatLayer(i == tops.Length - 1 ? fast : ExactBodies.Inert, 1100, 1900, 0.19, i == 0 ? 0 : tops[i - 1], to, i * 1e-3, 23)).ToList();
            var input = new HeatInput { Mould = spec, Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10 }, Boundary = new BoundarySpec(), Room = [new RoomReading(0, 23)], Layers = layers, UntilHours = 3 };
            return HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(8, 10, 3), stop: TestContext.Current.CancellationToken).Layers[^1].PeakCelsius;
        }

        var split = Peak(132, 140, 146, 149.75);
        split.ShouldBeGreaterThan(40);
        Peak(146, 149.75).ShouldBe(split, 0.03 * (split - 23));
    }

    private static MouldSpec Cylinder(double diameterMm, double heightMm) =>
        new("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = diameterMm, ["topDiameterMm"] = diameterMm, ["heightMm"] = heightMm });

    // nothing goes out; the wall takes no part
    private static HeatInput Input(MouldSpec spec, IReadOnlyList<HeatLayer> layers, double startC, double hours, double wallCapacity) => new()
    {
        Mould = spec,
        Wall = new WallSpec { ThicknessMm = 0.001, FloorMm = 0.001, ConductivityWPerMK = 0.2, DensityKgPerM3 = wallCapacity, HeatCapacityJPerKgK = 1, StartCelsius = startC },
        Boundary = new BoundarySpec(0, 0, 0, 0),
        Room = [new RoomReading(0, 20)],
        Layers = layers,
        UntilHours = hours,
    };
}
