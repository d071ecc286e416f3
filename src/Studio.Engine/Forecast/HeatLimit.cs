namespace Studio.Engine.Forecast;

/// <summary>A temperature that something in or around a layer must not reach, and where that is from.</summary>
/// <param name="Of">What it holds for, in words, such as <c>the resin</c>.</param>
/// <param name="Celsius">[°C].</param>
/// <param name="Source">Sheet, standard, or 'common practice, no source'.</param>
public sealed record HeatLimit(string Of, double Celsius, string Source)
{
    /// <summary>Above this no number is shown, only 'run-away: do not pour' [°C].</summary>
    public const double RunAwayC = HeatFindings.RunawayC;

    private const string NoSource = "common practice, no source";

    /// <summary>True when it holds where resin touches the mould, not everywhere in the layer.</summary>
    public bool AtMouldFace { get; init; }

    /// <summary>Clear resin yellows and may crack above this.</summary>
    public static HeatLimit Resin { get; } = new("the resin", 75, NoSource);

    /// <summary>Hot resin bonds to silicone and wears it out.</summary>
    public static HeatLimit SiliconeMould { get; } = new("the silicone mould", 65, NoSource) { AtMouldFace = true };

    /// <summary>A printed film of polyester cockles once it softens.</summary>
    public static HeatLimit PrintedFilm { get; } = new("the printed film", 65, "glass transition of polyester film, about 70 °C, from memory; 5 K kept in hand");

    /// <summary>Things of paraffin soften.</summary>
    public static HeatLimit Paraffin { get; } = new("the paraffin", 45, "paraffin softens from about 45 to 65 °C, from memory");

    /// <summary>Things of beeswax soften, long before they melt.</summary>
    public static HeatLimit Beeswax { get; } = new("the beeswax", 50, "beeswax melts at 62 to 65 °C and is soft well before, from memory");

    /// <summary>Lights.</summary>
    public static HeatLimit Lights { get; } = new("the lights", 85, "usual highest storage temperature of light-emitting diodes, from memory; their own sheet goes before it");

    /// <summary>Acrylic parts soften.</summary>
    public static HeatLimit Acrylic { get; } = new("the acrylic", 80, "heat deflection of cast acrylic from about 85 °C, from memory; 5 K kept in hand");

    /// <summary>Dried flowers brown.</summary>
    public static HeatLimit DriedFlowers { get; } = new("the dried flowers", 60, NoSource);

    /// <summary>A hand that holds the mould for a minute is burnt; a touch of ten minutes burns from 48 °C.</summary>
    public static HeatLimit Touch { get; } = new("a hand on the mould", 51, "ISO 13732-1: burn threshold for contact of 1 min, 51 °C for every material, from memory") { AtMouldFace = true };

    /// <summary>All of them, by a key for data and settings.</summary>
    public static IReadOnlyDictionary<string, HeatLimit> All { get; } = new Dictionary<string, HeatLimit>(StringComparer.Ordinal)
    {
        ["resin"] = Resin,
        ["siliconeMould"] = SiliconeMould,
        ["printedFilm"] = PrintedFilm,
        ["paraffin"] = Paraffin,
        ["beeswax"] = Beeswax,
        ["lights"] = Lights,
        ["acrylic"] = Acrylic,
        ["driedFlowers"] = DriedFlowers,
        ["touch"] = Touch,
    };

    /// <summary>The same limit with a temperature that a sheet prints or the maker sets.</summary>
    public HeatLimit From(double celsius, string source) => this with { Celsius = celsius, Source = source };

    /// <summary>How far a layer's upper bound is above it; negative when below [K].</summary>
    public double OverK(ForecastLayer layer) => (AtMouldFace ? layer.FaceHighC : layer.PeakHighC) - Celsius;
}
