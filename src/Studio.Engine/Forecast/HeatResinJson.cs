using Studio.Engine.Cure;
using Studio.Engine.Json;

namespace Studio.Engine.Forecast;

/// <summary>Reads a resin by its kinetics or its data sheet.</summary>
internal static class HeatResinJson
{
    /// <summary>Reads one; the three material values may stand beside the kinetics or in them.</summary>
    public static HeatResin Read(Fields f)
    {
        double? density = null, capacity = null, conductivity = null;
        var kinetics = f.OptionalObject("kinetics", k =>
        {
            (density, capacity, conductivity) = (k.OptionalNumber("densityKgPerM3"), k.OptionalNumber("heatCapacityJPerKgK"), k.OptionalNumber("conductivityWPerMK"));
            k.Number("heatJPerKg"); // without it nothing heats, so it is not left out here as the clock allows
            return KineticsJson.Kinetics(k);
        });
        var resin = new HeatResin
        {
            Kinetics = kinetics,
            DataSheet = f.OptionalObject("dataSheet", KineticsJson.DataSheet),
            DensityKgPerM3 = f.OptionalNumber("densityKgPerM3") ?? density,
            HeatCapacityJPerKgK = f.OptionalNumber("heatCapacityJPerKgK") ?? capacity,
            ConductivityWPerMK = f.OptionalNumber("conductivityWPerMK") ?? conductivity,
            MaxPourMm = f.OptionalNumber("maxPourMm"),
        };
        f.NothingElse();
        return resin;
    }
}
