using Studio.Engine.Json;

namespace Studio.Engine.Resins;

/// <summary>Reads a resin.</summary>
internal static class ResinJson
{
    public static ResinSpec Read(Fields fields)
    {
        var resin = new ResinSpec
        {
            DensityGPerMl = fields.OptionalNumber("densityGPerMl"),
            Mix = fields.Object("mix", Mix),
            MaxPourMm = fields.OptionalNumber("maxPourMm"),
            MaxBatchG = fields.OptionalNumber("maxBatchG"),
            PotLifeMinutes = fields.OptionalNumber("potLifeMinutes"),
        };
        fields.NothingElse();
        return resin;
    }

    private static MixSpec Mix(Fields fields)
    {
        var mix = new MixSpec
        {
            PartsA = fields.Number("partsA"),
            PartsB = fields.Number("partsB"),
            By = fields.Text("by"),
            DensityAGPerMl = fields.OptionalNumber("densityAGPerMl"),
            DensityBGPerMl = fields.OptionalNumber("densityBGPerMl"),
        };
        fields.NothingElse();
        return mix;
    }
}
