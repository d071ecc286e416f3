using Studio.Engine.Cure;

namespace Studio.Engine.Time;

/// <content>Preparation and pours, in the order of the work.</content>
internal sealed partial class TimePlan
{
    private const string NoHands = "There are no working hours for it within ten years of the start.";

    // hands do them one after the other in the order given; what each then waits for runs side by side
    private List<(int FromLayer, Moment Ready)> Prepare() => [.. input.Preparation.Select((p, i) => ((p.ForLayer ?? 1) - 1, Prepare(p, i)))];

    private Moment Prepare(PlannedPreparation preparation, int index)
    {
        var path = $"preparation[{index}]";
        if (preparation.DoneAt is { } done)
        {
            return Fact(TimeStep.Prepare, preparation.Name, done, preparation.Minutes, path + ".doneAt");
        }

        var minutes = Whole(preparation.Minutes);
        if (hands.Spread(input.Start, minutes) is not { } spell || WallClock.After(spell.Until, preparation.Days * 24) is not { } ready)
        {
            return Idle(TimeStep.Prepare, preparation.Name, path, minutes, NoHands);
        }

        var moment = new Moment(ready);
        Step(TimeStep.Prepare, preparation.Name, new(spell.From), moment, minutes);
        return moment;
    }

    private List<TimeLayer> Pour(List<(int FromLayer, Moment Ready)> prepared)
    {
        var layers = new List<TimeLayer>();
        PouredLayer? below = null;
        LayerCure? under = null;
        for (var i = 0; i < input.Layers.Count; i++)
        {
            var spec = input.Layers[i];
            var none = Moment.Unknown(i == 0 ? "It is the first pour: nothing lies under it." : stuck ?? "");
            var window = (From: under is null ? none : clock.Ready(under.NextPourFrom), Until: under is null ? none : clock.Closing(under.NextPourUntil));
            var (pour, poured) = spec.PouredAt is { } fact
                ? (Fact(TimeStep.Pour, spec.Name, fact, spec.Minutes, $"layers[{i}].pouredAt"), new Moment(fact))
                : Plan(i, window, layers, prepared.Where(p => p.FromLayer <= i).Select(p => p.Ready));
            (below, under) = poured.At is { } at ? Cure(i, at, below) : (null, null);
            layers.Add(Told(spec, i, pour, poured, window, under));
        }

        return layers;
    }

    private (Moment Pour, Moment Poured) Plan(int index, (Moment From, Moment Until) window, List<TimeLayer> layers, IEnumerable<Moment> prepared)
    {
        var (spec, path) = (input.Layers[index], $"layers[{index}]");
        var below = index == 0 ? null : layers[index - 1];
        var ready = Last([new Moment(input.Start), .. prepared, .. below is null ? [] : Waits(below, window.From, spec.WaitHours)]);
        var minutes = Whole(spec.Minutes);
        var spell = stuck is null && ready.At is { } from ? hands.Try(from, minutes) : null;
        if (spell is not null && below is not null && spell.Until > window.Until.At)
        {
            minutes += Whole(input.AbradeMinutes);
            spell = hands.Try(ready.At!.Value, minutes);
            if (spell is not null)
            {
                findings.Add(TimeFindings.WindowMissed(path, spec, below.Name, window.Until.At!.Value, spell.Until, Whole(input.AbradeMinutes), input.Layers[index - 1].PouredAt is not null));
            }
        }

        if (spell is null)
        {
            var never = Idle(TimeStep.Pour, spec.Name, path, minutes, ready.Reason ?? (minutes <= input.Work.MinutesPerDay ? NoHands
                : $"Layer {spec.Name}: with abrading its pour takes {minutes} minutes of hands, and a working day has {input.Work.MinutesPerDay} for this piece."));
            return (never, never);
        }

        hands.Take(spell);
        var (pour, poured) = (new Moment(spell.From, null, ready.RestsOn), new Moment(spell.Until));
        Step(TimeStep.Pour, spec.Name, pour, poured, minutes);
        return (pour, poured);
    }

    // the window's opening, and the planned wait where that is longer
    private static IEnumerable<Moment> Waits(TimeLayer below, Moment opens, double? waitHours)
    {
        yield return Named(below, opens);
        if (waitHours is { } wait && below.PouredAt.At is { } poured)
        {
            yield return WallClock.After(poured, wait) is { } at ? new(at) : Moment.Unknown(NoHands);
        }
    }

    // a layer's own clock; one that is a fact is doubted beside the one under it, as calc cure does
    private (PouredLayer Layer, LayerCure Cure) Cure(int index, DateTime poured, PouredLayer? below)
    {
        var spec = input.Layers[index];
        var resin = input.Resins[spec.Resin];
        var layer = new PouredLayer(spec.Name, resin.Sheet, clock.Hours(poured)) { Kinetics = resin.Kinetics, Likely = resin.Likely, Heat = spec.PouredAt is null ? null : resin.Heat };
        PouredLayer[] beside = spec.PouredAt is not null && below is not null ? [below, layer] : [layer];
        var cure = CureClock.Run(beside, room, double.PositiveInfinity).Layers[^1];
        var mine = $"layers[{beside.Length - 1}]";
        findings.AddRange(cure.Findings.Select(f => f with { Path = f.Path == mine ? $"layers[{index}]" : $"layers[{index}].pouredAt" }));
        return (layer, cure);
    }

    private TimeLayer Told(PlannedPour spec, int index, Moment pour, Moment poured, (Moment From, Moment Until) window, LayerCure? cure) => new()
    {
        Name = spec.Name,
        PourAt = pour,
        PouredAt = poured,
        WindowFrom = window.From,
        WindowUntil = window.Until,
        MissesWindow = index == 0 ? false : poured.At > window.Until.At ? true : poured.At is null || window.Until.At is null ? null : false,
        GelAt = cure is null ? poured : clock.Ready(cure.Gel),
        DemouldFrom = cure is null ? poured : clock.Ready(cure.Demould),
        FullCureAt = cure is null ? poured : clock.Ready(cure.FullCure),
    };
}
