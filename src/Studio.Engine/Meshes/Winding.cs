namespace Studio.Engine.Meshes;

/// <summary>Which way the shells of a closed mesh that does not cross itself are wound: outwards around the cavity, inwards around a hollow in it.</summary>
internal static class Winding
{
    private const int MostShells = 1000;

    /// <summary>Turns a mesh that is inside out as a whole, or says what is wrong.</summary>
    public static (TriangleMesh? Mesh, IReadOnlyList<Finding> Findings, string? Trouble) Settle(TriangleMesh mesh, string path)
    {
        var (shellOf, shells) = Shells.Of(mesh);
        if (shells.Count > MostShells)
        {
            return Wrong($"It has {shells.Count} separate pieces; a cavity has a few. Join them into one closed body.");
        }

        var size = mesh.Bounds() is var (low, high) ? (high - low).Length : 0;
        for (var s = 0; s < shells.Count; s++)
        {
            if (shells[s].Facets == 2)
            {
                return Wrong($"A facet is there twice, once each way, at {MeshWords.Place(mesh.Vertex(shells[s].Vertex))}. Delete both.");
            }

            if (Math.Abs(shells[s].VolumeMm3) <= 1e-12 * size * size * size)
            {
                return Wrong($"{Which(s, shells)} encloses nothing. Delete it.");
            }
        }

        var depths = Nesting.Depths(mesh, shellOf, shells);
        var against = Enumerable.Range(0, shells.Count).Where(s => shells[s].VolumeMm3 > 0 != (depths[s] % 2 == 0)).ToList();
        var notes = new List<Finding>();
        if (against.Count == shells.Count)
        {
            Turn(mesh);
            notes.Add(new Finding("mesh-turned", Severity.Note, path, "Every facet of the mesh faced inwards; all were turned, and the shape is the same.", ""));
        }
        else if (against.Count > 0)
        {
            return Wrong(depths[against[0]] % 2 == 0
                ? (FormattableString)$"{Which(against[0], shells)} is inside out and the others are not. Turn its facets outwards."
                : $"{Which(against[0], shells)} lies inside another and is wound outwards too, so its inside would count twice. Turn its facets inwards if it is a hollow, or delete it.");
        }

        if (shells.Count > 1)
        {
            var hollows = depths.Count(d => d % 2 == 1);
            notes.Add(new Finding("mesh-shells", Severity.Note, path, FormattableString.Invariant($"The mesh has {shells.Count} separate pieces{(hollows > 0 ? $", {hollows} of them hollows whose room is taken away" : ", and their room is added up")}."), ""));
        }

        return (mesh, notes, null);
    }

    private static (TriangleMesh? Mesh, IReadOnlyList<Finding> Findings, string? Trouble) Wrong(FormattableString why) => (null, [], FormattableString.Invariant(why));

    private static string Which(int s, IReadOnlyList<Shell> shells) =>
        $"{(shells.Count == 1 ? "The mesh" : FormattableString.Invariant($"Piece {s + 1} of {shells.Count}"))} about {MeshWords.Place((shells[s].Low + shells[s].High) * 0.5)}";

    private static void Turn(TriangleMesh mesh)
    {
        for (var i = 0; i < mesh.Corners.Length; i += 3)
        {
            (mesh.Corners[i + 1], mesh.Corners[i + 2]) = (mesh.Corners[i + 2], mesh.Corners[i + 1]);
        }
    }
}
