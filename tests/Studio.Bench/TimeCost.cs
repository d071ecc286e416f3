using Studio.Engine.Cure;
using Studio.Engine.Time;

namespace Studio.Bench.Tools;

/// <summary>When a shelf of fifty pieces of five layers will be ready, against the cure clocks of the same pours alone; from printed times, and from kinetics.</summary>
internal static class TimeCost
{
    private const int Pieces = 50;
    private const int Layers = 5;

    public static async Task RunAsync()
    {
        await RunAsync("printed times", null);
        await RunAsync("fitted kinetics", new Kinetics { RateAt23CPerS = 0.00012, Kappa = 0.04, ActivationJPerMol = 55_000, HeatJPerKg = 370_000 });
    }

    private static Task RunAsync(string from, Kinetics? kinetics)
    {
        var sheet = new CureSheet { Times = [new() { AtCelsius = 23, GelHours = 4, NextPourFromHours = 6, NextPourUntilHours = 24, DemouldHours = 24, FullCureHours = 168 }] };
        DayOfWeek[] week = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];
        var input = new TimeInput
        {
            Start = new(2026, 3, 2, 9, 0, 0),
            Work = new(week, TimeSpan.FromHours(9), TimeSpan.FromHours(17), 240),
            Preparation = [new("dry", 7)],
            Resins = new Dictionary<string, TimeResin>(StringComparer.Ordinal) { ["clear"] = new(sheet, kinetics) },
            Room = [new(0, 19)],
            Layers = [.. Enumerable.Range(1, Layers).Select(i => new PlannedPour($"layer {i}", "clear", 25))],
            Demould = new(15),
            Finishing = [new("polish", 300)],
        };
        var pours = TimeCalculation.Run(input).Value.Layers.Select(l => new PouredLayer(l.Name, sheet, (l.PouredAt.At!.Value - input.Start).TotalHours) { Kinetics = kinetics }).ToList();
        return Measure.CompareAsync(
            $"Will {Pieces} pieces of {Layers} layers be in time, from {from}",
            "plan",
            () => Times(() => TimeCalculation.Run(input)),
            "their cure clocks alone",
            () => Times(() => CureClock.Run(pours, input.Room, double.PositiveInfinity)),
            null,
            100);
    }

    private static Task Times(Func<object> run)
    {
        for (var i = 0; i < Pieces; i++)
        {
            run();
        }

        return Task.CompletedTask;
    }
}
