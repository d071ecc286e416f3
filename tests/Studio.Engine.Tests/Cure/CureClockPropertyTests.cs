using CsCheck;
using Studio.Engine.Cure;
using static Studio.Engine.Tests.Cure.Sheets;

namespace Studio.Engine.Tests.Cure;

public sealed class CureClockPropertyTests
{
    private const double Slack = 1e-7;

    private static readonly Gen<(CureSheet Sheet, RoomReading[] Room)> Cases = Gen.Select(Any, Rooms);

    [Fact]
    public void Warmer_room_is_never_later() =>
        Gen.Select(Cases, Gen.Double[0, 10]).Sample((c, warmer) =>
            All(Run(c.Sheet, [.. c.Room.Select(r => r with { Celsius = r.Celsius + warmer })]))
                .Zip(All(Run(c.Sheet, c.Room))).All(t => t.First <= t.Second + Slack));

    [Fact]
    public void One_colder_reading_is_never_earlier() =>
        Gen.Select(Cases, Gen.Int[0, 7], Gen.Double[0, 10]).Sample((c, at, colder) =>
        {
            RoomReading[] cold = [.. c.Room];
            var i = at % cold.Length;
            cold[i] = cold[i] with { Celsius = cold[i].Celsius - colder };
            return All(Run(c.Sheet, cold)).Zip(All(Run(c.Sheet, c.Room))).All(t => t.First >= t.Second - Slack);
        });

    [Fact]
    public void Nothing_is_ready_before_the_warmest_printed_hours() =>
        Cases.Sample(c =>
        {
            var warmest = c.Sheet.Times.MaxBy(t => t.AtCelsius)!;
            double[] printed = [warmest.GelHours!.Value, warmest.NextPourFromHours!.Value, warmest.DemouldHours!.Value, warmest.FullCureHours!.Value];
            return Ready(Run(c.Sheet, c.Room)).Zip(printed).All(t => t.First >= t.Second);
        });

    [Fact]
    public void Window_never_closes_before_it_opens() =>
        Cases.Sample(c => Run(c.Sheet, c.Room) is var cure && cure.NextPourUntil.AtHours >= cure.NextPourFrom.AtHours);

    [Fact]
    public void Reading_that_says_what_was_already_assumed_changes_nothing() =>
        Gen.Select(Cases, Gen.Double[-10, 200]).Where((c, at) => c.Room.All(r => r.Hours != at)).Sample((c, at) =>
            Same(c.Sheet, c.Room, [.. c.Room, new(at, Linear(c.Room, at))]));

    [Fact]
    public void Order_of_the_readings_does_not_matter() =>
        Gen.Select(Cases, Gen.Int[0, 7]).Sample((c, turn) =>
            Same(c.Sheet, c.Room, [.. c.Room.Skip(turn % c.Room.Length).Concat(c.Room.Take(turn % c.Room.Length)).Reverse()]));

    [Fact]
    public void Moving_pour_and_readings_together_moves_every_time_alike() =>
        Gen.Select(Cases, Gen.Int[-500, 500]).Sample((c, by) =>
            All(RunFrom(by, c.Sheet, [.. c.Room.Select(r => r with { Hours = r.Hours + by })]))
                .Zip(All(Run(c.Sheet, c.Room))).All(t => Math.Abs(t.First - by - t.Second) < Slack));

    // an independent sum: Simpson's rule on 2000 even steps from one bend to the next, with the rate written out once more
    [Fact]
    [Trait("Slow", "draws")]
    public void Closed_form_agrees_with_a_plain_numeric_integral() =>
        Cases.Sample(
            c =>
            {
                var at = Run(c.Sheet, c.Room).NextPourUntil.AtHours!.Value;
                var opens = Run(c.Sheet, c.Room).NextPourFrom.AtHours!.Value;
                var done = Integral(h => ClosingRate(c.Sheet, Linear(c.Room, h)), at, c);
                return at == opens ? done >= 1 - 1e-9 : Math.Abs(done - 1) < 1e-9;
            },
            iter: 60);

    private static bool Same(CureSheet sheet, RoomReading[] one, RoomReading[] other) =>
        All(Run(sheet, one)).Zip(All(Run(sheet, other))).All(t => Math.Abs(t.First - t.Second) < Slack);

    private static double Linear(RoomReading[] room, double hours)
    {
        var sorted = room.OrderBy(r => r.Hours).ToList();
        var (before, after) = (sorted.LastOrDefault(r => r.Hours <= hours), sorted.FirstOrDefault(r => r.Hours > hours));
        return before is null ? after!.Celsius
            : after is null ? before.Celsius
            : before.Celsius + ((after.Celsius - before.Celsius) * (hours - before.Hours) / (after.Hours - before.Hours));
    }

    private static double ClosingRate(CureSheet sheet, double celsius)
    {
        var c = Math.Max(celsius, sheet.MinC!.Value);
        var (cold, warm) = (sheet.Times.MinBy(t => t.AtCelsius)!, sheet.Times.MaxBy(t => t.AtCelsius)!);
        var near = c <= cold.AtCelsius ? cold : warm;
        if (c > cold.AtCelsius && c < warm.AtCelsius)
        {
            var share = (c - cold.AtCelsius) / (warm.AtCelsius - cold.AtCelsius);
            return 1 / (Math.Pow(cold.NextPourUntilHours!.Value, 1 - share) * Math.Pow(warm.NextPourUntilHours!.Value, share));
        }

        return Math.Pow(sheet.FactorPer10C, (c - near.AtCelsius) / 10) / near.NextPourUntilHours!.Value;
    }

    private static double Integral(Func<double, double> rate, double until, (CureSheet Sheet, RoomReading[] Room) c)
    {
        double[] bends = [.. Bends(c.Sheet, c.Room).Where(h => h > 0 && h < until).Order()];
        double[] ends = [0, .. bends, until];
        return ends.Zip(ends.Skip(1)).Sum(e => Simpson(rate, e.First, e.Second, 2000));
    }

    private static IEnumerable<double> Bends(CureSheet sheet, RoomReading[] room)
    {
        var sorted = room.OrderBy(r => r.Hours).ToList();
        double[] corners = [.. sheet.Times.Select(t => t.AtCelsius), sheet.MinC!.Value];
        return sorted.Select(r => r.Hours).Concat(
            from pair in sorted.Zip(sorted.Skip(1))
            from corner in corners
            where (corner - pair.First.Celsius) * (corner - pair.Second.Celsius) < 0
            select pair.First.Hours + ((corner - pair.First.Celsius) / (pair.Second.Celsius - pair.First.Celsius) * (pair.Second.Hours - pair.First.Hours)));
    }

    private static double Simpson(Func<double, double> f, double a, double b, int steps)
    {
        var h = (b - a) / steps;
        var sum = 0.0;
        for (var i = 0; i < steps; i++)
        {
            // the ends are taken a hair inside, where a stretch belongs to this side of its bend
            sum += f(a + (h * i) + (h * 1e-9)) + (4 * f(a + (h * (i + 0.5)))) + f(a + (h * (i + 1)) - (h * 1e-9));
        }

        return sum * h / 6;
    }
}
