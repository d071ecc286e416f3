using Studio.Engine.Heat;

namespace Studio.Engine.Forecast;

/// <summary>One change that would make a layer cooler, worked out by running the very piece that it leads to.</summary>
public sealed record AdviceOffer
{
    public const string Thinner = "thinner";
    public const string TwoPours = "two-pours";
    public const string CoolerRoom = "cooler-room";
    public const string LongerWait = "longer-wait";
    public const string SlowerResin = "slower-resin";

    /// <summary>One of the five above.</summary>
    public required string Kind { get; init; }

    /// <summary>Greatest depth [mm], wait between the two pours [h], cooling [K], longer wait [h], or what the other resin gains [K].</summary>
    public required double Value { get; init; }

    /// <summary>Unit of <see cref="Value"/>.</summary>
    public required string Unit { get; init; }

    /// <summary>Upper bound of the layer's peak with the change [°C]; of the hotter one of two pours.</summary>
    public required double PeakHighC { get; init; }

    /// <summary>How much lower that upper bound is [K].</summary>
    public required double GainK { get; init; }

    /// <summary>True when every limit of the layer is kept.</summary>
    public required bool Suffices { get; init; }

    /// <summary>A whole sentence.</summary>
    public required string Words { get; init; }

    /// <summary>The piece with the change, up to the layer it is about.</summary>
    public required HeatInput Taken { get; init; }

    /// <summary>What is known of each layer's resin in <see cref="Taken"/>.</summary>
    public required IReadOnlyList<ForecastResin> TakenResins { get; init; }
}

/// <summary>A layer that would become too hot, and what helps.</summary>
/// <param name="Layer">From 0.</param>
/// <param name="Limit">The limit that it breaks by most.</param>
/// <param name="HighC">Its upper bound where that limit holds [°C].</param>
/// <param name="RunAway">No number may be shown then.</param>
/// <param name="Offers">What helps; empty where nothing that its sheet allows does.</param>
public sealed record LayerAdvice(int Layer, HeatLimit Limit, double HighC, bool RunAway, IReadOnlyList<AdviceOffer> Offers);

/// <summary>What is to be said of a piece's heat.</summary>
/// <param name="Findings">For each layer that would become too hot, one that stops its pour and says what helps.</param>
/// <param name="Layers">The same, typed.</param>
public sealed record AdviceOutcome(IReadOnlyList<Finding> Findings, IReadOnlyList<LayerAdvice> Layers);
