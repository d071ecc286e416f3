using Studio.Pieces;

namespace Studio.Clock;

/// <summary>Decides what hands do next. The top layer decides about the next pour, the slowest about the mould.</summary>
internal sealed class NextActs(ClockInput input, IReadOnlyList<LayerTimes> layers, ClockTime demould, ClockTime full, ClockWords words)
{
    private static readonly TimeSpan ClosesSoon = TimeSpan.FromHours(1);

    /// <summary>When the printed hours alone would have the piece out [UTC].</summary>
    internal DateTime? PrintedDemouldAt { get; init; }

    private DateTime Now => words.Now;

    private LayerTimes Top => layers[^1];

    internal NextAct Find() => Wanting(ByTheClock());

    // the clock only knows the resin; what is to be set in may not be here, or not be dry
    private NextAct Wanting(NextAct next)
    {
        if (next.Kind is not (ActKind.PourFirst or ActKind.PourNext or ActKind.WindowClosed or ActKind.WaitForWindow)
            || input.Layers.FirstOrDefault(l => l.Order == next.LayerOrder) is not { Wants.Count: > 0 } layer)
        {
            return next;
        }

        var wants = string.Join(" ", layer.Wants);
        return next.Kind == ActKind.PourFirst
            ? next with { Wants = wants, Words = $"Before {layer.Name} can be poured: {wants}", Urgency = Urgency.Waiting, Minutes = 0 }
            : next with { Wants = wants, Words = $"{next.Words} First: {wants}" };
    }

    private NextAct ByTheClock() => input.Stage switch
    {
        Making.Finished or Making.Home or Making.LetGo or Making.Failed => new() { Kind = ActKind.Done, Words = "Nothing is left to do at the bench.", Urgency = Urgency.Waiting },
        Making.Demoulded => AfterMould(),
        _ when layers.Count == 0 => First(),
        _ when ToPour() is { } layer => NextPour(layer),
        _ => OutOfMould(),
    };

    private ClockLayer? ToPour() => input.Layers.OrderBy(l => l.Order).FirstOrDefault(l => layers.All(p => p.Order != l.Order));

    private NextAct First() => ToPour() is { } layer
        ? new()
        {
            Kind = ActKind.PourFirst,
            Words = $"Pour the first layer, {layer.Name}, when you are ready.",
            Urgency = Urgency.Whenever,
            Minutes = BenchMinutes.Pour,
            LayerOrder = layer.Order,
            LayerName = layer.Name,
        }
        : new() { Kind = ActKind.WaitOthers, Words = "Its layers are not designed yet.", Urgency = Urgency.Waiting };

    private NextAct NextPour(ClockLayer layer)
    {
        var (from, until) = (Top.From, Top.Until);
        var act = new NextAct
        {
            Kind = ActKind.WaitForWindow,
            Words = "",
            Urgency = Urgency.Waiting,
            From = from.At,
            Until = until.At,
            RestsOn = from.RestsOn,
            Minutes = BenchMinutes.Pour,
            LayerOrder = layer.Order,
            LayerName = layer.Name,
            Since = Top.StartedAt,
        };
        return (from.At, until.At) switch
        {
            (null, _) => Unknown(act, from, "the next pour"),
            ({ } opens, var closes) when Now < opens => act with
            {
                Words = $"Next pour from {words.Clock(opens)}{(closes is { } c ? $", window closes {words.Clock(c)}" : "")}.",
                Urgency = Soon(opens),
            },
            (_, { } closes) when Now >= closes => act with
            {
                Kind = ActKind.WindowClosed,
                Words = $"The window closed {(words.IsToday(closes) ? "at " : "")}{words.Clock(closes)}: abrade and clean before the next pour, as its data sheet says.",
                Urgency = Urgency.Overdue,
                RestsOn = until.RestsOn,
                Since = closes,
                Minutes = BenchMinutes.Pour + BenchMinutes.Abrade,
            },
            ({ } opens, { } closes) => act with
            {
                Kind = ActKind.PourNext,
                Words = $"Pour {layer.Name} now: the window closes {words.Clock(closes)}.",
                Urgency = closes - Now <= ClosesSoon ? Urgency.Closing : Urgency.Now,
                RestsOn = until.RestsOn,
                Since = opens,
            },
            ({ } opens, null) => act with
            {
                Kind = ActKind.PourNext,
                Words = $"Pour {layer.Name}: ready since {words.Clock(opens)}. Its data sheet prints no end of the window, so do not leave it long.",
                Urgency = Urgency.Now,
                Since = opens,
            },
        };
    }

    private NextAct OutOfMould()
    {
        var act = new NextAct
        {
            Kind = ActKind.WaitDemould,
            Words = "",
            Urgency = Urgency.Waiting,
            From = demould.At,
            RestsOn = demould.RestsOn,
            Minutes = BenchMinutes.Demould,
            LayerOrder = Top.Order,
            LayerName = Top.Name,
            Since = Top.StartedAt,
        };
        return demould.At switch
        {
            null => Unknown(act, demould, "demoulding"),
            { } at when Now >= at => act with { Kind = ActKind.Demould, Words = $"Ready to demould since {words.Clock(at)}.", Urgency = Urgency.Now, Since = at },
            { } at => act with { Words = NotYet(at), Urgency = Soon(at) },
        };
    }

    // the strong form only once the printed hours are over and a hand might reach for the mould
    private string NotYet(DateTime at) => Now >= PrintedDemouldAt && demould.Celsius is { } celsius
        ? $"Do not demould yet: at {words.Celsius(celsius)} it needs until {words.Clock(at)}."
        : $"Demould {words.At(at)}.";

    private NextAct AfterMould()
    {
        var act = new NextAct
        {
            Kind = ActKind.Finish,
            Words = "Finish it: trim, sand and polish.",
            Urgency = Urgency.Whenever,
            From = full.At,
            RestsOn = full.RestsOn,
            Minutes = input.FinishMinutes > 0 ? input.FinishMinutes : BenchMinutes.Finish,
            Since = full.At ?? input.DemouldedAt,
            LayerOrder = layers.Count > 0 ? Top.Order : null,
        };
        return full.At switch
        {
            null => Unknown(act, full, "full cure"),
            { } at when Now < at => act with { Kind = ActKind.WaitFullCure, Words = $"Let it cure fully until {words.Clock(at)}, then finish it.", Urgency = Soon(at), Since = input.DemouldedAt },
            _ => act,
        };
    }

    private NextAct Unknown(NextAct act, ClockTime time, string what) => input.Room.IsEmpty
        ? act with
        {
            Kind = ActKind.WaitReading,
            Words = $"Log the room's temperature: without it the clock cannot say when {what} may come.",
            Urgency = Urgency.Now,
            Minutes = BenchMinutes.Reading,
            RestsOn = time.RestsOn,
        }
        : act with { Kind = ActKind.AskSheet, Words = $"{time.RestsOn} Go by the words of the sheet for {what}.", Urgency = Urgency.Whenever, RestsOn = "" };

    private Urgency Soon(DateTime at) => words.IsToday(at) ? Urgency.Today : Urgency.Later;
}
