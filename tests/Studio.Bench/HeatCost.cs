using System.Diagnostics;
using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Bench.Tools;

/// <summary>What the heat of a 72-hour piece of five layers costs: the pyramid of the study, a medium resin, pours 14 h apart.</summary>
internal static class HeatCost
{
    public static void Run()
    {
        var (input, mould) = Piece();
        foreach (var (name, fineness, preview) in new (string, HeatFineness, bool)[] { ("preview (cone)", new(), true), ("three dimensions, 6 cells", new(), false), ("three dimensions, 8 cells", new(8, 10, 3), false) })
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

            Console.WriteLine(FormattableString.Invariant($"{name,-28} {best.TotalMilliseconds,7:0.0} ms  {outcome!.Nodes,5} nodes  {outcome.Steps,5} steps  {bytes / 1048576.0,6:0.0} MB allocated in all  peaks {string.Join(" ", outcome.Layers.Select(l => FormattableString.Invariant($"{l.PeakBeforeNextPourCelsius:0.0}")))}"));
        }
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
