namespace Studio.Engine.Meshes;

/// <summary>The part of a closed mesh between two heights, as a solid: its wall and the two flat faces that close it.</summary>
/// <param name="Wall">What is left of the surface.</param>
/// <param name="Floor">The flat face at the lower height, facing down.</param>
/// <param name="Top">The flat face at the upper height, facing up.</param>
public sealed record MeshSlab(TriangleMesh Wall, TriangleMesh Floor, TriangleMesh Top)
{
    /// <summary>Cuts a mesh at two heights [mm].</summary>
    public static MeshSlab Between(TriangleMesh mesh, double lowMm, double highMm) => new(
        WallBetween(mesh, lowMm, highMm),
        Face(Area(mesh, lowMm, fromBelow: false), lowMm, up: false),
        Face(Area(mesh, highMm), highMm, up: true));

    /// <summary>What a surface has between two heights [mm], open at both.</summary>
    public static TriangleMesh WallBetween(TriangleMesh mesh, double lowMm, double highMm) => new MeshClip(mesh, lowMm, highMm).Wall();

    /// <summary>The area of a mesh at a height [mm]; where it changes at that very height, as it is just below or just above.</summary>
    public static FlatArea Area(TriangleMesh mesh, double zMm, bool fromBelow = true)
    {
        var up = fromBelow ? 1 : -1;
        return FlatArea.Of(MeshCut.Loops(mesh, new Point3(0, 0, up), up * zMm).Select(l => (IReadOnlyList<(double, double)>)[.. l.Select(p => (p.X, p.Y))]));
    }

    /// <summary>An area in plan as triangles at a height [mm].</summary>
    public static TriangleMesh Face(FlatArea area, double zMm, bool up)
    {
        var (points, corners) = (new List<double>(), new List<int>());
        var known = new Dictionary<(double, double), int>();
        foreach (var (a, b, c) in area.Triangles())
        {
            corners.AddRange(up ? [Number(a), Number(b), Number(c)] : [Number(a), Number(c), Number(b)]);
        }

        return new TriangleMesh([.. points], [.. corners]);

        int Number((double U, double V) p)
        {
            if (!known.TryGetValue(p, out var number))
            {
                known.Add(p, number = known.Count);
                points.AddRange([p.U, p.V, zMm]);
            }

            return number;
        }
    }
}
