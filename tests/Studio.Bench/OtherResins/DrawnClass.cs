namespace Studio.Bench.Tools.OtherResins;

/// <summary>What the sheets of a class of resin print, and how such a resin is poured and logged. Common practice, no source.</summary>
/// <param name="Key">As the engine names it.</param>
/// <param name="CupG">Of the cup whose gel is printed [g].</param>
/// <param name="GelFromMin">Earliest gel of that cup [min].</param>
/// <param name="GelToMin">Latest [min].</param>
/// <param name="DeepFromMm">Least greatest depth [mm].</param>
/// <param name="DeepToMm">Most [mm].</param>
/// <param name="UsualMm">Depth of a usual layer [mm].</param>
/// <param name="LogEveryMin">[min].</param>
internal sealed record DrawnClass(string Key, double CupG, double GelFromMin, double GelToMin, double DeepFromMm, double DeepToMm, double UsualMm, double LogEveryMin)
{
    public static IReadOnlyList<DrawnClass> All { get; } =
    [
        new("deepPour", 1000, 600, 1500, 20, 60, 40, 10),
        new("casting", 100, 60, 400, 6, 20, 10, 10),
        new("fast", 100, 8, 40, 2, 5, 2.5, 1),
    ];

    /// <summary>As a sheet prints a gel time [min].</summary>
    public static double PrintedMinutes(double minutes) => Nearest(minutes, minutes < 30 ? 1 : minutes < 60 ? 5 : minutes < 300 ? 10 : 30);

    /// <summary>As a sheet prints hours [h].</summary>
    public static double PrintedHours(double hours) => Nearest(hours, hours < 6 ? 0.5 : hours < 24 ? 1 : hours < 48 ? 6 : 12);

    /// <summary>As a sheet prints a depth [mm].</summary>
    public double PrintedMm(double mm) => Nearest(mm, Key switch { "deepPour" => 5, "casting" => 1, _ => 0.5 });

    public static double Nearest(double value, double step) => Math.Max(step, Math.Round(value / step) * step);
}
