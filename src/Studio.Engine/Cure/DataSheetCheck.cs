namespace Studio.Engine.Cure;

/// <summary>What cannot be and what is doubtful in a data sheet's numbers.</summary>
internal static class DataSheetCheck
{
    private const double MostMinutes = 100_000;
    private const double MostHours = 10_000;

    internal static void Check(DataSheet sheet, string path, InputErrors errors)
    {
        if (sheet.Class is { } given && !DataSheet.Classes.Contains(given, StringComparer.Ordinal))
        {
            errors.Add(path + ".class", $"There is no class '{given}'. There are: {string.Join(", ", DataSheet.Classes)}.");
        }

        errors.Positive(path + ".potLifeMinutes", sheet.PotLifeMinutes, MostMinutes, "min");
        errors.Positive(path + ".gelMinutes", sheet.GelMinutes, MostMinutes, "min");
        errors.Positive(path + ".cupMassG", sheet.CupMassG, 1e6, "g");
        errors.Within(path + ".atCelsius", sheet.AtCelsius, -30, 100, "°C");
        errors.Within(path + ".peakCelsius", sheet.PeakCelsius, 0, 400, "°C");
        errors.Positive(path + ".maxPourMm", sheet.MaxPourMm, 10_000, "mm");
        errors.Positive(path + ".nextPourFromHours", sheet.NextPourFromHours, MostHours, "h");
        errors.Positive(path + ".nextPourUntilHours", sheet.NextPourUntilHours, MostHours, "h");
        errors.Positive(path + ".demouldHours", sheet.DemouldHours, MostHours, "h");
        errors.Positive(path + ".fullCureHours", sheet.FullCureHours, MostHours, "h");
        errors.Within(path + ".glassEndC", sheet.GlassEndC, -100, 300, "°C");
        errors.Positive(path + ".densityKgPerM3", sheet.DensityKgPerM3, 1e5, "kg/m³");
    }

    /// <summary>Doubts about a resin's sheet and what stands beside it.</summary>
    internal static IEnumerable<Finding> Doubts(CureResin resin, string path) =>
        [.. resin.DataSheet is { } sheet ? Doubts(sheet, path + ".dataSheet") : [], .. SheetSlips.Beside(resin.DensityKgPerM3, path)];

    /// <summary>Doubts that leave the result standing.</summary>
    internal static IEnumerable<Finding> Doubts(DataSheet sheet, string path)
    {
        Finding Doubt(string code, string field, string message, string source = "our rule") => new(code, Severity.Warn, path + field, message, source);
        if (sheet.AtCelsius is null)
        {
            yield return Doubt("sheet-temperature-assumed", "", FormattableString.Invariant($"The sheet's times are taken to be printed for {DataSheet.UsualCelsius:0} °C, as usual. Look the temperature up; if the sheet says 25 °C, everything comes later."), "common practice, no source");
        }

        if ((sheet.PotLifeMinutes ?? sheet.GelMinutes) is not null && sheet.CupMassG is null)
        {
            yield return Doubt("pot-life-without-mass", "", "A pot life or gel time means little without the mass of its cup, which warms itself. Look the mass up; a thin layer gels later.", "ASTM D2471: mass and section must be stated");
        }

        if (sheet.GelMinutes is not null)
        {
            yield return new("gel-of-a-cup", Severity.Note, path + ".gelMinutes", "The printed gel time is that of a full cup, which warms itself. A thin layer gels later: touch it before you pour on it.", "ASTM D2471: mass and section must be stated");
        }

        (string Name, double? Hours)[] order =
        [
            ("gelMinutes", sheet.GelMinutes / 60), ("nextPourFromHours", sheet.NextPourFromHours), ("demouldHours", sheet.DemouldHours), ("fullCureHours", sheet.FullCureHours),
        ];
        var given = order.Where(o => o.Hours is not null).ToArray();
        foreach (var (before, after) in given.Zip(given.Skip(1)).Where(p => p.First.Hours > p.Second.Hours))
        {
            yield return Doubt("sheet-contradicts-itself", "." + after.Name, $"The sheet prints '{after.Name}' sooner than '{before.Name}'. Look both up; each is taken as it stands.");
        }

        if (sheet.NextPourUntilHours < sheet.NextPourFromHours)
        {
            yield return Doubt("sheet-contradicts-itself", ".nextPourUntilHours", "The sheet's next-pour window ends before it starts. Look both up.");
        }

        foreach (var slip in SheetSlips.Of(sheet, path))
        {
            yield return slip;
        }
    }
}
