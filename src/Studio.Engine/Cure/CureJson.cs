using Studio.Engine.Json;

namespace Studio.Engine.Cure;

/// <summary>Reads the input of <c>calc cure</c>; its errors join those of the calculation.</summary>
internal static class CureJson
{
    /// <summary>JSON text to a result or every error at once.</summary>
    public static Outcome<CureResult> Run(string text)
    {
        var errors = new InputErrors();
        return Fields.Parse(text, errors) is { } fields ? CureCalculation.Run(Read(fields), errors) : Outcome<CureResult>.Refused(errors.All);
    }

    private static CureInput Read(Fields fields)
    {
        var input = new CureInput
        {
            Resins = fields.Map("resins", Resin),
            Layers = fields.List("layers", Layer),
            Room = RoomJson.Read(fields),
            UntilHours = fields.Number("untilHours"),
        };
        fields.NothingElse();
        return input;
    }

    /// <summary>A resin, the same for <c>calc time</c>.</summary>
    internal static CureResin Resin(Fields fields)
    {
        var resin = new CureResin
        {
            Kinetics = fields.OptionalObject("kinetics", KineticsJson.Kinetics),
            DataSheet = fields.OptionalObject("dataSheet", KineticsJson.DataSheet),
            DensityKgPerM3 = fields.OptionalNumber("densityKgPerM3"),
            HeatCapacityJPerKgK = fields.OptionalNumber("heatCapacityJPerKgK"),
            ConductivityWPerMK = fields.OptionalNumber("conductivityWPerMK"),
        };
        fields.NothingElse();
        return resin;
    }

    private static CureLayer Layer(Fields fields)
    {
        var layer = new CureLayer(fields.Text("name"), fields.Text("resin"), fields.OptionalNumber("pouredAtHours"), fields.OptionalText("afterGelOf"));
        fields.NothingElse();
        return layer;
    }
}
