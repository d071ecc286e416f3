using Studio.Engine.Cure;
namespace Studio.Engine.Fit;

/// <summary>What a sheet's numbers say about each other.</summary>
internal static class SheetDoubts
{
    private const double MostSd = 2;
    private const string Rule = "our rule: more than 2 standard deviations between the printed number and the best fit";

    public static Finding Nothing() => new(
        "sheet-says-nothing", Severity.Warn, "", "The sheet gives no time, depth or peak to fit to. Everything rests on what is usual for this class of resin, and the intervals are as wide as that.", "our rule");

    public static IReadOnlyList<Finding> Of(DataSheet sheet, FitState prior, FitState fitted, IReadOnlyList<FitDatum> told)
    {
        var findings = new List<Finding>();
        Cup(sheet, findings);
        Order(sheet, findings);
        var hot = fitted.Mean[FitNumbers.LogHeat] - prior.Mean[FitNumbers.LogHeat] > prior.PriorSd[FitNumbers.LogHeat];
        var fahrenheit = hot || told.Any(d => d.Name == "peakCelsius" && d.OffSd < -1) ? Fahrenheit(sheet, prior) : null;
        if (fahrenheit is not null)
        {
            findings.Add(fahrenheit);
        }

        findings.AddRange(told.Where(d => Math.Abs(d.OffSd) > MostSd && !(fahrenheit is not null && d.Name == "peakCelsius")).Select(Contradiction));
        findings.AddRange(Strains(sheet, prior, fitted).Where(s => !findings.Exists(f => f.Path == s.Path)));
        return findings;
    }

    // numbers may seem to agree only because a resin unlike any other was made up for them
    private static IEnumerable<Finding> Strains(DataSheet sheet, FitState prior, FitState fitted)
    {
        foreach (var (number, path, what) in new[]
        {
            (FitNumbers.Demould, "demouldHours", "demould time"),
            (FitNumbers.LogHeat, "peakCelsius", "peak"),
            (FitNumbers.LogKappa, "gelMinutes", "gel time"),
            (FitNumbers.LogFilm, "maxPourMm", "greatest depth"),
        })
        {
            var given = path switch { "demouldHours" => sheet.DemouldHours, "peakCelsius" => sheet.PeakCelsius, "maxPourMm" => sheet.MaxPourMm, _ => sheet.GelMinutes };
            if (given is not null && Math.Abs(fitted.Mean[number] - prior.Mean[number]) > MostSd * prior.PriorSd[number])
            {
                yield return new(
                    "sheet-contradicts-itself", Severity.Warn, path,
                    $"The printed {what} goes with the other numbers only for a resin unlike others of its class. Look at the class, and at the sheet's units, again.",
                    "our rule: more than 2 standard deviations from what is usual for the class");
            }
        }
    }

    private static void Cup(DataSheet sheet, List<Finding> findings)
    {
        if (sheet.CupMassG is null && (sheet.PotLifeMinutes ?? sheet.GelMinutes ?? sheet.PeakCelsius) is not null)
        {
            findings.Add(new(
                "cup-without-mass", Severity.Warn, "cupMassG",
                FormattableString.Invariant($"The sheet's cup has no mass. {SheetData.UsualCupG:0} g is assumed, and its numbers count for less. Find the mass on the sheet, or ask the resin's maker."),
                "common practice, no source: pot lives are stated for about 100 g"));
        }
    }

    private static void Order(DataSheet sheet, List<Finding> findings)
    {
        Check("potLifeMinutes", sheet.PotLifeMinutes > sheet.GelMinutes, "The pot life is longer than the time to gel. A gelled cup cannot be worked: look at both numbers and their units.");
        Check("demouldHours", sheet.DemouldHours > sheet.FullCureHours, "The demould time is longer than the full cure. Look at both numbers and their units.");
        Check("gelMinutes", sheet.GelMinutes / 60 > sheet.DemouldHours, "The cup gels later than a piece may leave its mould. Look at both numbers and their units.");

        void Check(string path, bool? wrong, string message)
        {
            if (wrong is true)
            {
                findings.Add(new("sheet-contradicts-itself", Severity.Warn, path, message, "one comes before the other in every cure"));
            }
        }
    }

    // the peak is foretold from the other numbers; in °F the printed one must lie much nearer
    private static Finding? Fahrenheit(DataSheet sheet, FitState prior)
    {
        if (sheet.PeakCelsius is not { } printed || (printed - 32) / 1.8 <= sheet.PrintedAtC + 5)
        {
            return null;
        }

        var rest = new SheetData(sheet, prior, leavePeakOut: true);
        var resin = rest.Count == 0 ? prior.Best() : prior.Resin(SheetFit.Search(prior, rest).Mean);
        var (meant, foretold) = ((printed - 32) / 1.8, rest.CupPeak(resin) - sheet.PrintedAtC);
        var (offC, offF) = (Math.Abs(Math.Log(foretold / (printed - sheet.PrintedAtC))), Math.Abs(Math.Log(foretold / (meant - sheet.PrintedAtC))));
        return offC < 0.3 || offF > 0.75 * offC ? null : new(
            "peak-looks-like-fahrenheit", Severity.Warn, "peakCelsius",
            FormattableString.Invariant($"A peak of {printed:0} °C does not go with the other numbers, but {printed:0} °F, that is {meant:0} °C, would. Look at the sheet's unit."), Rule);
    }

    private static Finding Contradiction(FitDatum datum)
    {
        var (field, what, unit) = datum.Name switch
        {
            "gelMinutes" => ("gelMinutes", "gel time", "min"),
            "potLifeMinutes" => ("potLifeMinutes", "pot life", "min"),
            "demouldHours" => ("demouldHours", "demould time", "h"),
            "nextPourFromHours" => ("nextPourFromHours", "time for the next pour", "h"),
            "peakCelsius" => ("peakCelsius", "peak", "°C"),
            _ => ("maxPourMm", "greatest depth", "°C"),
        };
        var message = field == "maxPourMm"
            ? FormattableString.Invariant($"The printed greatest depth does not go with the other numbers: a resin that fits them would reach {datum.Fitted:0} °C at that depth. Look at its unit, and pour thinner until a log of your own says more.")
            : FormattableString.Invariant($"The printed {what}, {datum.Printed:0.#} {unit}, does not go with the other numbers: a resin that fits them best would have {datum.Fitted:0.#} {unit}. Look at the sheet again; until then the intervals are wider.");
        return new("sheet-contradicts-itself", Severity.Warn, field, message, Rule);
    }
}
