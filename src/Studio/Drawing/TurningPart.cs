using System.Runtime.InteropServices;
using Studio.Engine.Meshes;

namespace Studio.Drawing;

/// <summary>What a part of a turning view is, which says when and how it is drawn.</summary>
public enum TurningKind
{
    /// <summary>A box, not seen through.</summary>
    Former,

    /// <summary>A photograph.</summary>
    Sheet,

    /// <summary>A layer's outside.</summary>
    Layer,

    /// <summary>The flat face at a layer's top.</summary>
    Top,

    /// <summary>The mould where nothing is in it.</summary>
    Glass,

    /// <summary>Lines, two corners each.</summary>
    Line,
}

/// <summary>A part of a turning view as the browser takes it.</summary>
/// <param name="Kind">As the script reads it.</param>
/// <param name="Colour">Such as <c>#7a5c99</c>; empty for the page's own.</param>
/// <param name="Strength">From 0, nothing, to 1, not seen through.</param>
/// <param name="Points">x, y, z of each vertex as 16-bit numbers, from the middle of the scene: 32000 is its radius.</param>
/// <param name="Corners">Vertex numbers, 16-bit, or 32-bit where <paramref name="Wide"/>.</param>
/// <param name="Wide">More vertices than 16 bits number.</param>
public sealed record TurningPart(string Kind, string Colour, double Strength, byte[] Points, byte[] Corners, bool Wide)
{
    internal static TurningPart Of(TurningKind kind, string colour, double strength, TriangleMesh mesh, Func<Point3, Point3> place)
    {
        var wide = mesh.VertexCount > ushort.MaxValue;
        var points = new short[3 * mesh.VertexCount];
        for (var i = 0; i < mesh.VertexCount; i++)
        {
            var p = place(mesh.Vertex(i));
            (points[3 * i], points[(3 * i) + 1], points[(3 * i) + 2]) = (Short(p.X), Short(p.Y), Short(p.Z));
        }

        var corners = wide ? MemoryMarshal.AsBytes<int>(mesh.Corners).ToArray() : MemoryMarshal.AsBytes<ushort>(Array.ConvertAll(mesh.Corners, c => (ushort)c)).ToArray();
        return new TurningPart(kind.ToString().ToLowerInvariant(), colour, strength, MemoryMarshal.AsBytes<short>(points).ToArray(), corners, wide);
    }

    private static short Short(double share) => (short)Math.Round(Math.Clamp(share, -1.02, 1.02) * 32000);
}
