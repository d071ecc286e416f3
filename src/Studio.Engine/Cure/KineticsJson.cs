using Studio.Engine.Json;

namespace Studio.Engine.Cure;

/// <summary>Reads a resin's kinetics and data sheet, the same for <c>calc cure</c> and <c>calc heat</c>.</summary>
internal static class KineticsJson
{
    private static readonly Kinetics Usual = new() { RateAt23CPerS = 1, Kappa = 1, ActivationJPerMol = 1, HeatJPerKg = 1 };

    /// <summary>The object <c>kinetics</c>.</summary>
    internal static Kinetics Kinetics(Fields fields)
    {
        var kinetics = new Kinetics
        {
            RateAt23CPerS = fields.Number("rateAt23CPerS"),
            Kappa = fields.Number("kappa"),
            KappaEnergyJPerMol = fields.OptionalNumber("kappaEnergyJPerMol") ?? Usual.KappaEnergyJPerMol,
            M = fields.OptionalNumber("m") ?? Usual.M,
            N = fields.OptionalNumber("n") ?? Usual.N,
            ActivationJPerMol = fields.Number("activationJPerMol"),
            HeatJPerKg = fields.OptionalNumber("heatJPerKg") ?? 0,
            GlassStartC = fields.OptionalNumber("glassStartC") ?? Usual.GlassStartC,
            GlassEndC = fields.OptionalNumber("glassEndC") ?? Usual.GlassEndC,
            Lambda = fields.OptionalNumber("lambda") ?? Usual.Lambda,
            VitrificationOffsetK = fields.OptionalNumber("vitrificationOffsetK") ?? Usual.VitrificationOffsetK,
            VitrificationWidthK = fields.OptionalNumber("vitrificationWidthK") ?? Usual.VitrificationWidthK,
            GelConversion = fields.OptionalNumber("gelConversion") ?? Usual.GelConversion,
        };
        fields.NothingElse();
        return kinetics;
    }

    /// <summary>The object <c>dataSheet</c>.</summary>
    internal static DataSheet DataSheet(Fields fields)
    {
        var sheet = new DataSheet
        {
            Class = fields.OptionalText("class"),
            PotLifeMinutes = fields.OptionalNumber("potLifeMinutes"),
            GelMinutes = fields.OptionalNumber("gelMinutes"),
            CupMassG = fields.OptionalNumber("cupMassG"),
            AtCelsius = fields.OptionalNumber("atCelsius"),
            PeakCelsius = fields.OptionalNumber("peakCelsius"),
            MaxPourMm = fields.OptionalNumber("maxPourMm"),
            NextPourFromHours = fields.OptionalNumber("nextPourFromHours"),
            NextPourUntilHours = fields.OptionalNumber("nextPourUntilHours"),
            DemouldHours = fields.OptionalNumber("demouldHours"),
            FullCureHours = fields.OptionalNumber("fullCureHours"),
            GlassEndC = fields.OptionalNumber("glassEndC"),
            DensityKgPerM3 = fields.OptionalNumber("densityKgPerM3"),
        };
        fields.NothingElse();
        return sheet;
    }
}
