namespace Studio.Engine.Meshes;

/// <summary>Where a cavity's mesh comes from and how it is to be read.</summary>
/// <param name="File">Name of an STL or OBJ file.</param>
/// <param name="Unit"><c>mm</c>, <c>cm</c>, <c>m</c> or <c>inch</c>; the files themselves do not say.</param>
/// <param name="Up">The file's direction that stands upwards for casting: <c>+x</c>, <c>-x</c>, <c>+y</c>, <c>-y</c>, <c>+z</c>, <c>-z</c>.</param>
public sealed record MeshSource(string File, string Unit, string Up)
{
    /// <summary>Unit to millimetres.</summary>
    public static IReadOnlyDictionary<string, double> Units { get; } =
        new Dictionary<string, double>(StringComparer.Ordinal) { ["mm"] = 1, ["cm"] = 10, ["m"] = 1000, ["inch"] = 25.4 };

    /// <summary>Every direction that can stand upwards.</summary>
    public static IReadOnlyList<string> Directions { get; } = ["+z", "-z", "+y", "-y", "+x", "-x"];
}

/// <summary>Opens mesh files for the engine, which sees no file system.</summary>
/// <param name="name">The file's name as the input gives it.</param>
/// <returns>Its bytes, or a sentence that says why not.</returns>
public delegate (byte[]? Bytes, string? Trouble) OpenMesh(string name);
