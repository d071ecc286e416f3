using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Fit;

/// <summary>A made-up resin, the sheet that its maker would print, and what it truly does: on finer grids than the fit uses, through the public solver alone.</summary>
public sealed class MadeResin
{
    private static readonly HeatFineness Fine = new(8, 12, 3);

    private readonly Random random;
    private readonly double criterionC;
    private readonly Dictionary<(double DeepMm, double RoomC), LayerHeat> ran = [];

    /// <summary>Draws a resin.</summary>
    /// <param name="kind">Class key.</param>
    /// <param name="number">Draws the resin; the same one every time.</param>
    /// <param name="otherForm">Kinetics of another form than the fit's, and other material values.</param>
    public MadeResin(string kind, int number, bool otherForm)
    {
        (Kind, OtherForm) = (kind, otherForm);
        random = new Random(number);
        var (low, high, heat, glass) = kind switch
        {
            "deepPour" => (2.2e-5, 6e-5, 360e3, 52.0),
            "casting" => (7e-5, 2.2e-4, 370e3, 55.0),
            _ => (4.5e-4, 1.3e-3, 390e3, 58.0),
        };
        var kinetics = new Kinetics
        {
            RateAt23CPerS = low * Math.Pow(high / low, random.NextDouble()),
            Kappa = 0.04 * Math.Exp(0.55 * Normal()),
            HeatJPerKg = heat * Math.Exp(0.1 * Normal()),
            ActivationJPerMol = 55e3 + (5e3 * Normal()),
            GlassEndC = glass + (otherForm ? 6 : 0) + (2 * Normal()),
        };
        if (otherForm)
        {
            // the rate is set so that a film gels about when it would have
            kinetics = kinetics with { M = 0.75, N = 1.6, RateAt23CPerS = kinetics.RateAt23CPerS * 0.78 };
        }

        Truth = new(kinetics, otherForm ? 1120 : 1100, otherForm ? 1780 : 1900, otherForm ? 0.21 : 0.19, Math.Exp(0.2 * Normal()), Math.Clamp(0.78 + (0.04 * Normal()), 0.68, 0.87));
        criterionC = Math.Clamp(60 + (14 * Normal()), 38, 90);
    }

    public string Kind { get; }

    public bool OtherForm { get; }

    public FitResin Truth { get; }

    /// <summary>Rounded as sheets round.</summary>
    public DataSheet Sheet()
    {
        var massG = Kind == "deepPour" ? 1000 : 100;
        var cup = Cup(massG);
        var gelMinutes = cup.FirstGelAfterHours!.Value * 60;
        var demouldHours = FilmHours(Truth.Kinetics, 23, Truth.DemouldConversion);
        return new DataSheet
        {
            Class = Kind,
            CupMassG = massG,
            GelMinutes = Nearest(gelMinutes, gelMinutes < 30 ? 1 : gelMinutes < 60 ? 5 : gelMinutes < 300 ? 10 : 30),
            PeakCelsius = Nearest(cup.PeakCelsius, 5),
            DemouldHours = Nearest(demouldHours, demouldHours < 6 ? 0.5 : demouldHours < 24 ? 1 : demouldHours < 48 ? 6 : 12),
            MaxPourMm = Depth(),
        };
    }

    /// <summary>A layer of a depth in a round tray of silicone, as wide as a square of 150 mm.</summary>
    public static HeatInput Tray(FitResin resin, double deepMm, double roomC, double untilHours) => new()
    {
        Mould = Cylinder(165, deepMm),
        Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10, StartCelsius = roomC },
        Boundary = new BoundarySpec(10 * resin.FilmFactor, 8 * resin.FilmFactor, 5 * resin.FilmFactor),
        Room = [new RoomReading(0, roomC)],
        Layers = [new HeatLayer(resin.Kinetics, resin.DensityKgPerM3, resin.HeatCapacityJPerKgK, resin.ConductivityWPerMK, 0, deepMm, 0, roomC)],
        UntilHours = untilHours,
    };

    /// <summary>What a layer does, on the fine grid.</summary>
    public LayerHeat True(double deepMm, double roomC, double untilHours)
    {
        if (!ran.TryGetValue((deepMm, roomC), out var heat))
        {
            ran[(deepMm, roomC)] = heat = Run(Tray(Truth, deepMm, roomC, untilHours), Fine);
        }

        return heat;
    }

    public static LayerHeat Run(HeatInput input, HeatFineness fineness) => HeatRun.Run(input, MouldShapes.Make(input.Mould).Value, fineness).Layers[0];

    /// <summary>A thermometer's log of a layer: every so often, rounded to 0.1 K, with 0.5 K of noise and half a kelvin of its own error.</summary>
    public IReadOnlyList<LogReading> Log(double deepMm, double roomC, double untilHours)
    {
        var curve = True(deepMm, roomC, untilHours).Curve;
        var off = 0.5 * Normal();
        return [.. curve.Where((_, i) => i % 2 == 0).Select(m => new LogReading(m.AfterHours, Math.Round(m.HottestC + off + (0.5 * Normal()), 1)))];
    }

    /// <summary>Hours of a film at one temperature to a conversion, by the midpoint rule.</summary>
    public static double FilmHours(Kinetics k, double celsius, double conversion)
    {
        const int parts = 4000;
        return Enumerable.Range(0, parts).Sum(i => conversion / parts / k.PerS(conversion * (i + 0.5) / parts, celsius)) / 3600;
    }

    private static double Nearest(double value, double step) => Math.Max(step, Math.Round(value / step) * step);

    private static MouldSpec Cylinder(double acrossMm, double deepMm) =>
        new("cone", new Dictionary<string, double> { ["bottomDiameterMm"] = acrossMm, ["topDiameterMm"] = acrossMm, ["heightMm"] = deepMm });

    private LayerHeat Cup(double massG)
    {
        var mm = 10 * Math.Cbrt(4 * massG * 1000 / Truth.DensityKgPerM3 / Math.PI);
        var input = Tray(Truth, mm, 23, FilmHours(Truth.Kinetics, 23, 0.7) + 1) with
        {
            Mould = Cylinder(mm, mm),
            Wall = new WallSpec { ThicknessMm = 1, FloorMm = 1, ConductivityWPerMK = 0.2, DensityKgPerM3 = 1000, HeatCapacityJPerKgK = 1700 },
        };
        return Run(input, Fine);
    }

    // the depth at which a wide layer reaches what its maker will bear
    private double Depth()
    {
        var (low, high) = Kind switch { "deepPour" => (10.0, 90.0), "casting" => (4.0, 40.0), _ => (1.0, 16.0) };
        for (var i = 0; i < 7; i++)
        {
            var middle = Math.Sqrt(low * high);
            (low, high) = SlabPeak(middle) < criterionC ? (middle, high) : (low, middle);
        }

        return Nearest(Math.Sqrt(low * high), Kind switch { "deepPour" => 5, "casting" => 1, _ => 0.5 });
    }

    private double SlabPeak(double deepMm) => Run(
        Tray(Truth, deepMm, 23, FilmHours(Truth.Kinetics, 23, 0.66) + 1) with
        {
            Mould = Cylinder(500, deepMm),
            Wall = new WallSpec { ThicknessMm = 0, FloorMm = 10 },
            Boundary = new BoundarySpec(10 * Truth.FilmFactor, 0, 5 * Truth.FilmFactor),
        },
        new HeatFineness(1, 12, 3)).PeakCelsius;

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
