namespace Studio.Engine.Meshes;

/// <summary>Turns a file's mesh as it stands for casting, in millimetres, its lowest point at z = 0 and its box's middle over x = y = 0.</summary>
internal static class Upright
{
    /// <summary>Moves the vertices, in place, and gives the same mesh.</summary>
    /// <remarks>Turned (never mirrored) first, shifted next, scaled last: a mesh far from its origin loses no further digits.</remarks>
    public static TriangleMesh Up(TriangleMesh mesh, MeshSource source)
    {
        var xyz = mesh.Coordinates;
        var turn = Turn(source.Up);
        for (var i = 0; i < xyz.Length; i += 3)
        {
            (xyz[i], xyz[i + 1], xyz[i + 2]) = turn(new Point3(xyz[i], xyz[i + 1], xyz[i + 2])) is var p ? (p.X, p.Y, p.Z) : default;
        }

        var (low, high) = mesh.Bounds();
        var (x, y, scale) = (low.X + ((high.X - low.X) / 2), low.Y + ((high.Y - low.Y) / 2), MeshSource.Units[source.Unit]);
        for (var i = 0; i < xyz.Length; i += 3)
        {
            (xyz[i], xyz[i + 1], xyz[i + 2]) = ((xyz[i] - x) * scale, (xyz[i + 1] - y) * scale, (xyz[i + 2] - low.Z) * scale);
        }

        return mesh;
    }

    // each a quarter turn about one axis, or half a turn about x
    private static Func<Point3, Point3> Turn(string up) => up switch
    {
        "+z" => p => p,
        "-z" => p => new(p.X, -p.Y, -p.Z),
        "+y" => p => new(p.X, -p.Z, p.Y),
        "-y" => p => new(p.X, p.Z, -p.Y),
        "+x" => p => new(-p.Z, p.Y, p.X),
        "-x" => p => new(p.Z, p.Y, -p.X),
        _ => throw new ArgumentOutOfRangeException(nameof(up), up, "Directions are +x, -x, +y, -y, +z, -z."),
    };
}
