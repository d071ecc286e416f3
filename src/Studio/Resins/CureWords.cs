using System.Globalization;
using Studio.Engine.Fit;
using Studio.Engine.Forecast;
using Studio.Shell;

namespace Studio.Resins;

/// <summary>One number of a sheet or a log beside what the fit gives for it, in words.</summary>
public sealed record CureLine(string What, string Printed, string Model, string Verdict);

/// <summary>One number of the fit: what it is, what it is taken for, and what it rests on, in words.</summary>
public sealed record CureKnown(string What, string Value, string RestsOn, bool FromData);

/// <summary>How a fit is said: no Greek, no number above the run-away limit.</summary>
public static class CureWords
{
    /// <summary>What stands in place of any temperature above the run-away limit.</summary>
    public const string RunAway = "run-away: do not pour";

    private const double Agrees = 1;
    private const double Apart = 2;

    /// <summary>"64 °C", or that it runs away.</summary>
    public static string Peak(double celsius) => celsius > HeatLimit.RunAwayC ? RunAway : string.Create(CultureInfo.InvariantCulture, $"{celsius:0} °C");

    /// <summary>"58 to 71 °C", or that it may run away.</summary>
    public static string Peak(FitInterval interval) => interval.To > HeatLimit.RunAwayC ? RunAway
        : string.Create(CultureInfo.InvariantCulture, $"{interval.From:0} to {interval.To:0} °C");

    /// <summary>A printed or observed number beside the model's.</summary>
    public static CureLine Line(FitDatum datum) => new(What(datum.Name), Printed(datum), Amount(datum.Name, datum.Fitted), Verdict(datum));

    /// <summary>A number of the fit.</summary>
    /// <param name="source">What the data are: "the sheet" or "the thermometer".</param>
    public static CureKnown Known(FitKnown known, string source = "the sheet") => new(Number(known.Name), Value(known), RestsOn(known.RestsOn, source), known.RestsOn == "data");

    /// <summary>"Fitted to the sheet", "Fitted to a thermometer".</summary>
    public static string Source(KnownCure row) => row.CuringLogId is null ? "Fitted to the data sheet" : "Fitted to a thermometer";

    /// <summary>"taken over", "declined", "not decided yet".</summary>
    public static string Standing(string standing) => standing switch
    {
        KnownCure.Accepted => "taken over",
        KnownCure.Declined => "not taken over",
        _ => "not decided yet",
    };

    /// <summary>How long working it out took.</summary>
    public static string Took(TimeSpan took) => string.Create(CultureInfo.InvariantCulture, $"{took.TotalSeconds:0.0} s");

    private static string What(string name) => name switch
    {
        "gelMinutes" => "Gel time of the cup",
        "potLifeMinutes" => "Pot life of the cup",
        "peakCelsius" => "Peak of the cup",
        "demouldHours" => "Demould time",
        "peakAtMaxPourCelsius" => "Peak of a wide layer of the deepest pour",
        "logPeakCelsius" => "Peak at the thermometer",
        "gelAfterHours" => "Surface gelled after",
        "demouldAfterHours" => "Firm enough after",
        _ => name,
    };

    // the sheet prints a depth; what it must not exceed there is the trade's habit
    private static string Printed(FitDatum datum) => datum.Name == "peakAtMaxPourCelsius"
        ? string.Create(CultureInfo.InvariantCulture, $"about {datum.Printed:0} °C, taken from the depth")
        : datum.Name == "logPeakCelsius" ? string.Create(CultureInfo.InvariantCulture, $"{datum.Printed:0.#} °C") : Amount(datum.Name, datum.Printed);

    private static string Amount(string name, double value) => name.EndsWith("Celsius", StringComparison.Ordinal) ? Peak(value)
        : name.EndsWith("Minutes", StringComparison.Ordinal) ? string.Create(CultureInfo.InvariantCulture, $"{value:0} min")
        : string.Create(CultureInfo.InvariantCulture, $"{value:0.#} h");

    private static string Verdict(FitDatum datum) => Math.Abs(datum.OffSd) switch
    {
        < Agrees => "agrees",
        < Apart => datum.OffSd > 0 ? "the model gives a little more" : "the model gives a little less",
        _ => "does not go with the rest",
    };

    private static string Number(string name) => name switch
    {
        "rateAt23CPerS" => "How fast it cures at 23 °C",
        "kappa" => "How slowly it starts before it sets off",
        "heatJPerKg" => "How much heat it gives off",
        "activationJPerMol" => "How much faster it is when warmer",
        "filmFactor" => "How well it sheds its heat to the room",
        "demouldConversion" => "How far it has cured when it may leave the mould",
        _ => name,
    };

    private static string Value(FitKnown k) => k.Name switch
    {
        "rateAt23CPerS" => string.Create(CultureInfo.InvariantCulture, $"known within a factor of {Math.Sqrt(k.Interval.To / k.Interval.From):0.0#}"),
        "kappa" => string.Create(CultureInfo.InvariantCulture, $"known within a factor of {Math.Sqrt(k.Interval.To / k.Interval.From):0.0#}"),
        "heatJPerKg" => string.Create(CultureInfo.InvariantCulture, $"{k.Value / 1000:0} kJ/kg ({k.Interval.From / 1000:0} to {k.Interval.To / 1000:0})"),
        "activationJPerMol" => string.Create(CultureInfo.InvariantCulture, $"{k.Value / 1000:0} kJ/mol ({k.Interval.From / 1000:0} to {k.Interval.To / 1000:0})"),
        "filmFactor" => string.Create(CultureInfo.InvariantCulture, $"{k.Value:0.0#} times the usual ({k.Interval.From:0.0#} to {k.Interval.To:0.0#})"),
        "demouldConversion" => string.Create(CultureInfo.InvariantCulture, $"{100 * k.Value:0} % ({100 * k.Interval.From:0} to {Math.Min(100, 100 * k.Interval.To):0})"),
        _ => Say.Celsius(k.Value),
    };

    private static string RestsOn(string restsOn, string source) => restsOn switch
    {
        "data" => $"{source} tells it",
        "both" => $"{source} tells some of it; the rest is what is usual for its kind",
        _ => $"{source} cannot tell it; taken from what is usual for its kind",
    };
}
