using System.Runtime.CompilerServices;

namespace Studio.Engine.Meshes;

/// <summary>A mesh cut upright through the middle, as the section drawing shows it: u is x, v is z.</summary>
public static class MeshSection
{
    private static readonly ConditionalWeakTable<TriangleMesh, FlatArea> Known = [];

    /// <summary>The area cut by the plane y = 0; kept as long as the mesh is.</summary>
    /// <param name="mesh">A closed mesh.</param>
    public static FlatArea Through(TriangleMesh mesh) =>
        Known.GetValue(mesh, m => FlatArea.Of(Section.Upright(m, 0).Select(l => (IReadOnlyList<(double, double)>)[.. l.Select(p => (p.X, p.Z))])));
}
