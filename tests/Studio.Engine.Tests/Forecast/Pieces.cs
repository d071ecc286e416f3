using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Forecast;

/// <summary>Invented pieces and resins.</summary>
internal static class Pieces
{
    /// <summary>A deep-pour resin as its sheet is fitted.</summary>
    public static FitState Deep { get; } = SheetFit.Run(DeepSheet()).Value.State;

    /// <summary>A casting resin as its sheet is fitted.</summary>
    public static FitState Casting { get; } = SheetFit.Run(new DataSheet { Class = "casting", CupMassG = 100, GelMinutes = 240, PeakCelsius = 155, DemouldHours = 18, MaxPourMm = 12 }).Value.State;

    public static DataSheet DeepSheet() => new() { Class = "deepPour", CupMassG = 1000, GelMinutes = 1050, PeakCelsius = 90, DemouldHours = 60, MaxPourMm = 50 };

    /// <summary>The study's pyramid: five layers of 50, 30, 30, 20 and 20 mm, 14 h apart.</summary>
    public static (HeatInput Input, MouldBody Mould) Pyramid(double roomC = 23, double apartHours = 14)
    {
        var spec = new MouldSpec("pyramid", new Dictionary<string, double> { ["sides"] = 4, ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 0 });
        return Layers(spec, [50, 30, 30, 20, 20], roomC, apartHours, (5 * apartHours) + 2);
    }

    /// <summary>One layer in a square tray of silicone.</summary>
    public static (HeatInput Input, MouldBody Mould) Tray(double deepMm, double roomC = 23, double untilHours = 72) =>
        Layers(new MouldSpec("cuboid", new Dictionary<string, double> { ["widthMm"] = 150, ["depthMm"] = 150, ["heightMm"] = 100 }), [deepMm], roomC, 24, untilHours);

    public static (HeatInput Input, MouldBody Mould) Layers(MouldSpec spec, double[] deepMm, double roomC, double apartHours, double untilHours)
    {
        var kinetics = new Kinetics { RateAt23CPerS = 4e-5, Kappa = 0.04, ActivationJPerMol = 55e3, HeatJPerKg = 360e3 };
        var layers = new List<HeatLayer>();
        var from = 0.0;
        foreach (var mm in deepMm)
        {
            layers.Add(new HeatLayer(kinetics, 1100, 1900, 0.19, from, from + mm, layers.Count * apartHours, roomC));
            from += mm;
        }

        return (new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10, StartCelsius = roomC },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, roomC)],
            Layers = layers,
            UntilHours = untilHours,
        }, MouldShapes.Make(spec).Value);
    }
}
