namespace Studio.Engine.Cure;

/// <summary>What the room's temperature at a milestone is known from.</summary>
public enum RestsOnKind
{
    /// <summary>Readings stand on both sides of the milestone, or on it.</summary>
    Reading,

    /// <summary>The milestone comes after the last reading, whose value is held.</summary>
    Held,

    /// <summary>The milestone comes before the first reading, whose value is assumed for the time before it.</summary>
    Assumed,
}

/// <summary>The reading that a milestone rests on.</summary>
/// <param name="Kind">Read, held or assumed.</param>
/// <param name="AtHours">When that reading was taken [h] on the readings' scale: the latest at or before the milestone, or the first one when assumed.</param>
/// <param name="Celsius">What it said [°C].</param>
public sealed record RestsOn(RestsOnKind Kind, double AtHours, double Celsius)
{
    /// <summary>A whole sentence; the caller gives time and temperature in its own culture and zone.</summary>
    /// <param name="time">Words for <see cref="AtHours"/>, such as <c>14:10</c>.</param>
    /// <param name="temperature">Words for <see cref="Celsius"/> with its unit, such as <c>19.5 °C</c>.</param>
    public string Sentence(string time, string temperature) => Kind switch
    {
        RestsOnKind.Reading => $"Rests on the room's readings, {temperature} at {time} the latest before it.",
        RestsOnKind.Held => $"Holds if the room stays at its last reading, {temperature} at {time}.",
        RestsOnKind.Assumed => $"Assumes the room was already at its first reading, {temperature} at {time}.",
        _ => throw new InvalidOperationException($"No sentence for {Kind}."),
    };
}

/// <summary>One milestone of the cure and what it rests on. It has a time and what it rests on, or a reason; never both, never neither.</summary>
/// <param name="AtHours">When it is reached [h] on the readings' scale; null with <paramref name="Reason"/> when it cannot be said.</param>
/// <param name="RestsOn">The reading behind it; null when there is no time.</param>
/// <param name="Reason">A whole sentence: why there is no time.</param>
public sealed record Milestone(double? AtHours, RestsOn? RestsOn, string? Reason = null)
{
    /// <summary>True when the printed hours decide, because the room was warm enough to be done sooner by the formula.</summary>
    public bool FromPrintedHours { get; init; }

    /// <summary>What decides: the sheet, or a model that is stricter than it or speaks where it is silent.</summary>
    public DecidedBy By { get; init; }

    /// <summary>True where a model decides, not the sheet.</summary>
    public bool FromKinetics => By is not DecidedBy.Sheet;

    /// <summary>What the sheet alone would say where a model decides [h]; null where it says nothing.</summary>
    public double? SheetAtHours { get; init; }

    /// <summary>A milestone without a time.</summary>
    public static Milestone Unknown(string reason) => new(null, null, reason);

    /// <summary>True when the milestone is known and reached at <paramref name="hours"/> [h] on the readings' scale, to a microsecond.</summary>
    public bool ReachedAt(double hours) => AtHours <= hours + CureRounding.SlackHours;
}

/// <summary>All milestones of one layer.</summary>
public sealed record LayerCure
{
    public required string Name { get; init; }

    /// <summary>The resin no longer flows.</summary>
    public required Milestone Gel { get; init; }

    /// <summary>The next-pour window opens.</summary>
    public required Milestone NextPourFrom { get; init; }

    /// <summary>The next-pour window closes; afterwards the surface must be abraded and cleaned.</summary>
    public required Milestone NextPourUntil { get; init; }

    /// <summary>The layer may be demoulded.</summary>
    public required Milestone Demould { get; init; }

    /// <summary>The layer is fully cured.</summary>
    public required Milestone FullCure { get; init; }

    /// <summary>The clock from its resin's kinetics, for conversion and glass transition at any time; null where they are not known or no room is logged.</summary>
    public KineticClock? Kinetic { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }
}

/// <summary>A piece's clock.</summary>
/// <param name="Layers">From the lowest up, as given.</param>
/// <param name="Demould">That of the slowest layer; unknown when that of any layer is.</param>
/// <param name="Findings">Those that concern the readings; each layer has its own besides.</param>
public sealed record PieceCure(IReadOnlyList<LayerCure> Layers, Milestone Demould, IReadOnlyList<Finding> Findings);
