using Studio.Engine.Cure;
using Studio.Engine.Heat;
using Studio.Engine.Json;
using Studio.Engine.Layers;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary>Reads the input of <c>calc heat</c>.</summary>
internal static class HeatJson
{
    /// <summary>From text to a result or every error at once.</summary>
    public static Outcome<HeatResult> Run(string text, OpenMesh open)
    {
        var errors = new InputErrors();
        return Fields.Parse(text, errors) is { } fields ? HeatCalculation.Run(Read(fields, open, errors), errors) : Outcome<HeatResult>.Refused(errors.All);
    }

    private static HeatSpec Read(Fields fields, OpenMesh open, InputErrors errors)
    {
        WallJson? wall = null;
        var mould = fields.Object("mould", f =>
        {
            wall = f.OptionalObject("wall", Wall);
            return MouldJson.Read(f, open, errors, "wall");
        });
        wall ??= fields.Object("wall", Wall);
        FillSpec? fill = null;
        var former = fields.OptionalObject("former", f =>
        {
            fill = Fill(f, errors);
            return LayersJson.Former(f);
        });
        var spec = new HeatSpec
        {
            Mould = mould,
            Wall = wall.Spec,
            WallStartCelsius = wall.StartCelsius,
            Former = former,
            Fill = fill,
            Boundary = fields.OptionalObject("boundary", Boundary) ?? new BoundarySpec(),
            Room = RoomJson.Read(fields),
            Layers = fields.List("layers", Layer),
            UntilHours = fields.Number("untilHours"),
            Resins = fields.Map("resins", HeatResinJson.Read),
        };
        fields.NothingElse();
        return spec;
    }

    internal static WallJson Wall(Fields f)
    {
        var usual = new WallSpec { ThicknessMm = 1 };
        var thickness = f.Number("thicknessMm");
        var wall = new WallJson(
            usual with
            {
                ThicknessMm = thickness,
                FloorMm = f.OptionalNumber("floorMm") ?? thickness,
                RoofMm = f.OptionalNumber("roofMm") ?? 0,
                ConductivityWPerMK = f.OptionalNumber("conductivityWPerMK") ?? usual.ConductivityWPerMK,
                DensityKgPerM3 = f.OptionalNumber("densityKgPerM3") ?? usual.DensityKgPerM3,
                HeatCapacityJPerKgK = f.OptionalNumber("heatCapacityJPerKgK") ?? usual.HeatCapacityJPerKgK,
            },
            f.OptionalNumber("startCelsius"));
        f.NothingElse();
        return wall;
    }

    private static FillSpec Fill(Fields f, InputErrors errors)
    {
        var kind = f.OptionalText("fill") ?? "air";
        if (kind is not ("air" or "silicone"))
        {
            errors.Add(f.At("fill"), $"There is no fill '{kind}'. Use 'air' or 'silicone'.");
        }

        return new FillSpec(kind == "silicone", f.OptionalNumber("wPerM2K") ?? new BoundarySpec().VoidWPerM2K);
    }

    private static BoundarySpec Boundary(Fields f)
    {
        var usual = new BoundarySpec();
        var boundary = new BoundarySpec(
            f.OptionalNumber("topWPerM2K") ?? usual.TopWPerM2K, f.OptionalNumber("sideWPerM2K") ?? usual.SideWPerM2K,
            f.OptionalNumber("bottomWPerM2K") ?? usual.BottomWPerM2K, f.OptionalNumber("voidWPerM2K") ?? usual.VoidWPerM2K);
        f.NothingElse();
        return boundary;
    }

    private static HeatLayerSpec Layer(Fields f)
    {
        var layer = new HeatLayerSpec(
            f.OptionalText("name"), f.Text("resin"), f.OptionalNumber("thicknessMm"), f.OptionalNumber("toMm"), f.Number("pouredAtHours"), f.OptionalNumber("pouredCelsius"));
        f.NothingElse();
        return layer;
    }

    internal sealed record WallJson(WallSpec Spec, double? StartCelsius);
}
