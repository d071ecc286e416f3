using Studio.Engine.Json;

namespace Studio.Engine.Fit;

/// <summary>Reads a data sheet by its contract names.</summary>
internal static class SheetJson
{
    /// <summary>Reads one; every error at once, each at its field.</summary>
    public static PrintedSheet Read(Fields f, InputErrors errors)
    {
        var usual = new PrintedSheet { Class = "" };
        var sheet = new PrintedSheet
        {
            Class = f.Text("class"),
            PotLifeMinutes = f.OptionalNumber("potLifeMinutes"),
            GelMinutes = f.OptionalNumber("gelMinutes"),
            CupMassG = f.OptionalNumber("cupMassG"),
            AtCelsius = f.OptionalNumber("atCelsius") ?? usual.AtCelsius,
            PeakCelsius = f.OptionalNumber("peakCelsius"),
            MaxPourMm = f.OptionalNumber("maxPourMm"),
            DemouldHours = f.OptionalNumber("demouldHours"),
            FullCureHours = f.OptionalNumber("fullCureHours"),
            GlassEndC = f.OptionalNumber("glassEndC"),
            DensityKgPerM3 = f.OptionalNumber("densityKgPerM3"),
        };
        f.NothingElse();
        foreach (var error in SheetRefusals.Of(sheet))
        {
            errors.Add(f.At(error.Path), error.Message);
        }

        return sheet;
    }
}
