namespace Studio.Engine.Cure;

/// <summary>The printed curing times of a resin's data sheet, at one or more stated temperatures.</summary>
public sealed record CureSheet
{
    /// <summary>Rows of times, each at the temperature it is printed for; at least one.</summary>
    public required IReadOnlyList<CureTimes> Times { get; init; }

    /// <summary>Factor by which the cure quickens per 10 °C; 2 by default ('common practice, no source': 1.5 to 2.5 in reality).</summary>
    public double FactorPer10C { get; init; } = 2;

    /// <summary>Lowest room temperature the sheet allows [°C]; colder readings are reported, never guessed faster.</summary>
    public double? MinC { get; init; }

    /// <summary>Highest room temperature the sheet allows [°C].</summary>
    public double? MaxC { get; init; }
}

/// <summary>What the sheet prints for one temperature; hours after pouring. Null where it prints nothing.</summary>
public sealed record CureTimes
{
    public required double AtCelsius { get; init; }

    public double? GelHours { get; init; }

    public double? NextPourFromHours { get; init; }

    public double? NextPourUntilHours { get; init; }

    public double? DemouldHours { get; init; }

    public double? FullCureHours { get; init; }
}

/// <summary>A room temperature reading.</summary>
/// <param name="Hours">Time [h] on the caller's own scale.</param>
/// <param name="Celsius">Temperature [°C].</param>
public sealed record RoomReading(double Hours, double Celsius);

/// <summary>A layer that was poured.</summary>
/// <param name="Name">For messages.</param>
/// <param name="Sheet">Its resin's printed times.</param>
/// <param name="PouredAtHours">When [h], on the readings' scale.</param>
public sealed record PouredLayer(string Name, CureSheet Sheet, double PouredAtHours);

/// <summary>One milestone of the cure and what it rests on.</summary>
/// <param name="AtHours">When it is reached [h] on the readings' scale; null with <paramref name="Reason"/> when it cannot be said.</param>
/// <param name="RestsOn">A sentence: a reading, or the last reading held.</param>
/// <param name="Reason">Why there is no time.</param>
public sealed record Milestone(double? AtHours, string RestsOn, string? Reason = null);

/// <summary>All milestones of one layer.</summary>
public sealed record LayerCure
{
    public required string Name { get; init; }

    public required Milestone Gel { get; init; }

    public required Milestone NextPourFrom { get; init; }

    public required Milestone NextPourUntil { get; init; }

    public required Milestone Demould { get; init; }

    public required Milestone FullCure { get; init; }

    public required IReadOnlyList<Finding> Findings { get; init; }
}

/// <summary>A piece's clock: its layers, and the demould time of the slowest of them.</summary>
public sealed record PieceCure(IReadOnlyList<LayerCure> Layers, Milestone Demould);
