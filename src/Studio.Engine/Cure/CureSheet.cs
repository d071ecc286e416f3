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

    /// <summary>Resins that it may be, by a fit; a gel and the next pour then wait for the slow ones, and the window ends with the quick ones. Null where nothing is fitted.</summary>
    public LikelyCure? Likely { get; init; }

    /// <summary>Of the mix at its pour [°C]; as warm as the room where not known.</summary>
    public double? PouredCelsius { get; init; }

    /// <summary>What a run of its own heat says; null where there is none.</summary>
    public HeatGel? Heat { get; init; }
}
