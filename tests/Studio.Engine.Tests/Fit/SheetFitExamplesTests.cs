using System.Diagnostics;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Tests.Fit;

public sealed class SheetFitExamplesTests(ITestOutputHelper output)
{
    public static TheoryData<string, double, double, double, double, double> Sheets => new()
    {
        { "deepPour", 1000, 1050, 90, 60, 35 },
        { "casting", 100, 240, 155, 18, 12 },
        { "fast", 100, 15, 240, 3, 3 },
    };

    [Theory]
    [MemberData(nameof(Sheets))]
    public void Fits(string kind, double massG, double gelMinutes, double peakC, double demouldHours, double maxMm)
    {
        var sheet = new DataSheet { Class = kind, CupMassG = massG, GelMinutes = gelMinutes, PeakCelsius = peakC, DemouldHours = demouldHours, MaxPourMm = maxMm };
        SheetFit.Run(sheet);
        var clock = Stopwatch.GetTimestamp();
        var fit = SheetFit.Run(sheet).Value;
        output.WriteLine(FormattableString.Invariant($"{kind} {Stopwatch.GetElapsedTime(clock).TotalMilliseconds:0} ms misfit {fit.Misfit:0.00}"));
        foreach (var d in fit.Data)
        {
            output.WriteLine(FormattableString.Invariant($"  {d.Name} {d.Printed:0.0} {d.Fitted:0.0} off {d.OffSd:0.00}"));
        }

        foreach (var d in fit.Known)
        {
            output.WriteLine(FormattableString.Invariant($"  {d.Name} {d.Value:0.####e0} [{d.Interval.From:0.###e0}, {d.Interval.To:0.###e0}] share {d.Share:0.00} {d.RestsOn}"));
        }

        foreach (var d in fit.Findings)
        {
            output.WriteLine("  " + d.Message);
        }

        foreach (var (mm, c) in kind == "deepPour" ? new[] { (40.0, 23.0), (40.0, 28.0) } : kind == "casting" ? [(10.0, 23.0), (15.0, 23.0)] : [(2.5, 23.0), (3.75, 23.0)])
        {
            clock = Stopwatch.GetTimestamp();
            var peaks = FitInterval.Of(fit.State.Members().Select(m => Peak(m, mm, c)));
            output.WriteLine(FormattableString.Invariant($"  base {mm} mm at {c}: {Peak(fit.Best, mm, c):0.0} [{peaks.From:0.0}, {peaks.To:0.0}]  {Stopwatch.GetElapsedTime(clock).TotalMilliseconds:0} ms"));
        }
    }

    private static double Peak(FitResin r, double mm, double c)
    {
        var spec = new MouldSpec("pyramid", new Dictionary<string, double> { ["sides"] = 4, ["baseMm"] = 150, ["heightMm"] = 150, ["tipMm"] = 5 });
        var cured = r.Kinetics with { HeatJPerKg = 1 };
        var input = new HeatInput
        {
            Mould = spec,
            Wall = new WallSpec { ThicknessMm = 10, FloorMm = 10, StartCelsius = c },
            Boundary = new BoundarySpec(10 * r.FilmFactor, 8 * r.FilmFactor, 5 * r.FilmFactor),
            Room = [new RoomReading(0, c)],
            Layers = [new HeatLayer(cured, r.DensityKgPerM3, 1900, .19, 0, 150 - mm, 0, c), new HeatLayer(r.Kinetics, r.DensityKgPerM3, 1900, .19, 150 - mm, 150, 0.01, c)],
            UntilHours = 10 / 3600.0 / r.Kinetics.RateAt23CPerS,
        };
        return HeatRun.Run(input, MouldShapes.Make(spec).Value, new HeatFineness(6, 6, 1), true).Layers[1].PeakCelsius;
    }
}
