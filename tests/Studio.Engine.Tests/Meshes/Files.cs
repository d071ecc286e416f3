using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Studio.Engine.Meshes;

namespace Studio.Engine.Tests.Meshes;

/// <summary>Writes meshes as files, and reads them back as a mould's cavity.</summary>
internal static class Files
{
    public static byte[] Binary(TriangleMesh mesh, string header = "made by a test")
    {
        var bytes = new byte[84 + (50 * mesh.TriangleCount)];
        Encoding.ASCII.GetBytes(header, bytes);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(80), mesh.TriangleCount);
        for (var i = 0; i < mesh.Corners.Length; i++)
        {
            var (p, at) = (mesh.Vertex(mesh.Corners[i]), 84 + (50 * (i / 3)) + 12 + (12 * (i % 3)));
            Write(bytes.AsSpan(at), p);
        }

        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            var (a, b, c) = mesh.Triangle(f);
            var normal = (b - a).Cross(c - a);
            Write(bytes.AsSpan(84 + (50 * f)), normal.Length > 0 ? normal * (1 / normal.Length) : default);
        }

        return bytes;
    }

    private static void Write(Span<byte> to, Point3 p)
    {
        BinaryPrimitives.WriteSingleLittleEndian(to, (float)p.X);
        BinaryPrimitives.WriteSingleLittleEndian(to[4..], (float)p.Y);
        BinaryPrimitives.WriteSingleLittleEndian(to[8..], (float)p.Z);
    }

    public static string Ascii(TriangleMesh mesh, string format = "R", string name = "cavity")
    {
        var text = new StringBuilder($"solid {name}\n");
        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            text.Append("  facet normal 0 0 0\n    outer loop\n");
            foreach (var corner in mesh.Corners.AsSpan(3 * f, 3))
            {
                var p = mesh.Vertex(corner);
                text.Append("      vertex ").AppendJoin(' ', new[] { p.X, p.Y, p.Z }.Select(c => c.ToString(format, CultureInfo.InvariantCulture))).Append('\n');
            }

            text.Append("    endloop\n  endfacet\n");
        }

        return text.Append("endsolid ").Append(name).Append('\n').ToString();
    }

    public static string Obj(TriangleMesh mesh)
    {
        var text = new StringBuilder("# made by a test\no cavity\n");
        for (var v = 0; v < mesh.VertexCount; v++)
        {
            var p = mesh.Vertex(v);
            text.Append(CultureInfo.InvariantCulture, $"v {p.X:R} {p.Y:R} {p.Z:R}\n");
        }

        for (var f = 0; f < mesh.TriangleCount; f++)
        {
            text.Append(CultureInfo.InvariantCulture, $"f {mesh.Corners[3 * f] + 1} {mesh.Corners[(3 * f) + 1] + 1} {mesh.Corners[(3 * f) + 2] + 1}\n");
        }

        return text.ToString();
    }

    public static byte[] Bytes(this string text) => Encoding.UTF8.GetBytes(text);

    public static Outcome<Cavity> Read(byte[] bytes, string name = "cavity.stl", string unit = "mm", string up = "+z") => Cavity.Read(bytes, new MeshSource(name, unit, up));

    /// <summary>Through OBJ, which keeps every digit.</summary>
    public static Cavity CavityOf(TriangleMesh mesh, string unit = "mm", string up = "+z") => Read(Obj(mesh).Bytes(), "cavity.obj", unit, up).Value;

    public static string Refusal(byte[] bytes, string name = "cavity.stl")
    {
        var error = Read(bytes, name).Errors.ShouldHaveSingleItem();
        error.Path.ShouldBe("mould.file");
        error.Message.ShouldStartWith($"The mesh '{name}' cannot be used. ");
        return error.Message;
    }
}
