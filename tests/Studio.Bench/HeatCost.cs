using System.Diagnostics;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Bench.Tools;

/// <summary>What the heat of a 72-hour piece of five layers costs: the pyramid of the study, a medium resin, pours 14 h apart.</summary>
internal static class HeatCost
{
    public static void Run()
    {
        var (input, mould) = Piece();
        foreach (var (name, fineness, preview, aimMs) in new (string, HeatFineness, bool, double?)[] { ("preview (cone)", new(), true, 40), ("three dimensions, 6 cells", new(), false, null), ("three dimensions, 8 cells", new(8, 10, 3), false, 400) })
        {
            HeatRun.Run(input, mould, fineness, preview);
            var best = TimeSpan.MaxValue;
            HeatOutcome? outcome = null;
            long bytes = 0;
            for (var k = 0; k < 5; k++)
            {
                var before = GC.GetAllocatedBytesForCurrentThread();
                var clock = Stopwatch.GetTimestamp();
                outcome = HeatRun.Run(input, mould, fineness, preview);
                best = Stopwatch.GetElapsedTime(clock) is var took && took < best ? took : best;
                bytes = GC.GetAllocatedBytesForCurrentThread() - before;
            }

            Console.WriteLine(FormattableString.Invariant($"{name,-28} {best.TotalMilliseconds,7:0.0} ms{Aim(aimMs)}  {outcome!.Nodes,5} nodes  {outcome.Steps,5} steps  {bytes / 1048576.0,6:0.0} MB allocated in all  peaks {string.Join(" ", outcome.Layers.Select(l => FormattableString.Invariant($"{l.PeakBeforeNextPourCelsius:0.0}")))}"));
        }
    }

    /// <summary>What a person waits for: a sheet's heat with its interval, advice for a layer, 72 hours of the clock.</summary>
    public static void Waits()
    {
        const string sheet = """
            {"mould":{"shape":"pyramid","baseMm":150,"heightMm":150,"tipMm":10,"wall":{"thicknessMm":10}},"room":[{"hours":0,"celsius":23}],
            "resins":{"a":{"dataSheet":{"class":"deepPour","cupMassG":1000,"gelMinutes":1050,"peakCelsius":90,"demouldHours":60,"maxPourMm":50}}},
            "layers":[{"name":"one","resin":"a","thicknessMm":40,"pouredAtHours":0}],"untilHours":72}
            """;
        Say("calc heat from a sheet", 1000, 5, () => Calculations.Run("heat", sheet));

        var (piece, mould) = Piece();
        piece = piece with { Layers = [piece.Layers[0] with { ToMm = 60 }] };
        var state = SheetFit.Run(new DataSheet { Class = "deepPour", CupMassG = 1000, GelMinutes = 1050, PeakCelsius = 90, DemouldHours = 60, MaxPourMm = 50 }).Value.State;
        var asked = new AdviceInput { Piece = piece, Mould = mould, Resins = [new ForecastResin(state, 70) { NextPourFromHours = 24, NextPourUntilHours = 72, MinRoomC = 15 }], Limits = [[HeatLimit.PrintedFilm]] };
        Say("advice for a layer", 1000, 3, () => HeatAdvice.Of(asked, null, default));

        RoomReading[] room = [.. Enumerable.Range(0, 145).Select(i => new RoomReading(i / 2.0, 23 + (1.5 * Math.Sin(i / 24.0))))];
        var cure = new CureSheet { Times = [new CureTimes { AtCelsius = 23, GelHours = 18, NextPourFromHours = 24, NextPourUntilHours = 72, DemouldHours = 60, FullCureHours = 168 }] };
        var likely = new LikelyCure([.. state.Members().Select(m => m.Kinetics)]);
        PouredLayer[] layers = [.. Enumerable.Range(0, 5).Select(i => new PouredLayer($"layer {i}", cure, 14 * i) { Kinetics = state.Best().Kinetics, Likely = likely })];
        Say("72 h of the clock, a layer", 1, 50, () => CureClock.Run([layers[0]], room, double.PositiveInfinity));
        Say("of it by its kinetics alone", null, 50, () => CureClock.Run([layers[0] with { Likely = null }], room, double.PositiveInfinity));
        Say("all five layers", null, 50, () => CureClock.Run(layers, room, double.PositiveInfinity));
    }

    private static string Aim(double? ms) => ms is { } most ? FormattableString.Invariant($" (aim {most})") : "";

    private static void Say(string what, double? aimMs, int times, Action act)
    {
        act();
        var best = TimeSpan.MaxValue;
        for (var k = 0; k < times; k++)
        {
            var clock = Stopwatch.GetTimestamp();
            act();
            best = Stopwatch.GetElapsedTime(clock) is var took && took < best ? took : best;
        }

        Console.WriteLine(FormattableString.Invariant($"{what,-28} {best.TotalMilliseconds,7:0.00} ms{Aim(aimMs)}"));
    }

    /// <summary>The piece that is measured.</summary>
    public static (HeatInput Input, MouldBody Mould) Piece()
    {
        var kinetics = new Kinetics { RateAt23CPerS = 1e-4, Kappa = 0.03, ActivationJPerMol = 57_000, HeatJPerKg = 350_000, GlassEndC = 52 };
        var spec = new MouldSpec("pyramid", new Dictionary<string, double>(StringComparer.Ordinal) { ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 10 });
        double[] tops = [50, 80, 110, 130, 150];
        return (new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10 },
            Boundary = new BoundarySpec(),
            Room = [new RoomReading(0, 23)],
            Layers = [.. tops.Select((t, i) => new HeatLayer(kinetics, 1100, 1900, 0.19, i == 0 ? 0 : tops[i - 1], t, 14 * i, 23))],
            UntilHours = 72,
        }, MouldShapes.Make(spec).Value);
    }
}
