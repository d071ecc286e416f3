using System.Globalization;
using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Forecast;

/// <summary>
/// Moulds whose walls are known, run in three dimensions and again as if nothing but their areas were known: what the round body is wrong by.
/// </summary>
public static class RoundCases
{
    private static readonly Kinetics[] Resins =
    [
        new() { RateAt23CPerS = 4e-5, Kappa = 0.04, ActivationJPerMol = 55_000, HeatJPerKg = 360_000 }, // deep-pour
        new() { RateAt23CPerS = 1e-4, Kappa = 0.03, ActivationJPerMol = 57_000, HeatJPerKg = 350_000, GlassEndC = 52 }, // the study's medium one
        new() { RateAt23CPerS = 3e-4, Kappa = 0.03, ActivationJPerMol = 55_000, HeatJPerKg = 380_000, GlassEndC = 60 }, // casting
        new() { RateAt23CPerS = 1.2e-3, Kappa = 0.05, ActivationJPerMol = 52_000, HeatJPerKg = 400_000, GlassEndC = 60 }, // fast
    ];

    private static readonly string[] ResinNames = ["deep", "medium", "casting", "fast"];

    /// <summary>Every case.</summary>
    public static IReadOnlyList<RoundCase> All { get; } = [.. Shapes().SelectMany(s => s.Depths.SelectMany(d => Enumerable.Range(0, Resins.Length).Select(r => new RoundCase($"{s.Name}, {d}, {ResinNames[r]}", s.Spec, Deep(d), Resins[r]))))
        .Concat(Formers().SelectMany(f => Enumerable.Range(0, Resins.Length).Select(r => new RoundCase($"{f.Name}, {f.Depths}, {ResinNames[r]}", f.Spec, Deep(f.Depths), Resins[r]) { Former = f.Former, Silicone = f.Silicone })))
        .Concat(Critical())];

    // where the round body almost runs away and the mould does not, they are furthest apart
    private static IEnumerable<RoundCase> Critical() =>
        from s in Shapes().Where(s => s.Name is "bar 1:4" or "oblong 1:4" or "oblong 1:3" or "oblong 1:2" or "prism of 3")
        from deep in new[] { "15", "40", "20+20" }
        from times in new[] { 1.25, 1.5, 1.75, 2, 2.5 }
        let at = Array.IndexOf(ResinNames, "medium")
        select new RoundCase(FormattableString.Invariant($"{s.Name}, {deep}, medium x {times}"), s.Spec, Deep(deep), Resins[at] with { RateAt23CPerS = Resins[at].RateAt23CPerS * times });

    private static double[] Deep(string words) => [.. words.Split('+').Select(x => double.Parse(x, CultureInfo.InvariantCulture))];

    // a box that makes a room for the lights, square and narrow, hollow and as a plug
    private static IEnumerable<(string Name, MouldSpec Spec, string Depths, FormerSpec Former, bool Silicone)> Formers()
    {
        foreach (var silicone in new[] { false, true })
        {
            foreach (var depths in new[] { "15+25", "40" })
            {
                yield return ($"square 120 around {(silicone ? "a plug" : "air")} of 60 x 60", Spec("cuboid", ("widthMm", 120), ("depthMm", 120), ("heightMm", 60)), depths, Box(60, 60), silicone);
                yield return ($"oblong 160 x 80 around {(silicone ? "a plug" : "air")} of 100 x 30", Spec("cuboid", ("widthMm", 160), ("depthMm", 80), ("heightMm", 60)), depths, Box(100, 30), silicone);
                yield return ($"pyramid 150 around {(silicone ? "a plug" : "air")} of 30 x 30", Spec("pyramid", ("sides", 4), ("baseMm", 150), ("heightMm", 100)), depths.Replace("25", "65", StringComparison.Ordinal).Replace("40", "80", StringComparison.Ordinal), Box(30, 30) with { FromMm = 50 }, silicone);
            }
        }
    }

    private static FormerSpec Box(double wide, double deep) => new() { OuterWidthMm = wide, OuterDepthMm = deep, FromMm = 10, Solid = true };

    /// <summary>The same mould as a water fill of many readings would tell it.</summary>
    public static MouldSpec Measured(MouldBody mould, int readings = 400) => new("measured", new Dictionary<string, double>(StringComparer.Ordinal))
    {
        Readings = [new(0, 0), .. Enumerable.Range(1, readings).Select(i => mould.HeightMm * i / readings).Select(z => new FillReading(z, mould.VolumeMl(z)))],
    };

