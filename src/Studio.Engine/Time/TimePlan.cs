namespace Studio.Engine.Time;

/// <summary>One piece being planned, step by step, each as early as it can be. What is not known stops all that is planned after it.</summary>
internal sealed partial class TimePlan
{
    private readonly TimeInput input;
    private readonly Hands hands;
    private readonly WallClock clock;
    private readonly Cure.RoomLog room;
    private readonly List<TimeStep> steps = [];
    private readonly List<Finding> findings = [];
    private string? stuck;

    internal TimePlan(TimeInput input)
    {
        (this.input, clock, room) = (input, new(input.Start), new(input.Room));
        hands = new(input.Work, input.Start);
        findings.AddRange(room.Findings);
    }

    internal TimeResult Result()
    {
        var prepared = Prepare();
        var layers = Pour(prepared);
        var (fullCure, demouldFrom) = (Slowest(layers, l => l.FullCureAt), Slowest(layers, l => l.DemouldFrom));
        var outOfMould = Demould(demouldFrom);
        var finished = Finish(outOfMould.Until, fullCure);
        var (earliest, promise) = Deliver(finished);
        if (input.NeededBy is { } needed && earliest is { } day && TimeFindings.NeededBy(needed, day, promise!.Value, input.ReserveDays, input.Layers.Any(l => l.PouredAt is null)) is { } late)
        {
            findings.Add(late);
        }

        return new()
        {
            Layers = layers,
            PreparedAt = prepared.Count == 0 ? Moment.Unknown("Nothing is to be prepared.") : Last(prepared.Select(p => p.Ready)),
            DemouldAt = outOfMould.From,
            FullCureAt = fullCure,
            FinishedAt = finished,
            EarliestOn = earliest,
            PromiseOn = promise,
            DaysToSpare = input.NeededBy?.DayNumber - earliest?.DayNumber,
            Steps = steps,
            Findings = findings,
        };
    }

    private static int Whole(double minutes) => (int)Math.Ceiling(minutes - 1e-9);

    // the latest of them; not known as soon as one is not
    private static Moment Last(IEnumerable<Moment> moments)
    {
        Moment? last = null;
        foreach (var moment in moments)
        {
            if (moment.At is null)
            {
                return moment;
            }

            last = last is null || moment.At > last.At ? moment : last;
        }

        return last!;
    }

    private static Moment Slowest(List<TimeLayer> layers, Func<TimeLayer, Moment> pick) => Last(layers.Select(l => Named(l, pick(l))));

    // a layer that is not poured says itself why; of one that is, the reason is its own
    private static Moment Named(TimeLayer layer, Moment moment) =>
        moment.Reason is { } reason && layer.PouredAt.At is not null ? Moment.Unknown($"Layer {layer.Name}: {reason}") : moment;

    private Moment Stuck(string path, string reason)
    {
        if (stuck is null)
        {
            stuck = reason;
            findings.Add(TimeFindings.NotKnown(path, reason));
        }

        return Moment.Unknown(stuck);
    }

    private void Step(string what, string name, Moment from, Moment until, int handsMinutes, bool done = false) =>
        steps.Add(new(what, name, from, until, handsMinutes, done));

    private Moment Fact(string what, string name, DateTime at, double minutes, string path)
    {
        if (at > input.Start && !findings.Exists(f => f.Code == "past-start"))
        {
            findings.Add(TimeFindings.PastStart(path, at, input.Start));
        }

        hands.Done(at, Whole(minutes));
        var moment = new Moment(at);
        Step(what, name, moment, moment, 0, done: true);
        return moment;
    }
}
