using Studio.Engine.Json;
using Studio.Engine.Meshes;

namespace Studio.Engine.Moulds;

/// <summary>Reads a mould. Which fields a shape has is decided by <see cref="MouldShapes"/>; strangers are handed on to be refused there by name.</summary>
internal static class MouldJson
{
    private static readonly string[] MeshFields = ["file", "unit", "up"];

    /// <summary>Every field of a shape, in order.</summary>
    public static IEnumerable<string> FieldsOf(MouldShape shape) => shape.Dimensions.Select(d => d.Name).Concat(shape.Needs switch
    {
        MouldNeeds.Readings => ["readings"],
        MouldNeeds.Mesh => MeshFields,
        _ => [],
    });

    /// <summary>Reads a mould; a mesh is opened by <paramref name="open"/>, and what is wrong with it is added.</summary>
    /// <param name="besides">A field that another calculation reads from the same object.</param>
    public static MouldSpec Read(Fields fields, OpenMesh open, InputErrors errors, string besides = "shape")
    {
        var key = fields.Text("shape");
        var shape = MouldShapes.Find(key);
        var known = shape is null ? [] : FieldsOf(shape).Append("shape").Append(besides).ToHashSet(StringComparer.Ordinal);
        var numbers = fields.Names.Where(n => !string.Equals(n, "shape", StringComparison.Ordinal) && !string.Equals(n, besides, StringComparison.Ordinal) && !known.Contains(n)).ToDictionary(n => n, _ => double.NaN, StringComparer.Ordinal);
        foreach (var dimension in shape?.Dimensions ?? [])
        {
            if (fields.OptionalNumber(dimension.Name) is { } number)
            {
                numbers[dimension.Name] = number;
            }
        }

        var spec = new MouldSpec(key, numbers);
        return shape?.Needs switch
        {
            MouldNeeds.Readings => spec with { Readings = fields.List("readings", Reading) },
            MouldNeeds.Mesh => Mesh(spec, fields, open, errors),
            _ => spec,
        };
    }

    private static FillReading Reading(Fields fields)
    {
        var reading = new FillReading(fields.Number("heightMm"), fields.Number("volumeMl"));
        fields.NothingElse();
        return reading;
    }

    private static MouldSpec Mesh(MouldSpec spec, Fields fields, OpenMesh open, InputErrors errors)
    {
        var source = new MeshSource(fields.Text("file"), fields.Text("unit"), fields.OptionalText("up") ?? "+z");
        if (source.Unit.Length > 0 && !MeshSource.Units.ContainsKey(source.Unit))
        {
            errors.Add(fields.At("unit"), $"There is no unit '{source.Unit}'. Use one of: {string.Join(", ", MeshSource.Units.Keys)}.");
        }

        if (source.Up.Length > 0 && !MeshSource.Directions.Contains(source.Up, StringComparer.Ordinal))
        {
            errors.Add(fields.At("up"), $"There is no direction '{source.Up}'. Use one of: {string.Join(", ", MeshSource.Directions)}.");
        }

        return spec with { Mesh = source, Cavity = errors.Clean(fields.Path) && source.File.Length > 0 ? Cavity(source, fields, open, errors) : null };
    }

    private static Cavity? Cavity(MeshSource source, Fields fields, OpenMesh open, InputErrors errors)
    {
        var (bytes, trouble) = open(source.File);
        if (bytes is null)
        {
            errors.Add(fields.At("file"), trouble ?? $"The mesh '{source.File}' cannot be read.");
            return null;
        }

        var read = Meshes.Cavity.Read(bytes, source, fields.Path);
        foreach (var error in read.Errors)
        {
            errors.Add(error.Path, error.Message);
        }

        return read.Ok ? read.Value : null;
    }
}
