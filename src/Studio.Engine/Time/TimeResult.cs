using Studio.Engine.Cure;

namespace Studio.Engine.Time;

/// <summary>Result of <c>calc time</c>: the earliest that a piece can be finished and with the family. Nothing in it is too early.</summary>
public sealed record TimeResult
{
    /// <summary>As given, from the lowest up.</summary>
    public required IReadOnlyList<TimeLayer> Layers { get; init; }

    /// <summary>When the last preparation is done.</summary>
    public required Moment PreparedAt { get; init; }

    /// <summary>When hands take it out of its mould.</summary>
    public required Moment DemouldAt { get; init; }

    /// <summary>When its slowest layer is fully cured.</summary>
    public required Moment FullCureAt { get; init; }

    /// <summary>When the last work on it is done and it is fully cured.</summary>
    public required Moment FinishedAt { get; init; }

    /// <summary>The earliest day on which it can be with the family; null with the reason of <see cref="FinishedAt"/>.</summary>
    public DateOnly? EarliestOn { get; init; }

    /// <summary>That day and the studio's reserve: the day to promise.</summary>
    public DateOnly? PromiseOn { get; init; }

    /// <summary>Days from the earliest day to the one on which it is needed; negative: too late. Null where either is not known.</summary>
    public int? DaysToSpare { get; init; }

    /// <summary>What that day is, to follow "the day": the family's wish, unless the maker promised another. For whoever asked; no part of the JSON.</summary>
    public string NeededAs { get; init; } = "on which they need it";

    /// <summary>Everything that hands do and wait for, in order.</summary>
    public required IReadOnlyList<TimeStep> Steps { get; init; }

    /// <summary>Stated doubts.</summary>
    public required IReadOnlyList<Finding> Findings { get; init; }

    /// <summary>Whole sentences on what the input itself rests on, as whoever asked knows it; empty on the command line.</summary>
    public string RestsOn { get; init; } = "";

    /// <summary>The answer where not even the design can be reckoned with: nothing is known, for this reason.</summary>
    public static TimeResult NotKnown(string reason)
    {
        var unknown = Moment.Unknown(reason);
        return new()
        {
            Layers = [],
            PreparedAt = unknown,
            DemouldAt = unknown,
            FullCureAt = unknown,
            FinishedAt = unknown,
            Steps = [],
            Findings = [TimeFindings.NotKnown("", reason)],
        };
    }
}

/// <summary>A moment of the wall clock, or a whole sentence that says why it is not known; never both, never neither.</summary>
/// <param name="At">In whole minutes; a ready time rounded up, a closing time down.</param>
/// <param name="Reason">Why it is not known.</param>
/// <param name="RestsOn">The room's reading behind it, where the cure clock gives one; its hours are counted from the start.</param>
public sealed record Moment(DateTime? At, string? Reason = null, RestsOn? RestsOn = null)
{
    /// <summary>A moment that is not known.</summary>
    public static Moment Unknown(string reason) => new(null, reason);
}

/// <summary>One layer.</summary>
public sealed record TimeLayer
{
    public required string Name { get; init; }

    /// <summary>When hands begin with it; of a pour that is a fact, the fact.</summary>
    public required Moment PourAt { get; init; }

    /// <summary>When it is in the mould, hands' minutes later: from then on it cures.</summary>
    public required Moment PouredAt { get; init; }

    /// <summary>When the layer below takes it.</summary>
    public required Moment WindowFrom { get; init; }

    /// <summary>Until when the layer below takes it without abrading.</summary>
    public required Moment WindowUntil { get; init; }

    /// <summary>True when it is in the mould only after that; null with the reason of <see cref="WindowUntil"/>.</summary>
    public bool? MissesWindow { get; init; }

    public required Moment GelAt { get; init; }

    public required Moment DemouldFrom { get; init; }

    public required Moment FullCureAt { get; init; }
}

/// <summary>Something that hands do, or that is waited for.</summary>
/// <param name="What">A constant of <see cref="TimeStep"/>.</param>
/// <param name="Name">Of the preparation, layer or work; empty otherwise.</param>
/// <param name="From">When it begins.</param>
/// <param name="Until">When it is over; its waiting, drying or way included.</param>
/// <param name="HandsMinutes">Of hands in it [min]; 0 for a fact.</param>
/// <param name="Done">True for a fact.</param>
public sealed record TimeStep(string What, string Name, Moment From, Moment Until, int HandsMinutes, bool Done)
{
    public const string Prepare = "prepare";
    public const string Pour = "pour";
    public const string Demould = "demould";
    public const string Finish = "finish";
    public const string Deliver = "deliver";
}
