namespace Studio.Engine.Resins;

/// <summary>Between which numbers a figure of a data sheet usually lies.</summary>
/// <param name="Low">Lowest that is usual.</param>
/// <param name="High">Highest that is usual.</param>
public sealed record UsualRange(double Low, double High);

/// <summary>A figure of a data sheet and its usual range for each class of resin: common practice, no source, and wide; what lies outside was most likely mistyped.</summary>
/// <param name="Key">Name of the field in the contract.</param>
/// <param name="Words">For a person, such as <c>pot life</c>.</param>
/// <param name="Unit">Its unit.</param>
/// <param name="DeepPour">Range of a deep-pour resin.</param>
/// <param name="Casting">Range of a casting resin.</param>
/// <param name="Fast">Range of a fast resin.</param>
/// <param name="Units">Units it is mistaken in.</param>
/// <param name="Time">True for a time of the cure, which is halved by every 10 K above 23 °C.</param>
public sealed record SheetFigure(string Key, string Words, string Unit, UsualRange DeepPour, UsualRange Casting, UsualRange Fast, IReadOnlyList<Slip> Units, bool Time = false)
{
    private const double PrintedAtC = 23;

    /// <summary>Every figure that is doubted.</summary>
    public static IReadOnlyList<SheetFigure> All { get; } =
    [
        new("potLifeMinutes", "pot life", "min", new(30, 1500), new(8, 240), new(2, 60), Slip.Hours, Time: true),
        new("gelMinutes", "gel time of a cup", "min", new(90, 4500), new(15, 900), new(3, 120), Slip.Hours, Time: true),
        new("gelHours", "gel time", "h", new(2, 96), new(0.5, 30), new(0.05, 8), Slip.MinutesOrDays, Time: true),
        new("cupMassG", "mass of the cup", "g", new(50, 10_000), new(20, 2000), new(10, 1000), Slip.Kilograms),
        new("peakCelsius", "peak of a cup", "°C", new(25, 180), new(30, 240), new(35, 280), Slip.Fahrenheit),
        new("maxPourMm", "greatest depth of a pour", "mm", new(20, 120), new(5, 60), new(1, 25), Slip.Inches),
        new("maxBatchG", "largest batch", "g", new(500, 100_000), new(50, 20_000), new(20, 5000), Slip.Kilograms),
        new("nextPourFromHours", "earliest next pour", "h", new(4, 96), new(1, 48), new(0.1, 12), Slip.MinutesOrDays, Time: true),
        new("nextPourUntilHours", "latest next pour", "h", new(8, 240), new(3, 120), new(0.5, 72), Slip.MinutesOrDays, Time: true),
        new("demouldHours", "demould time", "h", new(18, 240), new(6, 120), new(0.5, 36), Slip.MinutesOrDays, Time: true),
        new("fullCureHours", "full cure", "h", new(48, 1000), new(20, 720), new(3, 400), Slip.MinutesOrDays, Time: true),
        new("atCelsius", "temperature that a sheet is printed for", "°C", new(10, 40), new(10, 40), new(10, 40), Slip.Fahrenheit),
        new("glassEndC", "glass transition of the cured resin", "°C", new(30, 110), new(30, 140), new(30, 140), Slip.Fahrenheit),
        new("heatDeflectionC", "heat deflection temperature", "°C", new(25, 105), new(25, 135), new(25, 135), Slip.Fahrenheit),
        new("densityKgPerM3", "density of the mixed resin", "kg/m³", new(900, 2500), new(900, 2500), new(900, 2500), Slip.PerMillilitre),
        new("densityGPerMl", "density of the mixed resin", "g/ml", new(0.9, 2.5), new(0.9, 2.5), new(0.9, 2.5), Slip.PerCubicMetre),
        new("densityAGPerMl", "density of part A", "g/ml", new(0.9, 2.5), new(0.9, 2.5), new(0.9, 2.5), Slip.PerCubicMetre),
        new("densityBGPerMl", "density of part B", "g/ml", new(0.8, 2.5), new(0.8, 2.5), new(0.8, 2.5), Slip.PerCubicMetre),
        new("viscosityMPas", "viscosity of the mix", "mPa·s", new(80, 3000), new(100, 20_000), new(100, 30_000), Slip.PascalSeconds),
        new("partsB", "share of B", "parts of B to 100 of A", new(8, 130), new(8, 130), new(8, 130), [new("B before A", x => 10_000 / x)]),
    ];

    /// <summary>Doubts about a figure by its key; null where it is usual, or nothing is given.</summary>
    /// <param name="key">One of <see cref="All"/>.</param>
    /// <param name="value">As printed, in the figure's unit.</param>
    /// <param name="resinClass"><c>deepPour</c>, <c>casting</c> or <c>fast</c>; with none, or an unknown one, whatever is usual for any.</param>
    /// <param name="path">Where it stands.</param>
    /// <param name="atCelsius">Temperature it is printed for [°C], where it is a time and not the usual 23 °C.</param>
    /// <exception cref="ArgumentException">There is no such key.</exception>
    public static Finding? Doubt(string key, double? value, string? resinClass, string path, double? atCelsius = null)
    {
        var figure = All.FirstOrDefault(f => f.Key == key) ?? throw new ArgumentException($"There is no figure '{key}'.", nameof(key));
        var (low, high) = figure.Range(resinClass);
        var slower = figure.Time && atCelsius is >= 5 and <= 45 ? Math.Pow(2, (PrintedAtC - atCelsius.Value) / 10) : 1;
        return Slip.Doubt(value, low * slower, high * slower, figure.Unit, $"The {figure.Words} of a {ClassWords(resinClass)}resin", figure.Units, path);
    }

    /// <summary>The range for a class, or the widest of all.</summary>
    public UsualRange Range(string? resinClass) => resinClass switch
    {
        "deepPour" => DeepPour,
        "casting" => Casting,
        "fast" => Fast,
        _ => new(Math.Min(DeepPour.Low, Math.Min(Casting.Low, Fast.Low)), Math.Max(DeepPour.High, Math.Max(Casting.High, Fast.High))),
    };

    private static string ClassWords(string? resinClass) => resinClass switch { "deepPour" => "deep-pour ", "casting" => "casting ", "fast" => "fast ", _ => "" };
}
