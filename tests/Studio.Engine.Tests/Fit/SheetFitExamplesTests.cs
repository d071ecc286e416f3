using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Fit;

/// <summary>
/// Three sheets that were worked out beforehand with another program (other mesh, other search, three dimensions) for resins whose truth was known: what it fitted, and what
/// the true resin does in a base layer of a pyramid of 150 × 150 mm on cured resin, 10 mm of silicone around it.
/// </summary>
public sealed class SheetFitExamplesTests(ITestOutputHelper output)
{
    public static TheoryData<Example> Examples =>
    [
        new Example(Sheet("deepPour", 1000, 1050, 90, 60, 35), new(3.41e-5, 0.028, 371e3, 55.1e3), [new(40, 23, 38.9, 36.3, 43.1), new(40, 28, 71.9, 58.8, 78.5)]),
        new Example(Sheet("casting", 100, 240, 155, 18, 12), new(1.22e-4, 0.033, 375e3, 55.4e3), [new(10, 23, 32.5, 31.8, 38.5), new(15, 23, 47.9, 46, 65)]),
        new Example(Sheet("fast", 100, 15, 240, 3, 3), new(7.5e-4, 0.062, 392e3, 57e3), [new(2.5, 23, 38.5, 34.4, 41.8), new(3.75, 23, 80, 52, 88)]),
    ];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Fits_what_the_other_program_fitted(Example example)
    {
        var (fit, want) = (SheetFit.Run(example.Sheet).Value, example.Fitted);
        var k = fit.Best.Kinetics;
        output.WriteLine(FormattableString.Invariant($"k {k.RateAt23CPerS:0.00e0} κ {k.Kappa:0.000} H {k.HeatJPerKg:0} E {k.ActivationJPerMol:0}"));
        (k.RateAt23CPerS / want.Rate).ShouldBe(1, 0.15); // ours fits the orders as well, which trade against the rate
        Math.Log(k.Kappa / want.Kappa).ShouldBe(0, 0.25);
        (k.HeatJPerKg / want.Heat).ShouldBe(1, 0.07);
        (k.ActivationJPerMol / 1000).ShouldBe(want.Activation / 1000, 4); // E is what a sheet tells least
        fit.Misfit.ShouldBeLessThan(1);
        fit.Findings.ShouldBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Examples))]
    [Trait("Slow", "solver")]
    public void Foretells_layers_as_the_other_program_did(Example example)
    {
        var fit = SheetFit.Run(example.Sheet).Value;
        foreach (var layer in example.Layers)
        {
            var said = Peak(fit.Best, layer);
            var interval = FitInterval.Of(fit.State.Members(24).Select(m => Peak(m, layer)));
            output.WriteLine(FormattableString.Invariant($"{layer.DeepMm} mm at {layer.RoomC} °C: {said:0.0} [{interval.From:0.0}, {interval.To:0.0}]; the other program [{layer.From}, {layer.To}], truth {layer.TrueC}"));
            said.ShouldBeInRange(layer.From, layer.To);
            interval.Holds(layer.TrueC).ShouldBeTrue();
        }
    }

    [Theory]
    [MemberData(nameof(Examples))]
    public void Says_what_it_cannot_know(Example example)
    {
        var fit = SheetFit.Run(example.Sheet).Value;
        fit.Identifiable.ShouldContain("rateAt23CPerS");
        fit.Identifiable.ShouldNotContain("activationJPerMol"); // one temperature does not tell it
        fit.Known.Single(k => k.Name == "activationJPerMol").Share.ShouldBeGreaterThan(0.7);
        fit.Known.Single(k => k.Name == "demouldConversion").RestsOn.ShouldNotBe("data"); // a time and a rate leave it open
    }

    private static DataSheet Sheet(string kind, double massG, double gelMinutes, double peakC, double demouldHours, double maxMm) =>
        new() { Class = kind, CupMassG = massG, GelMinutes = gelMinutes, PeakCelsius = peakC, DemouldHours = demouldHours, MaxPourMm = maxMm };

    // the cured resin is cut in two layers, so that a thin layer has thin cells under it
    private static double Peak(FitResin r, ExampleLayer layer)
    {
        var (mm, c) = (layer.DeepMm, layer.RoomC);
        var spec = new MouldSpec("pyramid", new Dictionary<string, double> { ["sides"] = 4, ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 5 });
        HeatLayer Poured(Kinetics kinetics, double from, double to, double at) => new(kinetics, r.DensityKgPerM3, r.HeatCapacityJPerKgK, r.ConductivityWPerMK, from, to, at, c);
        var cured = r.Kinetics with { HeatJPerKg = 1 };
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10, StartCelsius = c },
            Boundary = new BoundarySpec(10 * r.FilmFactor, 8 * r.FilmFactor, 5 * r.FilmFactor),
            Room = [new RoomReading(0, c)],
            Layers = [Poured(cured, 0, 140 - mm, 0), Poured(cured, 140 - mm, 150 - mm, 0.01), Poured(r.Kinetics, 150 - mm, 150, 0.02)],
            UntilHours = 8 / 3600.0 / r.Kinetics.RateAt23CPerS,
        };
        return HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(6, 6, 1), preview: true).Layers[2].PeakCelsius;
    }

    public sealed record Example(DataSheet Sheet, ExampleKinetics Fitted, IReadOnlyList<ExampleLayer> Layers)
    {
        public override string ToString() => Sheet.Class!;
    }

    public sealed record ExampleKinetics(double Rate, double Kappa, double Heat, double Activation);

    public sealed record ExampleLayer(double DeepMm, double RoomC, double TrueC, double From, double To);
}
