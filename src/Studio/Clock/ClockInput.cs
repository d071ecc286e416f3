using Studio.Engine.Cure;

namespace Studio.Clock;

/// <summary>What the clock needs to know of a piece.</summary>
public sealed record ClockInput
{
    /// <summary>A key of <see cref="Pieces.Making"/>.</summary>
    public required string Stage { get; init; }

    /// <summary>The design, in pouring order.</summary>
    public required IReadOnlyList<ClockLayer> Layers { get; init; }

    /// <summary>What was poured and not taken back, in any order.</summary>
    public required IReadOnlyList<ClockPour> Pours { get; init; }

    /// <summary>The room that it stands in.</summary>
    public required ClockRoom Room { get; init; }

    /// <summary>When it came out of the mould [UTC].</summary>
    public DateTime? DemouldedAt { get; init; }

    /// <summary>Hand work planned after the pours [min]; zero when nobody said.</summary>
    public double FinishMinutes { get; init; }
}

/// <summary>A layer of the design.</summary>
/// <param name="Order">From 0.</param>
public sealed record ClockLayer(int Order, string Name)
{
    /// <summary>What it lacks before it can be poured, a whole sentence each: a keepsake that is not here, or not prepared.</summary>
    public IReadOnlyList<string> Wants { get; init; } = [];
}

/// <summary>A layer that was poured, with the data sheet as it stood then.</summary>
public sealed record ClockPour(int PourId, int LayerOrder, string LayerName, DateTime StartedAt, CureSheet Sheet)
{
    /// <summary>How its lot was taken to cure when it was poured; null where nobody had taken over a fit.</summary>
    public Kinetics? Kinetics { get; init; }

    /// <summary>Resins that its lot may be, by what is known of it today; null where nothing is fitted.</summary>
    public LikelyCure? Likely { get; init; }

    /// <summary>What was foretold of its gel by its own heat; null where that could not be.</summary>
    public HeatGel? Heat { get; init; }
}
