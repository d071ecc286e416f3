using Studio.Engine.Json;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;
using Studio.Engine.Resins;

namespace Studio.Engine.Layers;

/// <summary>Reads the input of <c>calc layers</c>; its errors join those of the calculation.</summary>
internal static class LayersJson
{
    /// <summary>JSON text to a result or every error at once.</summary>
    public static Outcome<LayersResult> Run(string text, OpenMesh open)
    {
        var errors = new InputErrors();
        return Fields.Parse(text, errors) is { } fields ? LayersCalculation.Run(Read(fields, open, errors), errors) : Outcome<LayersResult>.Refused(errors.All);
    }

    private static LayersInput Read(Fields fields, OpenMesh open, InputErrors errors)
    {
        var input = new LayersInput
        {
            Mould = fields.Object("mould", f => MouldJson.Read(f, open, errors)),
            Resins = fields.Map("resins", ResinJson.Read),
            Layers = fields.List("layers", Layer),
            Former = fields.OptionalObject("former", Former),
            Waste = fields.OptionalObject("waste", Waste),
        };
        fields.NothingElse();
        return input;
    }

    private static LayerSpec Layer(Fields fields)
    {
        var layer = new LayerSpec
        {
            Name = fields.Text("name"),
            Resin = fields.Text("resin"),
            ToMm = fields.OptionalNumber("toMm"),
            ThicknessMm = fields.OptionalNumber("thicknessMm"),
            ResinMl = fields.OptionalNumber("resinMl"),
            Additions = fields.OptionalList("additions", Addition),
            Scatter = fields.OptionalList("scatter", Scatter),
            Placed = fields.OptionalList("placed", Placed),
        };
        fields.NothingElse();
        return layer;
    }

    private static AdditionSpec Addition(Fields fields)
    {
        var addition = new AdditionSpec
        {
            Name = fields.Text("name"),
            PercentOfResin = fields.Number("percentOfResin"),
            DensityGPerMl = fields.Number("densityGPerMl"),
        };
        fields.NothingElse();
        return addition;
    }

    private static ScatterSpec Scatter(Fields fields)
    {
        var scatter = new ScatterSpec
        {
            Name = fields.Text("name"),
            MassG = fields.OptionalNumber("massG"),
            DensityGPerMl = fields.OptionalNumber("densityGPerMl"),
            BulkMl = fields.OptionalNumber("bulkMl"),
            PackingFraction = fields.OptionalNumber("packingFraction"),
        };
        fields.NothingElse();
        return scatter;
    }

    private static PlacedSpec Placed(Fields fields)
    {
        var placed = new PlacedSpec
        {
            Name = fields.Text("name"),
            MassG = fields.OptionalNumber("massG"),
            DensityGPerMl = fields.OptionalNumber("densityGPerMl"),
            DisplacedMl = fields.OptionalNumber("displacedMl"),
        };
        fields.NothingElse();
        return placed;
    }

    /// <summary>Reads a former.</summary>
    internal static FormerSpec Former(Fields fields)
    {
        var former = new FormerSpec
        {
            OuterWidthMm = fields.Number("outerWidthMm"),
            OuterDepthMm = fields.Number("outerDepthMm"),
            FromMm = fields.Number("fromMm"),
            WallMm = fields.OptionalNumber("wallMm"),
            FloorMm = fields.OptionalNumber("floorMm"),
            Solid = fields.Flag("solid"),
        };
        fields.NothingElse();
        return former;
    }

    private static WasteSpec Waste(Fields fields)
    {
        var waste = new WasteSpec { Percent = fields.OptionalNumber("percent") ?? 0, PerBatchG = fields.OptionalNumber("perBatchG") ?? 0 };
        fields.NothingElse();
        return waste;
    }
}
