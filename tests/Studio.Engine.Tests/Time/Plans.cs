using CsCheck;
using Studio.Engine.Time;

namespace Studio.Engine.Tests.Time;

/// <summary>Invented pieces for the tests of <c>calc time</c>. Monday 2 March 2026 is a Monday by any perpetual calendar.</summary>
internal static class Plans
{
    internal static readonly DateTime Monday = new(2026, 3, 2, 9, 0, 0);

    internal static readonly DayOfWeek[] Weekdays = [DayOfWeek.Monday, DayOfWeek.Tuesday, DayOfWeek.Wednesday, DayOfWeek.Thursday, DayOfWeek.Friday];

    /// <summary>Monday to Friday, nine to five, four hours a day for this piece.</summary>
    internal static readonly WorkingHours Usual = new(Weekdays, TimeSpan.FromHours(9), TimeSpan.FromHours(17), 240);

    /// <summary>Printed for 23 °C: next pour 6 to 24 h, demould 24 h, full cure 72 h (common practice, no source).</summary>
    internal static readonly TimeResin Casting = Resin(23, 6, 24, 24, 72);

    /// <summary>Two layers, a quarter of an hour to demould, an hour of polish; a room at the sheet's own 23 °C.</summary>
    internal static readonly TimeInput Two = new()
    {
        Start = Monday,
        Work = Usual,
        Resins = new Dictionary<string, TimeResin>(StringComparer.Ordinal) { ["clear"] = Casting },
        Room = [new(0, 23)],
        Layers = [new("ground", "clear", 30), new("top", "clear", 30)],
        Demould = new(15),
        Finishing = [new("polish", 60)],
    };

    private static readonly Gen<TimeResin> Resins =
        Gen.Select(Gen.Double[15, 25], Gen.Double[0.5, 30], Gen.Double[1, 4], Gen.Double[0.5, 60], Gen.Double[1, 100], Resin5);

    private static readonly Gen<WorkingHours> Works =
        Gen.Select(Gen.Int[1, 127], Gen.Int[0, 20], Gen.Int[2, 24], Gen.Int[60, 1440], Gen.Int[0, 40].Array[0, 6], (week, from, hours, perDay, off) =>
        {
            var (opens, closes) = (TimeSpan.FromHours(from), TimeSpan.FromHours(Math.Min(24, from + hours)));
            return new WorkingHours([.. Enumerable.Range(0, 7).Where(d => (week & (1 << d)) != 0).Select(d => (DayOfWeek)d)], opens, closes, Math.Min(perDay, (int)(closes - opens).TotalMinutes))
            {
                DaysOff = [.. off.Select(d => DateOnly.FromDateTime(Monday).AddDays(d))],
            };
        });

    /// <summary>Any piece with printed times in a steady room; some of its layers poured, some of its work done.</summary>
    internal static Gen<TimeInput> Any { get; } =
        from work in Works
        from resins in Resins.Array[3]
        from celsius in Gen.Double[8, 32]
        from startMinutes in Gen.Int[0, 20_000]
        from layers in Gen.Select(Gen.Int[0, 2], Gen.Int[0, 59], Gen.OneOf(Gen.Const(-1.0), Gen.Double[0, 60])).Array[1, 5]
        from preparation in Gen.Select(Gen.Double[0, 9], Gen.Int[0, 300], Gen.Int[0, 5]).Array[0, 3]
        from poured in Gen.Int[0, 6]
        from demould in Gen.Int[0, 59]
        from finishing in Gen.Select(Gen.Int[0, 900], Gen.Bool).Array[0, 3]
        from days in Gen.Select(Gen.Int[0, 5], Gen.Int[0, 9])
        select new TimeInput
        {
            Start = Monday.AddMinutes(startMinutes),
            Work = work,
            Resins = resins.Select((r, i) => ($"r{i}", r)).ToDictionary(r => r.Item1, r => r.r, StringComparer.Ordinal),
            Room = [new(0, celsius)],
            Layers = [.. layers.Select((l, i) => new PlannedPour($"layer {i + 1}", $"r{l.Item1}", l.Item2, l.Item3 < 0 ? null : l.Item3))
                .Select((l, i) => i < poured - 3 ? l with { PouredAt = Monday.AddMinutes(startMinutes - (1700 * (layers.Length - i))) } : l)],
            Preparation = [.. preparation.Select((p, i) => new PlannedPreparation($"prepare {i + 1}", p.Item1, p.Item2, p.Item3 == 0 ? null : Math.Min(p.Item3, layers.Length)))],
            Demould = new(demould),
            Finishing = [.. finishing.Select((f, i) => new PlannedWork($"work {i + 1}", f.Item1, f.Item2))],
            DeliveryDays = days.Item1,
            ReserveDays = days.Item2,
        };

    internal static TimeResin Resin(double atC, double from, double until, double demould, double full) => new(Cure.Sheets.One(atC, from / 2, from, until, demould, full));

    internal static TimeResult Run(TimeInput input)
    {
        var outcome = TimeCalculation.Run(input);
        return outcome.Ok ? outcome.Value : throw new InvalidOperationException(string.Join(" ", outcome.Errors));
    }

    /// <summary>Every moment of a result, in order; one that is not known is the end of time.</summary>
    internal static IReadOnlyList<DateTime> Moments(TimeResult r) =>
    [
        .. r.Layers.SelectMany(l => new[] { l.PourAt, l.PouredAt, l.GelAt, l.DemouldFrom, l.FullCureAt }).Append(r.DemouldAt).Append(r.FullCureAt).Append(r.FinishedAt).Select(m => m.At ?? DateTime.MaxValue),
        r.EarliestOn?.ToDateTime(default) ?? DateTime.MaxValue,
        r.PromiseOn?.ToDateTime(default) ?? DateTime.MaxValue,
    ];

    private static TimeResin Resin5(double atC, double from, double window, double demould, double full) => Resin(atC, from, from * window, demould, demould + full);
}
