namespace Studio.Engine.Meshes;

/// <summary>A file's mesh as it stands for casting, once it is known to close up: every edge joins two facets that run along it in opposite directions.</summary>
/// <param name="Mesh">The mesh [mm]; null when there is trouble.</param>
/// <param name="Trouble">What is wrong, where, and what to do.</param>
/// <param name="Findings">Notes on what was welded.</param>
public sealed record ClosedMesh(TriangleMesh? Mesh, string? Trouble, IReadOnlyList<Finding> Findings)
{
    private const double LongestMm = 10_000;

    /// <summary>Reads, turns, scales, welds and checks.</summary>
    /// <param name="bytes">STL, binary or ASCII, or OBJ.</param>
    /// <param name="source">Name, unit and direction.</param>
    /// <param name="path">Field that findings name.</param>
    public static ClosedMesh Read(ReadOnlySpan<byte> bytes, MeshSource source, string path)
    {
        var soup = Soup.Read(bytes, source.File);
        if (soup.Mesh is null)
        {
            return Refused(soup.Trouble!);
        }

        var (mesh, _) = Compact.WithoutFlat(Upright.Up(soup.Mesh, source));
        return Size(mesh, source) is { } wrong ? Refused(wrong) : Close(mesh, soup.Solids, path);
    }

    private static ClosedMesh Refused(string trouble) => new(null, trouble, []);

    private static string? Size(TriangleMesh mesh, MeshSource source)
    {
        var size = mesh.Bounds() is var (low, high) ? high - low : default;
        var longest = Math.Max(size.X, Math.Max(size.Y, size.Z));
        return size switch
        {
            _ when mesh.TriangleCount == 0 => "Every facet has two corners in the same place, so nothing is enclosed. Save the mould's cavity as one closed body.",
            _ when !(longest <= LongestMm) => FormattableString.Invariant($"Read in {source.Unit} it is {longest:0.###} mm long; {LongestMm} mm is the most. Check the unit."),
            { X: 0 } or { Y: 0 } or { Z: 0 } => FormattableString.Invariant($"It is flat, {size.X:0.###} by {size.Y:0.###} by {size.Z:0.###} mm, and holds nothing. Save the mould's cavity as one closed body."),
            _ => null,
        };
    }

    // near vertices are made one only where equal ones leave it open: a closed mesh is taken to the last digit
    private static ClosedMesh Close(TriangleMesh mesh, int solids, string path)
    {
        var edges = EdgeCheck.Of(mesh);
        var findings = new List<Finding>();
        if (!edges.Closed)
        {
            var tolerance = NearWeld.Tolerance(mesh);
            (mesh, var merged, var dropped) = NearWeld.Of(mesh, tolerance);
            if (merged > 0)
            {
                edges = EdgeCheck.Of(mesh);
                findings.Add(new Finding("mesh-welded", Severity.Note, path, FormattableString.Invariant($"The mesh closed once {merged} corners were joined to others within {tolerance:0.######} mm{(dropped > 0 ? $"; {dropped} facets vanished by it" : "")}."), ""));
            }
        }

        if (solids > 1)
        {
            findings.Add(new Finding("mesh-solids", Severity.Note, path, FormattableString.Invariant($"The file has {solids} solids; they are read as one mesh."), ""));
        }

        return mesh.TriangleCount == 0 ? Refused("Every facet is smaller than can be told apart. Check the mesh.")
            : edges.Closed ? new ClosedMesh(mesh, null, findings)
            : Refused(MeshWords.Edges(edges, Duplicates.Of(mesh)));
    }
}
