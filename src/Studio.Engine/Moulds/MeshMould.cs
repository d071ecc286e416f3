namespace Studio.Engine.Moulds;

/// <summary>A mould whose cavity is a closed mesh.</summary>
public static class MeshMould
{
    /// <summary>Key and words of this shape; it has a file in place of dimensions.</summary>
    public static MouldShape Kind { get; } = new("mesh", "From a mesh file", [], _ => throw new NotSupportedException("A mesh mould is made from a file."))
    {
        Needs = MouldNeeds.Mesh,
        FromSpec = Make,
    };

    private static Mould? Make(MouldSpec spec, string path, InputErrors errors)
    {
        errors.Add(path + ".file", $"The mesh '{spec.Mesh?.File}' is not there.");
        return null;
    }
}
