using Studio.Engine.Resins;

namespace Studio.Engine.Cure;

/// <summary>Figures of a data sheet that its class does not have, and what was probably meant.</summary>
internal static class SheetSlips
{
    /// <summary>Every doubt; paths begin with that of the sheet.</summary>
    internal static IEnumerable<Finding> Of(DataSheet sheet, string path) =>
        new[]
        {
            ("potLifeMinutes", sheet.PotLifeMinutes), ("gelMinutes", sheet.GelMinutes), ("cupMassG", sheet.CupMassG), ("atCelsius", sheet.AtCelsius),
            ("peakCelsius", sheet.PeakCelsius), ("maxPourMm", sheet.MaxPourMm), ("nextPourFromHours", sheet.NextPourFromHours),
            ("nextPourUntilHours", sheet.NextPourUntilHours), ("demouldHours", sheet.DemouldHours), ("fullCureHours", sheet.FullCureHours),
            ("glassEndC", sheet.GlassEndC), ("densityKgPerM3", sheet.DensityKgPerM3),
        }.Select(f => SheetFigure.Doubt(f.Item1, f.Item2, sheet.Class, $"{path}.{f.Item1}", sheet.AtCelsius)).OfType<Finding>();

    /// <summary>A density that stands beside the sheet, or beside the kinetics.</summary>
    internal static IEnumerable<Finding> Beside(double? densityKgPerM3, string path) =>
        SheetFigure.Doubt("densityKgPerM3", densityKgPerM3, null, path + ".densityKgPerM3") is { } doubt ? [doubt] : [];
}
