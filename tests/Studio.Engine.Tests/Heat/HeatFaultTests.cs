using CsCheck;
using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Heat;

/// <summary>Whatever is asked, the solver answers with numbers whose energy closes, or refuses in words; it never falls over and never runs on and on.</summary>
public sealed class HeatFaultTests
{
    private static readonly Gen<Kinetics> Kinetic =
        from rate in Gen.Double[-9, 3].Select(e => Math.Pow(10, e))
        from kappa in One(0.0, 1e-6, 0.03, 1, 100)
        from order in One((1.0, 2.0), (0.75, 1.6), (2.0, 1.0), (0.5, 3.0))
        from energy in One(0.0, 20_000, 57_000, 200_000)
        from heat in One(0.0, 100_000, 380_000, 900_000)
        from glass in One(-20.0, 55, 140)
        from width in One(0.05, 5, 40)
        from lambda in One(0.01, 0.4, 1)
        select new Kinetics
        {
            RateAt23CPerS = rate,
            Kappa = kappa,
            M = order.Item1,
            N = order.Item2,
            ActivationJPerMol = energy,
            HeatJPerKg = heat,
            GlassEndC = glass,
            VitrificationWidthK = width,
            Lambda = lambda,
        };

    private static readonly Gen<HeatInput> Inputs =
        from kinetics in Kinetic.Array[1, 3]
        from mould in One(
            Spec("pyramid", ("baseMm", 150), ("heightMm", 150), ("tipMm", 10)), Spec("pyramid", ("baseMm", 400), ("heightMm", 5), ("tipMm", 1)),
            Spec("pyramid", ("baseMm", 20), ("heightMm", 900), ("tipMm", 1)), Spec("pyramid", ("sides", 7), ("baseMm", 60), ("heightMm", 40), ("tipMm", 0)),
            Spec("cuboid", ("widthMm", 300), ("depthMm", 4), ("heightMm", 20)), Spec("prism", ("sides", 3), ("edgeMm", 40), ("heightMm", 30)),
            Spec("cone", ("bottomDiameterMm", 1), ("topDiameterMm", 100), ("heightMm", 60)), Spec("sphere", ("diameterMm", 60), ("openingDiameterMm", 10)),
            Spec("dome", ("diameterMm", 80)))
        from thick in One(0.1, 0.5, 3, 1000)
        from wall in One(0.01, 1, 10, 500)
        from film in One(0.0, 8, 10_000)
        from room in One(-20.0, 23, 55)
        from poured in One(-5.0, 23, 80)
        from hours in One(0.001, 1, 30, 2000)
        from former in One<FormerSpec?>(null, null, Box(5, 5), Box(140, 140), Box(60, 2), Box(1e4, 1e4))
        from silicone in Gen.Bool
        select new HeatInput
        {
            Mould = mould,
            Wall = new WallSpec { ThicknessMm = wall, FloorMm = wall, RoofMm = silicone ? 0 : wall, StartCelsius = room },
            Former = former,
            Fill = former is null ? null : new FillSpec(silicone, film),
            Boundary = new BoundarySpec(film, film, film, film),
            Room = [new RoomReading(0, room), new RoomReading(hours, room + 5)],
            Layers = Layers(kinetics, mould, thick, poured, hours),
            UntilHours = hours,
        };

    [Fact]
    [Trait("Slow", "solver")]
    public void Answers_with_sound_numbers_or_refuses() => Gen.Select(Inputs, Gen.Bool).Sample(
        (input, preview) =>
        {
            using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60)); // a hang is a fault
            try
            {
                var outcome = HeatRun.Run(input, MouldShapes.Make(input.Mould).Value, new HeatFineness(3, 3, 1), preview, patience.Token);
                outcome.Layers.ShouldAllBe(l => double.IsFinite(l.PeakCelsius) && l.PeakCelsius > -50 && l.LeastConversion >= 0 && l.MeanConversion <= 1 + 1e-9);
                Math.Abs(outcome.EnergyMiss).ShouldBeLessThan(1e-4);
            }
            catch (InvalidOperationException)
            {
                // refused
            }
        },
        iter: 80, threads: 1, print: t => $"{t.Item1} {string.Join(" ", t.Item1.Layers)} {t.Item1.Mould.Shape} {string.Join(" ", t.Item1.Mould.Dimensions)}");

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void Kinetics_that_are_no_number_are_refused(double rate)
    {
        var spec = Spec("cone", ("bottomDiameterMm", 40), ("topDiameterMm", 40), ("heightMm", 40));
        var kinetics = new Kinetics { RateAt23CPerS = rate, Kappa = 0.04, ActivationJPerMol = 57_000, HeatJPerKg = 380_000 };
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 5, FloorMm = 5 },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, 23)],
            Layers = Layers([kinetics], spec, 20, 23, 10),
            UntilHours = 10,
        };
        Should.Throw<InvalidOperationException>(() => HeatRun.Run(input, MouldShapes.Make(spec).Value, stop: TestContext.Current.CancellationToken)).Message.ShouldContain("could not be solved");
    }

    private static Gen<T> One<T>(params T[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    private static MouldSpec Spec(string shape, params (string Name, double Value)[] sizes) =>
        new(shape, sizes.ToDictionary(s => s.Name, s => s.Value, StringComparer.Ordinal));

    private static FormerSpec Box(double width, double depth) => new() { Solid = true, OuterWidthMm = width, OuterDepthMm = depth, FromMm = 2 };

    private static List<HeatLayer> Layers(Kinetics[] kinetics, MouldSpec spec, double thickMm, double pouredC, double hours)
    {
        var height = MouldShapes.Make(spec).Value.HeightMm;
        var layers = new List<HeatLayer>();
        double from = 0;
        for (var i = 0; i < kinetics.Length && from < height - 1e-6; i++)
        {
            var to = Math.Min(height, from + thickMm);
            layers.Add(new HeatLayer(kinetics[i], 1100, 1900, 0.19, from, to, hours * i / (kinetics.Length + 1), pouredC));
            from = to;
        }

        return layers;
    }
}
