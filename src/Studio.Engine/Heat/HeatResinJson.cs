using Studio.Engine.Cure;
using Studio.Engine.Json;

namespace Studio.Engine.Heat;

/// <summary>Reads a resin with its kinetics.</summary>
internal static class HeatResinJson
{
    /// <summary>Reads one; the three material values may stand beside the kinetics or in them.</summary>
    public static HeatResin Read(Fields f, InputErrors errors)
    {
        var usual = new HeatResin { Kinetics = new Kinetics { RateAt23CPerS = 1, Kappa = 1, ActivationJPerMol = 1, HeatJPerKg = 1 } };
        double? density = null, capacity = null, conductivity = null;
        var kinetics = f.Object("kinetics", k =>
        {
            (density, capacity, conductivity) = (k.OptionalNumber("densityKgPerM3"), k.OptionalNumber("heatCapacityJPerKgK"), k.OptionalNumber("conductivityWPerMK"));
            k.Number("heatJPerKg"); // without it nothing heats, so it is not left out here as the clock allows
            return KineticsJson.Kinetics(k);
        });
        var resin = new HeatResin
        {
            Kinetics = kinetics,
            DensityKgPerM3 = f.OptionalNumber("densityKgPerM3") ?? density ?? usual.DensityKgPerM3,
            HeatCapacityJPerKgK = f.OptionalNumber("heatCapacityJPerKgK") ?? capacity ?? usual.HeatCapacityJPerKgK,
            ConductivityWPerMK = f.OptionalNumber("conductivityWPerMK") ?? conductivity ?? usual.ConductivityWPerMK,
            MaxPourMm = f.OptionalNumber("maxPourMm"),
        };
        f.NothingElse();
        Check(resin, f.Path, errors);
        return resin;
    }

    private static void Check(HeatResin resin, string path, InputErrors errors)
    {
        var (k, at) = (resin.Kinetics, path + ".kinetics");
        errors.Positive(at + ".rateAt23CPerS", k.RateAt23CPerS, 1, "1/s");
        errors.Positive(at + ".kappa", k.Kappa, 100, "");
        errors.Within(at + ".m", k.M, 0.05, 5, "");
        errors.Within(at + ".n", k.N, 0.05, 10, "");
        errors.Within(at + ".activationJPerMol", k.ActivationJPerMol, 0, 300_000, "J/mol");
        errors.Within(at + ".heatJPerKg", k.HeatJPerKg, 0, 2_000_000, "J/kg");
        errors.Within(at + ".glassStartC", k.GlassStartC, -150, 300, "°C");
        errors.Within(at + ".glassEndC", k.GlassEndC, -150, 400, "°C");
        errors.Within(at + ".lambda", k.Lambda, 0.01, 1, "");
        errors.Within(at + ".vitrificationOffsetK", k.VitrificationOffsetK, -1000, 1000, "K");
        errors.Positive(at + ".vitrificationWidthK", k.VitrificationWidthK, 1000, "K");
        errors.Within(at + ".gelConversion", k.GelConversion, 0.01, 0.99, "");
        errors.Within(path + ".densityKgPerM3", resin.DensityKgPerM3, 200, 20_000, "kg/m³");
        errors.Within(path + ".heatCapacityJPerKgK", resin.HeatCapacityJPerKgK, 100, 10_000, "J/(kg K)");
        errors.Within(path + ".conductivityWPerMK", resin.ConductivityWPerMK, 0.01, 500, "W/(m K)");
        errors.Positive(path + ".maxPourMm", resin.MaxPourMm, 10_000, "mm");
    }
}
