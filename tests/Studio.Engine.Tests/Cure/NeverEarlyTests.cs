using CsCheck;
using Studio.Engine.Cure;
using static Studio.Engine.Tests.Cure.Sheets;

namespace Studio.Engine.Tests.Cure;

/// <summary>
/// The clock's stated minutes against an independent fine integration: Runge and Kutta's classic fourth order on steps of at most 15 s, with the
/// equation written out once more. Zero early, at most one minute late.
/// </summary>
public sealed class NeverEarlyTests
{
    private const double UntilHours = 100;
    private const double Minute = 1.0 / 60;

    // far below a second of cure, far above what either integration errs
    private const double Slack = 1e-8;
    private const double SlackK = 1e-5;

    private static readonly Gen<(Kinetics Kinetics, CureSheet Sheet, RoomReading[] Room)> Cases =
        Gen.Select(Resins.Any, Gen.Bool, Gen.Double[4, 80], Rooms, (kinetics, printed, hours, room) =>
            (kinetics, printed ? One(23, demould: hours, full: 3 * hours) : Resins.Silent, room));

    [Fact]
    [Trait("Slow", "draws")]
    public void No_stated_minute_is_early_and_none_more_than_a_minute_late() =>
        Cases.Sample(c => Doubt(c.Kinetics, c.Sheet, c.Room) is not { } doubt ? true : throw new InvalidOperationException(doubt), iter: 150);

    // what is stated for the piece is never before either way of reckoning
    [Fact]
    public void Stated_times_of_a_layer_are_never_before_its_sheet_or_its_kinetics() =>
        Gen.Select(Resins.Any, Sheets.Any, Rooms).Sample(
            (kinetics, sheet, room) =>
            {
                var both = CureClock.Run([new("1", sheet, 0) { Kinetics = kinetics }], room, double.PositiveInfinity).Layers[0];
                var printed = Run(sheet, room);
                var model = both.Kinetic!;
                return Later(both.Gel, printed.Gel, model.Gel) && Later(both.NextPourFrom, printed.NextPourFrom, model.Gel)
                    && Later(both.Demould, printed.Demould, model.Demould) && Later(both.FullCure, printed.FullCure, model.FullCure)
                    && (both.NextPourUntil.AtHours <= printed.NextPourUntil.AtHours || both.NextPourUntil.AtHours == both.NextPourFrom.AtHours);
            },
            iter: 300);

    private static bool Later(Milestone both, Milestone printed, KineticTime model) =>
        both.AtHours is null ? model.AtHours is null : both.AtHours >= printed.AtHours && both.AtHours >= model.AtHours - 1e-9;

    private static string? Doubt(Kinetics kinetics, CureSheet sheet, RoomReading[] room)
    {
        var clock = new KineticClock(kinetics, sheet, new RoomLog(room), 0);
        (string What, CureAim Aim, double? At)[] ready =
        [
            ("gel", clock.Aims.Gel, clock.Gel.AtHours), ("demould", clock.Aims.Demould, clock.Demould.AtHours), ("full cure", clock.Aims.Full, clock.FullCure.AtHours),
        ];
        var fine = new Fine(kinetics, room);
        var minutes = fine.Minutes(UntilHours);
        foreach (var (what, aim, at) in ready)
        {
            var first = minutes.FindIndex(p => p.Conversion >= aim.Conversion + Slack && (double.IsNegativeInfinity(aim.AboveRoomK) || p.GlassTransitionC - p.Celsius >= aim.AboveRoomK + SlackK));
            if (first >= 0 && !(StatedMinute(at) <= first + 1))
            {
                return $"{what} late: stated {at}, by the fine integration {first * Minute}";
            }

            if (at <= UntilHours && !Holds(fine.At(at.Value), aim))
            {
                return $"{what} early: stated {at}";
            }
        }

        var closed = minutes.FindIndex(p => p.GlassTransitionC >= p.Celsius + SlackK);
        return sheet.Times.Count == 0 && closed >= 0 && !(clock.NextPourUntil.AtHours <= closed * Minute) ? $"window's end late: stated {clock.NextPourUntil.AtHours}, by the fine integration {closed * Minute}" : null;
    }

    private static bool Holds(CurePoint p, CureAim aim) =>
        p.Conversion >= aim.Conversion - Slack && (double.IsNegativeInfinity(aim.AboveRoomK) || p.GlassTransitionC - p.Celsius >= aim.AboveRoomK - SlackK);

    private static int? StatedMinute(double? hours) => hours is { } h ? (int)Math.Ceiling((h / Minute) - 1e-6) : null;

    private sealed class Fine(Kinetics k, RoomReading[] room)
    {
        private readonly RoomReading[] sorted = [.. room.OrderBy(r => r.Hours)];

        internal List<CurePoint> Minutes(double untilHours)
        {
            var points = new List<CurePoint> { Point(0, 0) };
            var a = 0.0;
            for (var i = 0; i < untilHours * 60; i++)
            {
                a = Over(a, i * Minute, (i + 1) * Minute);
                points.Add(Point((i + 1) * Minute, a));
            }

            return points;
        }

        internal CurePoint At(double hours) => Point(hours, Over(0, 0, hours));

        private CurePoint Point(double hours, double a) => new(hours, Celsius(hours), a, Glass(a));

        private double Over(double a, double from, double to)
        {
            double[] ends = [from, .. sorted.Select(r => r.Hours).Where(h => h > from && h < to), to];
            for (var e = 1; e < ends.Length; e++)
            {
                var steps = Math.Max(1, (int)Math.Ceiling((ends[e] - ends[e - 1]) * 240));
                var h = (ends[e] - ends[e - 1]) / steps;
                for (var i = 0; i < steps; i++)
                {
                    var t = ends[e - 1] + (h * i);
                    var k1 = PerHour(a, t);
                    var k2 = PerHour(a + (h * k1 / 2), t + (h / 2));
                    var k3 = PerHour(a + (h * k2 / 2), t + (h / 2));
                    a += h / 6 * (k1 + (2 * k2) + (2 * k3) + PerHour(a + (h * k3), t + h));
                }
            }

            return a;
        }

        private double PerHour(double a, double hours)
        {
            var c = Celsius(hours);
            var speed = k.RateAt23CPerS * Math.Exp(-k.ActivationJPerMol / 8.314462618 * ((1 / (c + 273.15)) - (1 / 296.15)));
            var mobile = 1 / (1 + Math.Exp((Glass(a) - c - k.VitrificationOffsetK) / k.VitrificationWidthK));
            return 3600 * speed * (k.Kappa + Math.Pow(a, k.M)) * Math.Pow(1 - a, k.N) * mobile;
        }

        private double Glass(double a) => k.GlassStartC + ((k.GlassEndC - k.GlassStartC) * k.Lambda * a / (1 - ((1 - k.Lambda) * a)));

        private double Celsius(double hours)
        {
            var after = Array.FindIndex(sorted, r => r.Hours > hours);
            if (after <= 0)
            {
                return sorted[after == 0 ? 0 : ^1].Celsius;
            }

            var (a, b) = (sorted[after - 1], sorted[after]);
            return a.Celsius + ((b.Celsius - a.Celsius) * (hours - a.Hours) / (b.Hours - a.Hours));
        }
    }
}
