using System.Globalization;

namespace Studio.Engine.Resins;

/// <summary>How a number comes to be wrong: its point slipped, or it was printed in another unit.</summary>
/// <param name="Printed">What the sheet then prints, in words: <c>hours</c>; empty where only the point slipped.</param>
/// <param name="Meant">From what stands there to what was meant.</param>
public sealed record Slip(string Printed, Func<double, double> Meant)
{
    internal static Slip[] Hours { get; } = [new("hours", x => x * 60)];

    internal static Slip[] MinutesOrDays { get; } = [new("minutes", x => x / 60), new("days", x => x * 24)];

    internal static Slip[] Fahrenheit { get; } = [new("°F", x => (x - 32) / 1.8)];

    internal static Slip[] Inches { get; } = [new("inches", x => x * 25.4)];

    internal static Slip[] Kilograms { get; } = [new("kilograms", x => x * 1000)];

    internal static Slip[] PascalSeconds { get; } = [new("Pa·s", x => x * 1000)];

    /// <summary>A density in kg/m³ where g/ml is meant.</summary>
    public static IReadOnlyList<Slip> PerCubicMetre { get; } = [new("kg/m³", x => x / 1000)];

    internal static Slip[] PerMillilitre { get; } = [new("g/ml", x => x * 1000)];

    /// <summary>Says of a number outside the range what was probably meant; null where it lies inside. The nearest slip of the point goes first, then a mistaken unit.</summary>
    /// <param name="what">The figure, to begin a sentence: <c>The pot life of a casting resin</c>.</param>
    public static Finding? Doubt(double? value, double low, double high, string unit, string what, IReadOnlyList<Slip> units, string path)
    {
        // ends of a range belong to it, however they were multiplied
        bool Usual(double x) => x >= low * (1 - 1e-9) && x <= high * (1 + 1e-9);
        if (value is not { } given || !double.IsFinite(given) || Usual(given))
        {
            return null;
        }

        var meant = new[] { Point(10) }.Concat(units).Concat([Point(100), Point(1000)]).Where(s => Usual(s.Meant(given))).ToList();
        var (point, mistaken) = (meant.Find(s => s.Printed.Length == 0), meant.Find(s => s.Printed.Length > 0));
        string Say(double x) => string.Create(CultureInfo.InvariantCulture, $"{double.Parse(x.ToString("G4", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture):R}{(unit.Length == 0 ? "" : " ")}{unit}");
        var range = $"{what} lies between {Say(low)} and {Say(high)} as a rule.";
        const string Practice = "common practice, no source";
        return meant switch
        {
            [] => new("figure-unusual", Severity.Warn, path, $"{Say(given)} is unusual. {range} Look at the sheet again: the number, its unit and the class.", Practice),
            [{ Printed.Length: > 0 } other, ..] when point is null || meant.IndexOf(point) > 0 => new("figure-slipped", Severity.Warn, path, $"{Say(given)}: {Say(other.Meant(given))} was probably meant, if the sheet prints {other.Printed}. {range} Look at its unit.", Practice),
            _ => new("figure-slipped", Severity.Warn, path, $"{Say(given)}: {Say(point!.Meant(given))} was probably meant{(mistaken is null ? "" : $", or {Say(mistaken.Meant(given))} if the sheet prints {mistaken.Printed}")}. {range} Look at the decimal point on the sheet.", Practice),
        };

        // towards the range
        Slip Point(double factor) => new("", x => x > high ? x / factor : x * factor);
    }
}
