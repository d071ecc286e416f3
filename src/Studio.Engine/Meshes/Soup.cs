namespace Studio.Engine.Meshes;

/// <summary>What a file held: triangles over vertices that are equal to the last bit, in the file's own unit; or why it could not be read.</summary>
/// <param name="Mesh">The triangles; null when there is trouble.</param>
/// <param name="Trouble">Sentences: what, where, what to do.</param>
/// <param name="Solids">Blocks of an ASCII STL; 1 elsewhere.</param>
internal sealed record Soup(TriangleMesh? Mesh, string? Trouble, int Solids = 1)
{
    /// <summary>Reads an STL or OBJ by its name's ending, or by its look where the name has neither.</summary>
    public static Soup Read(ReadOnlySpan<byte> bytes, string name)
    {
        if (bytes.IsEmpty)
        {
            return new Soup(null, "The file is empty. Save it again.");
        }

        if (Has(name, ".obj") && bytes[..Math.Min(bytes.Length, 4096)].IndexOf((byte)0) >= 0)
        {
            return new Soup(null, "Read as OBJ, the file is no plain text. Save it as OBJ in UTF-8, or name it .stl if it is one.");
        }

        var text = bytes.StartsWith("\uFEFF"u8) ? bytes[3..] : bytes;
        return Has(name, ".obj") || (!StlBinary.Fits(bytes) && !Has(name, ".stl") && LooksLikeObj(text))
            ? ObjText.Read(text)
            : StlBinary.Fits(bytes) || !LooksLikeStlText(text) ? StlBinary.Read(bytes) : StlText.Read(text);
    }

    /// <summary>It cannot be read.</summary>
    public static Soup Refused(FormattableString why) => new(null, FormattableString.Invariant(why));

    private static bool Has(string name, string ending) => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase);

    // binary facets hold zero bytes almost at once; text never does
    private static bool LooksLikeStlText(ReadOnlySpan<byte> bytes)
    {
        var start = bytes[..Math.Min(bytes.Length, 4096)];
        var tokens = new MeshTokens(start);
        return start.IndexOf((byte)0) < 0 && tokens.Next() && (tokens.Is("solid"u8) || tokens.Is("facet"u8) || start.IndexOf("facet"u8) >= 0);
    }

    private static bool LooksLikeObj(ReadOnlySpan<byte> bytes)
    {
        var start = bytes[..Math.Min(bytes.Length, 4096)];
        return start.IndexOf((byte)0) < 0 && (start.StartsWith("v "u8) || start.IndexOf("\nv "u8) >= 0);
    }
}
