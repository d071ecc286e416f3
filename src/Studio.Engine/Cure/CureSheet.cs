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

/// <summary>A room temperature reading. Readings below −30 °C or above 60 °C are left out of the clock and named in a finding.</summary>
/// <param name="Hours">Time [h] on the caller's own scale.</param>
/// <param name="Celsius">Temperature [°C].</param>
public sealed record RoomReading(double Hours, double Celsius);

/// <summary>A layer that was poured; a piece's layers are listed from the lowest up.</summary>
/// <param name="Name">For messages.</param>
/// <param name="Sheet">Its resin's printed times.</param>
/// <param name="PouredAtHours">When [h], on the readings' scale.</param>
public sealed record PouredLayer(string Name, CureSheet Sheet, double PouredAtHours)
{
    /// <summary>How its resin cures, where known; the clock then takes the later of model and sheet, and for the window's end the earlier.</summary>
    public Kinetics? Kinetics { get; init; }
}
