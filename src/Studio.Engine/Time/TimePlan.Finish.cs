namespace Studio.Engine.Time;

/// <content>From the mould to the family.</content>
internal sealed partial class TimePlan
{
    private (Moment From, Moment Until) Demould(Moment ready)
    {
        const string path = "demould";
        if (input.Demould.At is { } at)
        {
            var fact = Fact(TimeStep.Demould, "", at, input.Demould.Minutes, path + ".at");
            return (fact, fact);
        }

        var minutes = Whole(input.Demould.Minutes);
        if (stuck is null && ready.At is { } from && hands.AtOnce(Hands.Latest(from, input.Start), minutes) is { } spell)
        {
            Step(TimeStep.Demould, "", new(spell.From, null, ready.RestsOn), new(spell.Until), minutes);
            return (new(spell.From, null, ready.RestsOn), new(spell.Until));
        }

        var never = Idle(TimeStep.Demould, "", path, minutes, ready.Reason ?? NoHands);
        return (never, never);
    }

    // finished when the last work is done and it is fully cured; work that follows full cure, once done, says that it was
    private Moment Finish(Moment outOfMould, Moment fullCure)
    {
        var ends = new List<Moment> { outOfMould };
        for (var i = 0; i < input.Finishing.Count; i++)
        {
            ends.Add(Finish(input.Finishing[i], i, outOfMould, fullCure));
        }

        if (!input.Finishing.Any(f => f.AfterFullCure && IsDone(f)))
        {
            ends.Add(fullCure.At is null ? Stuck("finishing", fullCure.Reason!) : fullCure);
        }

        return Last(ends);
    }

    private Moment Finish(PlannedWork work, int index, Moment outOfMould, Moment fullCure)
    {
        var path = $"finishing[{index}]";
        if (IsDone(work))
        {
            return Fact(TimeStep.Finish, work.Name, work.DoneAt ?? input.Start, work.DoneAt is null ? 0 : work.Minutes, path + ".doneAt");
        }

        var minutes = Whole(work.Minutes);
        var ready = work.AfterFullCure ? Last([outOfMould, fullCure]) : outOfMould;
        if (stuck is null && ready.At is { } from && hands.Spread(Hands.Latest(from, input.Start), minutes) is { } spell)
        {
            Step(TimeStep.Finish, work.Name, new(spell.From, null, ready.RestsOn), new(spell.Until), minutes);
            return new(spell.Until);
        }

        return Idle(TimeStep.Finish, work.Name, path, minutes, ready.Reason ?? NoHands);
    }

    // the way to the family begins at the start at the earliest, however long ago the piece was finished
    private (DateOnly? Earliest, DateOnly? Promise) Deliver(Moment finished)
    {
        if (finished.At is not { } at)
        {
            Step(TimeStep.Deliver, "", finished, finished, 0);
            return (null, null);
        }

        var from = Hands.Latest(at, input.Start);
        Step(TimeStep.Deliver, "", new(from), new(from.AddDays(input.DeliveryDays)), 0);
        var earliest = DateOnly.FromDateTime(from).AddDays(input.DeliveryDays);
        return (earliest, earliest.AddDays(input.ReserveDays));
    }

    private static bool IsDone(PlannedWork work) => work.Done || work.DoneAt is not null;

    private Moment Idle(string what, string name, string path, int minutes, string reason)
    {
        var never = Stuck(path, reason);
        Step(what, name, never, never, minutes);
        return never;
    }
}
