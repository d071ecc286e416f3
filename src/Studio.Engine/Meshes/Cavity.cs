namespace Studio.Engine.Meshes;

/// <summary>
/// The inside of a mould as a closed mesh, as it stands for casting: z [mm] counts upwards from its lowest point, and the middle of its
/// bounding box stands over x = y = 0.
/// </summary>
public sealed class Cavity
{
    private readonly Lazy<VolumeTable> table;

    private Cavity(TriangleMesh mesh, IReadOnlyList<Finding> findings)
    {
        (Mesh, Findings) = (mesh, findings);
        table = new Lazy<VolumeTable>(() => VolumeTable.Of(mesh));
    }

    /// <summary>The welded mesh [mm], closed and wound outwards.</summary>
    public TriangleMesh Mesh { get; }

    /// <summary>From the lowest to the highest point [mm].</summary>
    public double HeightMm => Table.HighMm;

    /// <summary>Area, volume and moment by height; made when first asked for.</summary>
    public VolumeTable Table => table.Value;

    /// <summary>Notes on what was mended or is worth knowing; empty for a plain mesh.</summary>
    public IReadOnlyList<Finding> Findings { get; }

    /// <summary>Reads a file and checks it.</summary>
    /// <param name="bytes">STL, binary or ASCII, or OBJ.</param>
    /// <param name="source">Name, unit and direction.</param>
    /// <param name="path">Field that errors are reported at, such as <c>mould</c>.</param>
    /// <returns>The cavity, or everything that is wrong with it.</returns>
    public static Outcome<Cavity> Read(ReadOnlyMemory<byte> bytes, MeshSource source, string path = "mould")
    {
        var closed = ClosedMesh.Read(bytes.Span, source, path + ".file");
        var (crossing, doubts) = closed.Mesh is null ? (closed.Trouble, []) : Crossing.Check(closed.Mesh, NearWeld.Tolerance(closed.Mesh), path + ".file");
        var (mended, notes, wrong) = crossing is null ? Winding.Settle(closed.Mesh!, path + ".file") : (null, [], crossing);
        return wrong is null
            ? Outcome<Cavity>.Of(new Cavity(mended!, [.. closed.Findings, .. doubts, .. notes]))
            : Outcome<Cavity>.Refused([new InputError(path + ".file", $"The mesh '{source.File}' cannot be used. {wrong}")]);
    }
}
