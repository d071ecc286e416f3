namespace Studio.Bench.Tools.OtherResins;

/// <summary>What a made-up resin's sheet prints.</summary>
internal sealed record PrintedSheet(
    double CupG, double GelMinutes, double PeakC, double DemouldHours, double MaxPourMm, double? NextPourHours, double DensityKgPerM3);

/// <summary>A reading of a layer's thermometer.</summary>
internal sealed record TrueReading(double Hours, double Celsius);

/// <summary>A made-up resin: what its maker prints, what a thermometer shows, and what is so. Kept as data; making it takes longer than reading it.</summary>
internal sealed record ResinTruth
{
    public required string Kind { get; init; }

    public required string Form { get; init; }

    public required int Number { get; init; }

    /// <summary>How many were drawn until one could be on the market in its class.</summary>
    public required int Drawn { get; init; }

    public required Dictionary<string, double> Numbers { get; init; }

    public required PrintedSheet Sheet { get; init; }

    /// <summary>The usual layer, no deeper than the sheet allows [mm].</summary>
    public required double LayerMm { get; init; }

    public required IReadOnlyList<TrueReading> LogAt23 { get; init; }

    public required IReadOnlyList<TrueReading> LogAt28 { get; init; }

    public required double PeakAt23C { get; init; }

    public required double PeakAt28C { get; init; }

    /// <summary>Of a layer half as deep again.</summary>
    public required double PeakDeeperC { get; init; }

    /// <summary>Of the usual layer at 23 °C.</summary>
    public required double LastGelHours { get; init; }

    public required double FilmGelAt18Hours { get; init; }

    public required double FilmGelAt23Hours { get; init; }

    /// <summary>Of a layer as warm as its room, 23 °C.</summary>
    public required double DemouldHours { get; init; }

    /// <summary>How long the layer was followed [h].</summary>
    public required double FollowedHours { get; init; }

    /// <summary>Greatest |energy that is missing| of all its runs.</summary>
    public required double EnergyMiss { get; init; }

    /// <summary>What making it took [s].</summary>
    public required double Seconds { get; init; }
}
