using Studio.Engine.Json;

namespace Studio.Engine.Cure;

/// <summary>Reads the input of <c>calc cure</c>; its errors join those of the calculation.</summary>
internal static class CureJson
{
    /// <summary>The input as written.</summary>
    /// <param name="mould">Reads what is said of a layer's mould, in the layers' order.</param>
    internal static CureInput Read(Fields fields, Action<Fields> mould)
    {
        var input = new CureInput
        {
            Resins = fields.Map("resins", Resin),
            Layers = fields.List("layers", f => Layer(f, mould)),
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

    private static CureLayer Layer(Fields fields, Action<Fields> mould)
    {
        var layer = new CureLayer(fields.Text("name"), fields.Text("resin"), fields.OptionalNumber("pouredAtHours"), fields.OptionalText("afterGelOf"))
        {
            ThicknessMm = fields.OptionalNumber("thicknessMm"),
            PouredCelsius = fields.OptionalNumber("pouredCelsius"),
        };
        mould(fields);
        fields.NothingElse();
        return layer;
    }
}
