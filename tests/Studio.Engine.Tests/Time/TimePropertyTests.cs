using CsCheck;
using Studio.Engine.Cure;
using Studio.Engine.Time;

namespace Studio.Engine.Tests.Time;

/// <summary>
/// What must hold whatever is asked. Abrading is left out (0 min) where a change may let a pour catch a window that it missed before: then, and
/// only then, something later by itself can save minutes; <see cref="While_the_same_windows_are_missed_that_holds_with_abrading_too"/> has it in.
/// </summary>
public sealed class TimePropertyTests
{
    private static readonly Gen<TimeInput> Unabraded = Plans.Any.Select(p => p with { AbradeMinutes = 0 });

    private static readonly Gen<(TimeInput Before, TimeInput After)> Changes = Gen.OneOf(
        Gen.Select(Plans.Any, Gen.Double[0, 12], (p, colder) => (p, p with { Room = [p.Room[0] with { Celsius = p.Room[0].Celsius - colder }] })),
        Gen.Select(Plans.Any, Gen.Int[0, 9000], (p, later) => (p, p with { Start = p.Start.AddMinutes(later), Room = p.Room })),
        Gen.Select(Plans.Any, Gen.Int[0, 4], Gen.Int[0, 2], Gen.Int[0, 59], (p, at, resin, minutes) => (p, Added(p, at, resin, minutes))),
        Gen.Select(Plans.Any, Gen.Int[0, 20], Gen.Int[1, 200], (p, at, minutes) => (p, Longer(p, at, minutes))),
        Gen.Select(Plans.Any, Gen.Int[0, 40], (p, day) => (p, p with { Work = p.Work with { DaysOff = [.. p.Work.DaysOff, DateOnly.FromDateTime(p.Start).AddDays(day)] } })));

    [Fact]
    public void A_colder_room_a_later_start_an_added_layer_added_minutes_or_a_day_off_is_never_earlier() => Changes.Sample(
        c => Later(Plans.Run(c.Before with { AbradeMinutes = 0 }), Plans.Run(c.After with { AbradeMinutes = 0 })), iter: 3000);

    [Fact]
    [Trait("Slow", "draws")]
    public void While_the_same_windows_are_missed_that_holds_with_abrading_too() => Changes.Where(c => c.Before.Layers.Count == c.After.Layers.Count).Sample(
        c =>
        {
            var (before, after) = (Plans.Run(c.Before), Plans.Run(c.After));
            return !before.Layers.Select(l => l.MissesWindow).SequenceEqual(after.Layers.Select(l => l.MissesWindow)) || Later(before, after);
        },
        iter: 3000);

    // the one way in which later is earlier, said on the page of calc time: the window closes at 24 h
    [Fact]
    public void A_pour_that_starts_later_can_catch_the_window_and_save_the_abrading()
    {
        var tight = Plans.Two with { Resins = new Dictionary<string, TimeResin>(StringComparer.Ordinal) { ["clear"] = Plans.Resin(23, 6, 16.5, 24, 72) } };
        // poured 16:30, closes 09:00 next day, hands are there from 09:00 and done 09:30: missed, 15 min more
        var early = Plans.Run(tight with { Start = Plans.Monday.AddHours(7) });
        // poured 17:00, closes 09:30: caught
        var late = Plans.Run(tight with { Start = Plans.Monday.AddHours(7.5) });
        (early.Layers[1].MissesWindow, late.Layers[1].MissesWindow).ShouldBe((true, false));
        (early.Layers[1].PouredAt.At, late.Layers[1].PouredAt.At).ShouldBe((Plans.Monday.AddHours(24.75), Plans.Monday.AddHours(24.5)));
    }

    [Fact]
    public void Every_pour_lies_in_working_time_and_never_before_the_window() => Plans.Any.Sample(
        input =>
        {
            foreach (var (layer, spec) in Plans.Run(input).Layers.Zip(input.Layers).Where(l => l.Second.PouredAt is null && l.First.PourAt.At is not null))
            {
                var (from, until) = (layer.PourAt.At!.Value, layer.PouredAt.At!.Value);
                input.Work.Days.ShouldContain(from.DayOfWeek);
                input.Work.DaysOff.ShouldNotContain(DateOnly.FromDateTime(from));
                from.ShouldBeGreaterThanOrEqualTo(from.Date + input.Work.From);
                until.ShouldBeLessThanOrEqualTo(from.Date + input.Work.Until);
                from.ShouldBeGreaterThanOrEqualTo(input.Start);
                (until - from).TotalMinutes.ShouldBe(spec.Minutes + (layer.MissesWindow == true ? input.AbradeMinutes : 0));
                if (layer.WindowFrom.At is { } opens)
                {
                    from.ShouldBeGreaterThanOrEqualTo(opens);
                }
            }
        },
        iter: 2000);

    [Fact]
    public void No_day_has_more_hands_in_it_than_it_is_given() => Plans.Any.Sample(
        input =>
        {
            var result = Plans.Run(input with { Finishing = [] });
            result.Steps.Where(s => s is { Done: false, HandsMinutes: > 0, What: TimeStep.Pour or TimeStep.Demould, From.At: not null })
                .GroupBy(s => s.From.At!.Value.Date).ShouldAllBe(day => day.Sum(s => s.HandsMinutes) <= input.Work.MinutesPerDay);
        },
        iter: 1000);