    private static IEnumerable<(string Name, MouldSpec Spec, string[] Depths)> Shapes()
    {
        string[] usual = ["5", "15", "40", "20+20"];
        yield return ("pyramid 150", Spec("pyramid", ("sides", 4), ("baseMm", 150), ("heightMm", 150)), ["60", "50+30+30+20+20"]);
        yield return ("pyramid 80", Spec("pyramid", ("sides", 4), ("baseMm", 80), ("heightMm", 100)), ["80", "40+30"]);
        yield return ("pyramid of 3", Spec("pyramid", ("sides", 3), ("baseMm", 120), ("heightMm", 80)), ["70", "40+30"]);
        yield return ("cube 50", Spec("cuboid", ("widthMm", 50), ("depthMm", 50), ("heightMm", 60)), usual);
        yield return ("square 100", Spec("cuboid", ("widthMm", 100), ("depthMm", 100), ("heightMm", 60)), usual);
        yield return ("square 200", Spec("cuboid", ("widthMm", 200), ("depthMm", 200), ("heightMm", 60)), ["5", "15", "40"]);
        yield return ("oblong 1:2", Spec("cuboid", ("widthMm", 140), ("depthMm", 70), ("heightMm", 60)), usual);
        yield return ("oblong 1:3", Spec("cuboid", ("widthMm", 150), ("depthMm", 50), ("heightMm", 60)), usual);
        yield return ("oblong 1:4", Spec("cuboid", ("widthMm", 200), ("depthMm", 50), ("heightMm", 60)), usual);
        yield return ("bar 1:4", Spec("cuboid", ("widthMm", 100), ("depthMm", 25), ("heightMm", 60)), usual);
        yield return ("prism of 3", Spec("prism", ("sides", 3), ("edgeMm", 100), ("heightMm", 60)), usual);
        yield return ("prism of 6", Spec("prism", ("sides", 6), ("edgeMm", 45), ("heightMm", 60)), ["15", "40", "20+20"]);
    }

    private static MouldSpec Spec(string shape, params (string Name, double Value)[] sizes) => new(shape, sizes.ToDictionary(s => s.Name, s => s.Value, StringComparer.Ordinal));
}

/// <summary>One mould, its pours and a resin.</summary>
public sealed record RoundCase(string Name, MouldSpec Spec, double[] DeepMm, Kinetics Resin)
{
    private const double RoomC = 22;

    public FormerSpec? Former { get; init; }

    public bool Silicone { get; init; }

    private static readonly HeatFineness Round = new(12, 12, 3);
    private static readonly HeatFineness Sided = new(8, 10, 3);

    /// <summary>The next pour comes when a resin of this speed would be gelled [h].</summary>
    private double ApartHours => 1.2e-3 / Resin.RateAt23CPerS;

    /// <summary>The input, for the mould as it is or as it was measured.</summary>
    public HeatInput Input(MouldSpec spec) => new()
    {
        Mould = spec,
        Wall = new WallSpec { ThicknessMm = 8, FloorMm = 8, StartCelsius = RoomC },
        Former = Former,
        Fill = Former is null ? null : new FillSpec(Silicone, 5),
        Boundary = new BoundarySpec(),
        Room = [new RoomReading(0, RoomC)],
        Layers = [.. DeepMm.Select((d, i) => new HeatLayer(Resin, 1100, 1900, 0.19, DeepMm.Take(i).Sum(), DeepMm.Take(i + 1).Sum(), i * ApartHours, RoomC))],
        UntilHours = (DeepMm.Length - 1 + 4) * ApartHours,
    };

    /// <summary>Layers in three dimensions, and of the round body; null where the reaction is too fast for any answer.</summary>
    public (IReadOnlyList<LayerHeat> Sides, IReadOnlyList<LayerHeat> Round)? Run()
    {
        var mould = MouldShapes.Make(Spec).Value;
        var measured = RoundCases.Measured(mould);
        try
        {
            return (HeatRun.Run(Input(Spec), mould, Sided).Layers, HeatRun.Run(Input(measured), MouldShapes.Make(measured).Value, Round).Layers);
        }
        catch (InvalidOperationException)
        {
            return null;
        }
    }
}
