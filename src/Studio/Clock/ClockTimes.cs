using Studio.Engine.Cure;

namespace Studio.Clock;

/// <summary>The engine's milestones as times of day with what they rest on.</summary>
internal sealed class ClockTimes(HourScale scale, ClockWords words)
{
    internal LayerTimes Layer(ClockPour pour, LayerCure cure)
    {
        var (gel, from, demould, full) = (Ready(cure.Gel), Ready(cure.NextPourFrom), Ready(cure.Demould), Ready(cure.FullCure));
        return new()
        {
            PourId = pour.PourId,
            Order = pour.LayerOrder,
            Name = pour.LayerName,
            StartedAt = pour.StartedAt,
            Gel = gel,
            From = from,
            Until = Tell(cure.NextPourUntil, CureRounding.DownToMinute, "The quickest that this resin may be, by what is known of its cure,"),
            Demould = demould,
            FullCure = full,
            Curing = !demould.Reached(words.Now),
            Words = HowFar(gel, from, demould, full),
        };
    }

    internal ClockTime Ready(Milestone milestone) => Tell(milestone, CureRounding.UpToMinute, "The slowest that this resin may be, by what is known of its cure, as a thin layer,");

    private ClockTime Tell(Milestone milestone, Func<DateTime, DateTime> round, string byFit) => milestone is { AtHours: { } hours, RestsOn: { } rests }
        ? new(round(scale.At(hours)), RestsOn(rests) + Decides(milestone, round, byFit), rests.Celsius)
        : new(null, milestone.Reason ?? "");

    private string Decides(Milestone milestone, Func<DateTime, DateTime> round, string byFit) =>
        milestone.FromPrintedHours ? " The data sheet's printed hours decide."
        : !milestone.FromKinetics ? ""
        : milestone.SheetAtHours is { } sheet ? $" {Decider(milestone.By, byFit)} decides; its sheet alone would say {words.When(round(scale.At(sheet)))}."
        : $" {Decider(milestone.By, byFit)} decides; its sheet prints no such time.";

    private static string Decider(DecidedBy by, string byFit) => by switch
    {
        DecidedBy.Kinetics => "The resin's fitted cure",
        DecidedBy.Fit => byFit,
        DecidedBy.Heat => "The latest gel by this layer's own heat, as foretold at its pour,",
        _ => throw new InvalidOperationException($"No words for {by}."),
    };

    private string RestsOn(RestsOn rests)
    {
        var reading = $"{words.Celsius(rests.Celsius)} of {words.When(scale.At(rests.AtHours))}";
        return rests.Kind switch
        {
            RestsOnKind.Reading => $"Rests on the room's readings, the latest before it {reading}.",
            RestsOnKind.Held => $"Rests on the reading {reading}, held since.",
            RestsOnKind.Assumed => $"Rests on the first reading, {reading}, taken as true for the time before it.",
            _ => throw new InvalidOperationException($"No sentence for {rests.Kind}."),
        };
    }

    private string HowFar(ClockTime gel, ClockTime from, ClockTime demould, ClockTime full)
    {
        var now = words.Now;
        return full.Reached(now) ? "fully cured"
            : demould.Reached(now) ? "firm, not yet fully cured"
            : from.Reached(now) ? "curing, has taken its first set"
            : gel.Reached(now) ? "curing, gelled"
            : gel.At is { } set ? $"curing, liquid until {words.Clock(set)}"
            : "curing";
    }
}
