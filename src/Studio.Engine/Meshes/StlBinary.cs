using System.Buffers.Binary;

namespace Studio.Engine.Meshes;

/// <summary>
/// Binary STL: 80 bytes of anything, the number of facets, then 50 bytes a facet (normal, three corners, two spare bytes), little-endian.
/// The header's words mean nothing: many begin with 'solid'. A file is binary when its length is the one that its number of facets asks for.
/// </summary>
internal static class StlBinary
{
    private const int Header = 84;
    private const int Facet = 50;

    /// <summary>True when the length is exactly that of the facets promised, which no ASCII file's is: its bytes 81 to 84 would promise half a billion.</summary>
    public static bool Fits(ReadOnlySpan<byte> bytes) => bytes.Length >= Header && Header + (Facet * Promised(bytes)) == bytes.Length;

    /// <summary>Reads it, refusing by length before anything is set aside for the facets.</summary>
    public static Soup Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < Header)
        {
            return Soup.Refused($"The file is neither STL nor OBJ: {bytes.Length} bytes are too few for a binary STL, and it is no ASCII STL that begins with 'solid'. Save it as STL or OBJ.");
        }

        var (facets, holds) = (Promised(bytes), (bytes.Length - Header) / Facet);
        if (!Fits(bytes))
        {
            return facets > holds
                ? Soup.Refused($"Read as a binary STL, the file promises {facets} facets and ends within facet {holds + 1}: it was cut short, or it is no STL. Save or copy it again.")
                : Soup.Refused($"Read as a binary STL, the file promises {facets} facets, yet {bytes.Length - Header - (Facet * facets)} bytes follow the last of them. Save it again.");
        }

        return facets == 0 ? Soup.Refused($"The solid is empty: the file promises 0 facets. Save the mould's cavity as one closed body.") : Facets(bytes, (int)facets);
    }

    private static Soup Facets(ReadOnlySpan<byte> bytes, int facets)
    {
        var weld = new VertexWeld((facets / 2) + 16);
        var corners = new int[3 * facets];
        for (var (f, at) = (0, Header + 12); f < facets; f++, at += Facet)
        {
            for (var k = 0; k < 3; k++)
            {
                var corner = bytes.Slice(at + (12 * k), 12);
                var x = BinaryPrimitives.ReadSingleLittleEndian(corner);
                var y = BinaryPrimitives.ReadSingleLittleEndian(corner[4..]);
                var z = BinaryPrimitives.ReadSingleLittleEndian(corner[8..]);
                if (!(float.IsFinite(x) && float.IsFinite(y) && float.IsFinite(z)))
                {
                    return Soup.Refused($"Facet {f + 1} of {facets}: corner {k + 1} has a coordinate that is no number (x {x}, y {y}, z {z}). Mend the mesh and save it again.");
                }

                corners[(3 * f) + k] = weld.Add(x, y, z);
            }
        }

        return new Soup(new TriangleMesh(weld.Coordinates(), corners), null);
    }

    private static long Promised(ReadOnlySpan<byte> bytes) => BinaryPrimitives.ReadUInt32LittleEndian(bytes[80..]);
}
