using CsCheck;
using Studio.Engine.Cure;
using Studio.Engine.Time;

namespace Studio.Engine.Tests.Time;

/// <summary>
/// The plan against a day lived through minute by minute, reckoned in another way: no calendar arithmetic, no cure clock, only
/// hours(T) = printed × 2^((printed for − T) / 10) (rule of thumb, frets.com ShopTips/166), never below the printed ones.
/// </summary>
public sealed class TimeReferenceTests
{
    private const int MostMinutes = 200 * 1440;

    // a microsecond [min], as the clock's rounding has it (decision 010)
    private const double Slack = 1e-6 / 60;

    [Fact]
    public void The_plan_is_that_of_living_through_it_minute_by_minute()
    {
        var (ended, missed) = (0, 0);
        Plans.Any.Sample(
            input =>
            {
                var result = Plans.Run(input);
                var lived = new Lived(input);
                if (!lived.Ends)
                {
                    return; // longer than the reference has patience for
                }

                Interlocked.Increment(ref ended);
                Interlocked.Add(ref missed, lived.Missed.Count(m => m));
                result.Layers.Select(l => l.PourAt.At).ShouldBe(lived.Pours.Select(p => (DateTime?)p.From));
                result.Layers.Select(l => l.PouredAt.At).ShouldBe(lived.Pours.Select(p => (DateTime?)p.Until));
                result.Layers.Skip(1).Select(l => l.MissesWindow).ShouldBe(lived.Missed.Skip(1).Select(m => (bool?)m));
                result.DemouldAt.At.ShouldBe(lived.DemouldFrom);
                result.FullCureAt.At.ShouldBe(lived.FullCure);
                result.FinishedAt.At.ShouldBe(lived.Finished);
                result.EarliestOn.ShouldBe(DateOnly.FromDateTime(lived.Finished).AddDays(input.DeliveryDays));
                result.PromiseOn!.Value.DayNumber.ShouldBe(result.EarliestOn!.Value.DayNumber + input.ReserveDays);
            },
            iter: 600);
        ended.ShouldBeGreaterThan(400, "a reference that gives up proves nothing");
        missed.ShouldBeGreaterThan(100);
    }

    // one maker, one minute at a time
    private sealed class Lived
    {
        private readonly TimeInput input;
        private readonly Dictionary<DateTime, int> used = [];
        private DateTime now;

        internal Lived(TimeInput input)
        {
            (this.input, now) = (input, input.Start);
            var prepared = Prepare();
            for (var i = 0; i < input.Layers.Count; i++)
            {
                Pour(i, [.. prepared.Where(p => p.From <= i).Select(p => p.Ready)]);
            }

            FullCure = Slowest(t => t.FullCureHours!.Value);
            DemouldFrom = AtOnce(() => true, Slowest(t => t.DemouldHours!.Value), (int)input.Demould.Minutes);
            var outOfMould = now;
            Finished = outOfMould > FullCure ? outOfMould : FullCure;
            foreach (var work in input.Finishing)
            {
                var end = Spread(work.AfterFullCure && FullCure > outOfMould ? FullCure : outOfMould, (int)work.Minutes);
                Finished = end > Finished ? end : Finished;
            }
        }

        internal List<(DateTime From, DateTime Until)> Pours { get; } = [];

        internal List<bool> Missed { get; } = [];

        internal DateTime DemouldFrom { get; }

        internal DateTime FullCure { get; }

        internal DateTime Finished { get; }

        internal bool Ends => (now - input.Start).TotalMinutes < MostMinutes;

        private double RoomC => input.Room[0].Celsius;

        private List<(int From, DateTime Ready)> Prepare()
        {
            var ready = new List<(int, DateTime)>();
            foreach (var p in input.Preparation)
            {
                var end = Spread(input.Start, (int)p.Minutes).AddMinutes(Math.Ceiling((p.Days * 1440) - Slack));
                ready.Add(((p.ForLayer ?? 1) - 1, end));
            }

            return ready;
        }

        private void Pour(int i, List<DateTime> waits)
        {
            var layer = input.Layers[i];
            if (layer.PouredAt is { } fact)
            {
                Pours.Add((fact, fact));
                Missed.Add(i > 0 && fact > Closes(i - 1));
                if (fact.Date == input.Start.Date)
                {
                    used[fact.Date] = used.GetValueOrDefault(fact.Date) + (int)layer.Minutes;
                }

                return;
            }

            var (minutes, missed) = ((int)layer.Minutes, false);
            if (i > 0)
            {
                waits.Add(Pours[i - 1].Until.AddMinutes(Math.Ceiling((Opens(i - 1) * 60) - Slack)));
                waits.Add(Pours[i - 1].Until.AddMinutes(Math.Ceiling(((layer.WaitHours ?? 0) * 60) - Slack)));
            }

            var from = AtOnce(
                () =>
                {
                    if (i > 0 && !missed && now.AddMinutes(minutes) > Closes(i - 1))
                    {
                        missed = true;
                    }

                    return !missed;
                },
                waits.Append(input.Start).Max(),
                minutes);
            if (missed)
            {
                from = AtOnce(() => true, from, minutes + (int)input.AbradeMinutes);
            }

            Pours.Add((from, now));
            Missed.Add(missed);
        }

        // waits for a moment at which so many minutes fit; where it is then not wanted, nothing is done
        private DateTime AtOnce(Func<bool> wanted, DateTime notBefore, int minutes)
        {
            for (; Ends; now = now.AddMinutes(1))
            {
                var fits = now >= notBefore && Open(now.Date) && now.TimeOfDay >= input.Work.From && now.Date + input.Work.Until >= now.AddMinutes(minutes)
                    && used.GetValueOrDefault(now.Date) + minutes <= input.Work.MinutesPerDay;
                if (fits)
                {
                    var from = now;
                    if (wanted())
                    {
                        used[now.Date] = used.GetValueOrDefault(now.Date) + minutes;
                        now = now.AddMinutes(minutes);
                    }

                    return from;
                }
            }

            return now;
        }

        private DateTime Spread(DateTime notBefore, int minutes)
        {
            if (minutes == 0)
            {
                return notBefore;
            }

            for (var left = minutes; left > 0 && Ends; now = now.AddMinutes(1))
            {
                if (now >= notBefore && Open(now.Date) && now.TimeOfDay >= input.Work.From && now.TimeOfDay < input.Work.Until && used.GetValueOrDefault(now.Date) < input.Work.MinutesPerDay)
                {
                    used[now.Date] = used.GetValueOrDefault(now.Date) + 1;
                    left--;
                }
            }

            return now;
        }

        private bool Open(DateTime day) => input.Work.Days.Contains(day.DayOfWeek) && !input.Work.DaysOff.Contains(DateOnly.FromDateTime(day));

        private CureTimes Sheet(int i) => input.Resins[input.Layers[i].Resin].Sheet.Times[0];

        private double Warmth(int i) => Math.Pow(2, (Sheet(i).AtCelsius - RoomC) / 10);

        private double Opens(int i) => Sheet(i).NextPourFromHours!.Value * Math.Max(1, Warmth(i));

        private DateTime Closes(int i) => Pours[i].Until.AddMinutes(Math.Floor((Math.Max(Opens(i), Sheet(i).NextPourUntilHours!.Value * Warmth(i)) * 60) + Slack));

        private DateTime Slowest(Func<CureTimes, double> hours) =>
            Pours.Select((p, i) => p.Until.AddMinutes(Math.Ceiling((hours(Sheet(i)) * Math.Max(1, Warmth(i)) * 60) - Slack))).Max();
    }
}
