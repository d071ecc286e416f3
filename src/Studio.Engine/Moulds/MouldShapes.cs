namespace Studio.Engine.Moulds;

/// <summary>Every shape the program knows. A new shape is its own file and one line here; forms, drawings and JSON follow.</summary>
public static class MouldShapes
{
    /// <summary>The shapes in the order a form offers them.</summary>
    public static IReadOnlyList<MouldShape> All => Beside.Value is { } more ? [.. Known, more] : Known;

    /// <summary>The key that a new mould begins with.</summary>
    public static string Usual => Known[0].Key;

    /// <summary>A shape that is made up for a while, seen by nobody else: the tests add one and look at what follows.</summary>
    internal static AsyncLocal<MouldShape?> Beside { get; } = new();

    private static IReadOnlyList<MouldShape> Known { get; } =
        [PyramidMould.Kind, CuboidMould.Kind, PrismMould.Kind, ConeMould.Kind, SphereMould.Sphere, SphereMould.Dome, MeasuredMould.Kind, MeshMould.Kind];

    /// <summary>The keys as a phrase for messages.</summary>
    public static string Keys => string.Join(", ", All.Select(s => s.Key));

    /// <summary>The shape of that key, or null.</summary>
    public static MouldShape? Find(string key) => All.FirstOrDefault(s => string.Equals(s.Key, key, StringComparison.Ordinal));

    /// <summary>Checks a description and makes the mould. Dimensions left out take the shape's default.</summary>
    /// <returns>The mould, or every error with paths such as <c>mould.baseMm</c>.</returns>
    public static Outcome<MouldBody> Make(MouldSpec spec)
    {
        var errors = new InputErrors();
        var mould = Make(spec, "mould", errors);
        return mould is null ? Outcome<MouldBody>.Refused(errors.All) : Outcome<MouldBody>.Of(mould);
    }

    /// <summary>As <see cref="Make(MouldSpec)"/>, adding to errors gathered elsewhere. Null when the mould cannot be made.</summary>
    public static MouldBody? Make(MouldSpec spec, string path, InputErrors errors)
    {
        if (Find(spec.Shape) is not { } shape)
        {
            errors.Add(path + ".shape", $"There is no shape '{spec.Shape}'. Use one of: {Keys}.");
            return null;
        }

        var unknown = spec.Dimensions.Keys.Where(k => shape.Dimensions.All(d => !string.Equals(d.Name, k, StringComparison.Ordinal))).ToList();
        foreach (var name in unknown)
        {
            errors.Add($"{path}.{name}", $"The shape '{shape.Key}' has no field '{name}'. It has: {string.Join(", ", MouldJson.FieldsOf(shape))}.");
        }

        var sizes = new Dictionary<string, double>(StringComparer.Ordinal);
        var complaints = shape.Dimensions.Select(d => (d.Name, Message: Take(d, spec, sizes))).Where(c => c.Message is not null).Select(c => (c.Name, Message: c.Message!)).ToList();
        complaints = complaints.Count == 0 ? [.. shape.Complaints(sizes)] : complaints;
        complaints.ForEach(c => errors.Add($"{path}.{c.Name}", c.Message));
        var scaled = errors.Within(path + ".volumeFactor", spec.VolumeFactor, WaterCheckSum.LeastFactor, WaterCheckSum.MostFactor, "")
            & errors.Within(path + ".volumeSpreadPercent", spec.VolumeSpreadPercent, 0, 100, "%");
        var mould = unknown.Count + complaints.Count > 0 || !scaled ? null : shape.FromSpec is { } from ? from(spec, path, errors) : shape.Make(sizes);
        return mould is null || spec.VolumeFactor == 1 ? mould : new ScaledMould(mould, spec.VolumeFactor);
    }

    private static string? Take(Dimension dimension, MouldSpec spec, Dictionary<string, double> sizes)
    {
        if (!spec.Dimensions.TryGetValue(dimension.Name, out var given))
        {
            if (dimension.Default is not { } otherwise)
            {
                return $"{dimension.Label} is missing; give '{dimension.Name}'.";
            }

            given = otherwise;
        }

        sizes[dimension.Name] = given;
        return dimension.Complaint(given);
    }
}
