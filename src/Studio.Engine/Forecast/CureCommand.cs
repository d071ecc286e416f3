using Studio.Engine.Cure;
using Studio.Engine.Json;
using Studio.Engine.Meshes;
using Studio.Engine.Moulds;

namespace Studio.Engine.Forecast;

/// <summary><c>calc cure</c>: the clock, with the gel of the fit and of the layer's own heat. It stands here because the clock knows neither.</summary>
internal static class CureCommand
{
    /// <summary>JSON text to a result or every error at once.</summary>
    public static Outcome<CureResult> Run(string text, OpenMesh open)
    {
        var errors = new InputErrors();
        if (Fields.Parse(text, errors) is not { } fields)
        {
            return Outcome<CureResult>.Refused(errors.All);
        }

        var moulds = new List<CureMould?>();
        var input = CureJson.Read(fields, f => moulds.Add(Mould(f, open, errors, $"layers[{moulds.Count}]")));
        return CureCalculation.Run(input, errors, new CureModels(moulds));
    }

    // as in calc heat, with its wall in it
    private static CureMould? Mould(Fields layer, OpenMesh open, InputErrors errors, string path)
    {
        HeatJson.WallJson? wall = null;
        var spec = layer.OptionalObject("mould", f =>
        {
            wall = f.OptionalObject("wall", HeatJson.Wall);
            return MouldJson.Read(f, open, errors, "wall");
        });
        if (spec is null)
        {
            return null;
        }

        if (wall is null)
        {
            errors.Add(path + ".mould.wall", "A mould needs its 'wall' with 'thicknessMm', as in calc heat; without it nothing is known of what the layer loses.");
        }
        else
        {
            HeatCheck.Wall(wall.Spec, wall.StartCelsius, path + ".mould.wall", errors);
        }

        var body = MouldShapes.Make(spec, path + ".mould", errors);
        return wall is null || body is null || MouldShapes.Find(spec.Shape) is not { Grid: not null } ? null : new(spec, body, wall.Spec, wall.StartCelsius);
    }
}