    [Fact]
    public void A_shift_by_whole_weeks_shifts_the_answer_by_whole_weeks() => Gen.Select(Plans.Any, Gen.Int[-200, 200]).Sample(
        (input, weeks) =>
        {
            var days = 7 * weeks;
            var shifted = input with
            {
                Start = input.Start.AddDays(days),
                Work = input.Work with { DaysOff = [.. input.Work.DaysOff.Select(d => d.AddDays(days))] },
                Layers = [.. input.Layers.Select(l => l with { PouredAt = l.PouredAt?.AddDays(days) })],
            };
            Plans.Moments(Plans.Run(shifted)).ShouldBe(Plans.Moments(Plans.Run(input)).Select(m => m == DateTime.MaxValue ? m : m.AddDays(days)));
        },
        iter: 1000);

    [Fact]
    public void A_piece_whose_every_step_is_a_fact_gives_exactly_those() => Gen.Select(Plans.Any, Gen.Int[1, 9000].Array[12]).Sample(
        (input, gaps) =>
        {
            var (at, next) = (input.Start.AddDays(-60), 0);
            DateTime Fact() => at = at.AddMinutes(gaps[next++]);
            var facts = input with
            {
                Preparation = [.. input.Preparation.Select(p => p with { DoneAt = Fact() })],
                Layers = [.. input.Layers.Select(l => l with { PouredAt = Fact() })],
                Demould = input.Demould with { At = Fact() },
                Finishing = [.. input.Finishing.Select(f => f with { DoneAt = Fact() }), new PlannedWork("sign", 5, AfterFullCure: true, DoneAt: at)],
            };
            var result = Plans.Run(facts);
            result.Layers.Select(l => l.PourAt.At).ShouldBe(facts.Layers.Select(l => l.PouredAt));
            result.Layers.Select(l => l.PouredAt.At).ShouldBe(facts.Layers.Select(l => l.PouredAt));
            result.PreparedAt.At.ShouldBe(facts.Preparation.Count == 0 ? null : facts.Preparation[^1].DoneAt);
            result.DemouldAt.At.ShouldBe(facts.Demould.At);
            result.FinishedAt.At.ShouldBe(at);
            result.EarliestOn.ShouldBe(DateOnly.FromDateTime(at > input.Start ? at : input.Start).AddDays(input.DeliveryDays));
            result.Steps.Where(s => s.What != TimeStep.Deliver).ShouldAllBe(s => s.Done && s.HandsMinutes == 0);
        },
        iter: 1000);

    // the pages of the clock and of the plan must not disagree: for the same pours they say the same
    [Fact]
    public void Every_cure_time_is_that_of_the_cure_clock() => Unabraded.Sample(
        input =>
        {
            foreach (var (layer, spec) in Plans.Run(input).Layers.Zip(input.Layers).Where(l => l.First.PouredAt.At is not null))
            {
                var hours = (layer.PouredAt.At!.Value - input.Start).TotalHours;
                var cure = CureClock.Run([new("1", input.Resins[spec.Resin].Sheet, hours)], input.Room, double.PositiveInfinity).Layers[0];
                layer.GelAt.At.ShouldBe(CureRounding.UpToMinute(input.Start.AddHours(cure.Gel.AtHours!.Value)));
                layer.DemouldFrom.At.ShouldBe(CureRounding.UpToMinute(input.Start.AddHours(cure.Demould.AtHours!.Value)));
                layer.FullCureAt.At.ShouldBe(CureRounding.UpToMinute(input.Start.AddHours(cure.FullCure.AtHours!.Value)));
            }
        },
        iter: 500);

    private static bool Later(TimeResult before, TimeResult after)
    {
        // an added layer has moments of its own: what is the piece's is compared
        var (a, b) = before.Layers.Count == after.Layers.Count ? (Plans.Moments(before), Plans.Moments(after)) : ([.. Plans.Moments(before).TakeLast(5)], [.. Plans.Moments(after).TakeLast(5)]);
        return a.Zip(b).All(t => t.First <= t.Second);
    }

    private static TimeInput Added(TimeInput input, int at, int resin, int minutes)
    {
        at = Math.Max(at % (input.Layers.Count + 1), input.Layers.Count(l => l.PouredAt is not null));
        return input with
        {
            Layers = [.. input.Layers.Take(at), new PlannedPour("added", $"r{resin}", minutes), .. input.Layers.Skip(at)],
            Preparation = [.. input.Preparation.Select(p => p.ForLayer > at ? p with { ForLayer = p.ForLayer + 1 } : p)],
        };
    }

    private static TimeInput Longer(TimeInput input, int at, int minutes) => (at % 4) switch
    {
        0 => input with { Preparation = [.. input.Preparation.Select(p => p with { Minutes = p.Minutes + minutes })] },
        1 => input with { Layers = [.. input.Layers.Select(l => l with { Minutes = Math.Min(l.Minutes + minutes, input.Work.MinutesPerDay) })] },
        2 => input with { Demould = new(Math.Min(input.Demould.Minutes + minutes, input.Work.MinutesPerDay)) },
        _ => input with { Finishing = [.. input.Finishing.Select(f => f with { Minutes = f.Minutes + minutes })] },
    };
}
