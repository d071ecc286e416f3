using Studio.Engine.Json;

namespace Studio.Engine.Moulds;

/// <summary>Reads a mould. Which fields a shape has is decided by <see cref="MouldShapes"/>; strangers are handed on to be refused there by name.</summary>
internal static class MouldJson
{
    public static MouldSpec Read(Fields fields)
    {
        var shape = fields.Text("shape");
        var known = MouldShapes.Find(shape)?.Dimensions.Select(d => d.Name).ToList() ?? [];
        var numbers = fields.Names
            .Where(n => !string.Equals(n, "shape", StringComparison.Ordinal))
            .ToDictionary(n => n, n => known.Contains(n, StringComparer.Ordinal) ? fields.Number(n) : double.NaN, StringComparer.Ordinal);
        return new MouldSpec(shape, numbers);
    }
}
