using Studio.Clock;
using Studio.Engine;
using Studio.Engine.Forecast;

namespace Studio.Heat;

/// <summary>A pour about whose heat is asked.</summary>
/// <param name="StartedAt">When it is poured [UTC].</param>
/// <param name="RoomC">The room as the maker noted it [°C]; null: as it was last read.</param>
/// <param name="Lot">From the bottle.</param>
public sealed record HeatAsk(int PieceId, int LayerId, DateTime StartedAt, double? RoomC, string Lot);

/// <summary>What is foretold of a pour's heat before it is made.</summary>
public sealed record PourHeat
{
    /// <summary>A whole sentence: why nothing can be foretold; empty when it can.</summary>
    public string Unknown { get; init; } = "";

    /// <summary>As it is kept with the pour; null when nothing is foretold, and where no number may be shown.</summary>
    public PourForetold? Foretold { get; init; }

    /// <summary>No number is shown and nothing passes it.</summary>
    public bool RunAway { get; init; }

    /// <summary>The stop, if it would become too hot.</summary>
    public IReadOnlyList<Finding> Findings { get; init; } = [];

    /// <summary>The pour it was worked out for [UTC].</summary>
    public DateTime StartedAt { get; init; }

    /// <summary>Whole sentences: which model, what is known of the resin, what was assumed.</summary>
    public string RestsOn { get; init; } = "";

    /// <summary>What would help; null while it is not worked out.</summary>
    public IReadOnlyList<HeatOffer>? Offers { get; init; }

    /// <summary>When it should be hottest [UTC]; null when nothing is foretold.</summary>
    public DateTime? PeakAt => Foretold is { } f ? StartedAt.AddHours(f.PeakAfterHours) : null;

    internal HeatQuestion? Question { get; init; }

    internal ForecastOutcome? Outcome { get; init; }

    internal static PourHeat NotKnown(string why) => new() { Unknown = why, Offers = [] };
}

/// <summary>One change that was tried on the model.</summary>
/// <param name="Words">A whole sentence with what it gains.</param>
/// <param name="Kind">A key of <see cref="AdviceOffer"/>.</param>
/// <param name="Value">How much of it, in the unit of its kind: mm, h or K.</param>
/// <param name="Suffices">With it every limit is kept.</param>
public sealed record HeatOffer(string Words, string Kind, double Value, bool Suffices)
{
    /// <summary>True when it is taken on the piece's page; else it is a matter of the room or of time.</summary>
    public bool ChangesDesign => Kind is AdviceOffer.Thinner or AdviceOffer.TwoPours or AdviceOffer.SlowerResin;
}
