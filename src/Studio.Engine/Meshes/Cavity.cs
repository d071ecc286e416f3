namespace Studio.Engine.Meshes;

/// <summary>
/// The inside of a mould as a closed mesh, as it stands for casting: z [mm] counts upwards from its lowest point, and the middle of its
/// bounding box stands over x = y = 0.
/// </summary>
public sealed class Cavity
{
    private Cavity(TriangleMesh mesh) => Mesh = mesh;

    /// <summary>The welded mesh [mm].</summary>
    public TriangleMesh Mesh { get; }

    /// <summary>Reads a file and checks it.</summary>
    /// <param name="bytes">STL, binary or ASCII, or OBJ.</param>
    /// <param name="source">Name, unit and direction.</param>
    /// <param name="path">Field that errors are reported at, such as <c>mould</c>.</param>
    /// <returns>The cavity, or everything that is wrong with it.</returns>
    public static Outcome<Cavity> Read(ReadOnlyMemory<byte> bytes, MeshSource source, string path = "mould") =>
        Outcome<Cavity>.Refused([new InputError(path + ".file", $"The mesh '{source.File}' ({bytes.Length} bytes) cannot be read yet.")]);
}
