using Studio.Engine.Heat;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>A piece about whose heat advice is asked.</summary>
public sealed record AdviceInput
{
    public required HeatInput Piece { get; init; }

    public required MouldBody Mould { get; init; }

    /// <summary>For each layer what is known of its resin, with what its sheet allows.</summary>
    public required IReadOnlyList<ForecastResin> Resins { get; init; }

    /// <summary>For each layer what must not become hotter.</summary>
    public required IReadOnlyList<IReadOnlyList<HeatLimit>> Limits { get; init; }

    /// <summary>For each layer its name in sentences; "Layer 1" and so on where left out.</summary>
    public IReadOnlyList<string> Names { get; init; } = [];

    /// <summary>Resins that could be poured in place of a layer's own.</summary>
    public IReadOnlyList<OtherResin> Others { get; init; } = [];

    /// <summary>Layers under this one are poured already and get no advice, from 0.</summary>
    public int FirstFree { get; init; }

    /// <summary>What was foretold of this very piece; worked out where left out.</summary>
    public ForecastOutcome? Told { get; init; }
}

/// <summary>A resin that could be poured instead.</summary>
/// <param name="Name">For sentences.</param>
/// <param name="Resin">Fitted: with exact kinetics only there is nothing to put in the layer's place.</param>
public sealed record OtherResin(string Name, ForecastResin Resin);
