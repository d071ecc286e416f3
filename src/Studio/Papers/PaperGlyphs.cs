using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace Studio.Papers;

/// <summary>
/// Rewrites a TrueType font in memory so that no glyph is built of parts that are themselves built of parts. PDFsharp 6.2.4 follows
/// such parts one level deep when it embeds what a paper uses, and lost the rings of "%" and the dots of "ё".
/// Tables and flags: OpenType specification 1.9, chapters 'glyf' and 'loca'.
/// </summary>
internal static class PaperGlyphs
{
    private const int Words = 0x1, Offsets = 0x2, OneScale = 0x8, More = 0x20, TwoScales = 0x40, Matrix = 0x80, Metrics = 0x200;

    [StructLayout(LayoutKind.Auto)]
    private readonly record struct Part(int Glyph, int Flags, double Xx, double Xy, double Yx, double Yy, double Dx, double Dy)
    {
        public bool Plain => Xx == 1 && Xy == 0 && Yx == 0 && Yy == 1;

        /// <summary>This part, within an outer one.</summary>
        public Part Within(Part o) => new(Glyph, Flags & ~Metrics,
            (Xx * o.Xx) + (Xy * o.Yx), (Xx * o.Xy) + (Xy * o.Yy), (Yx * o.Xx) + (Yy * o.Yx), (Yx * o.Xy) + (Yy * o.Yy),
            (Dx * o.Xx) + (Dy * o.Yx) + o.Dx, (Dx * o.Xy) + (Dy * o.Yy) + o.Dy);
    }

    public static byte[] Flatten(byte[] font)
    {
        var tables = Tables(font);
        var glyphs = Glyphs(tables);
        var (glyf, loca) = (new MemoryStream(), new MemoryStream());
        var offset = new byte[4];
        var most = 1;
        for (var g = 0; g <= glyphs.Count; g++)
        {
            BinaryPrimitives.WriteUInt32BigEndian(offset, (uint)glyf.Position);
            loca.Write(offset);
            if (g < glyphs.Count)
            {
                glyf.Write(Flat(glyphs, g, ref most));
                glyf.Write(new byte[(4 - (glyf.Position % 4)) % 4]);
            }
        }

        tables["glyf"] = glyf.ToArray();
        tables["loca"] = loca.ToArray();
        BinaryPrimitives.WriteInt16BigEndian(tables["head"].AsSpan(50), 1);
        BinaryPrimitives.WriteUInt16BigEndian(tables["maxp"].AsSpan(28), (ushort)most);
        BinaryPrimitives.WriteUInt16BigEndian(tables["maxp"].AsSpan(30), 1);
        return Write(font.AsSpan(0, 4), tables);
    }

    private static SortedDictionary<string, byte[]> Tables(byte[] font)
    {
        var tables = new SortedDictionary<string, byte[]>(StringComparer.Ordinal);
        for (var i = 0; i < U16(font, 4); i++)
        {
            var entry = font.AsSpan(12 + (16 * i), 16);
            var (at, length) = ((int)BinaryPrimitives.ReadUInt32BigEndian(entry[8..]), (int)BinaryPrimitives.ReadUInt32BigEndian(entry[12..]));
            tables[Encoding.ASCII.GetString(entry[..4])] = font.AsSpan(at, length).ToArray();
        }

        return tables;
    }

    private static List<byte[]> Glyphs(SortedDictionary<string, byte[]> tables)
    {
        var (loca, glyf) = (tables["loca"], tables["glyf"]);
        var wide = U16(tables["head"], 50) == 1;
        return [.. Enumerable.Range(0, U16(tables["maxp"], 4)).Select(g => glyf[At(g)..At(g + 1)])];

        int At(int g) => wide ? (int)BinaryPrimitives.ReadUInt32BigEndian(loca.AsSpan(4 * g)) : 2 * U16(loca, 2 * g);
    }

    private static byte[] Flat(List<byte[]> glyphs, int glyph, ref int most)
    {
        var data = glyphs[glyph];
        if (!Built(data))
        {
            return data;
        }

        var parts = Parts(data);
        var flat = parts.SelectMany(p => Leaves(glyphs, p)).ToList();
        most = Math.Max(most, flat.Count);
        return parts.Any(p => Built(glyphs[p.Glyph])) ? Build(data, flat) : data;
    }

    private static IEnumerable<Part> Leaves(List<byte[]> glyphs, Part part) => Built(glyphs[part.Glyph])
        ? Parts(glyphs[part.Glyph]).SelectMany(inner => Leaves(glyphs, inner.Within(part)))
        : [part];

    /// <summary>Whether the glyph is made of other glyphs: its count of contours is negative.</summary>
    private static bool Built(byte[] glyph) => glyph.Length > 10 && S16(glyph, 0) < 0;

    private static List<Part> Parts(byte[] glyph)
    {
        var parts = new List<Part>();
        int flags, at = 10;
        do
        {
            flags = U16(glyph, at);
            var index = U16(glyph, at + 2);
            var wide = (flags & Words) != 0;
            var (dx, dy) = wide ? (S16(glyph, at + 4), S16(glyph, at + 6)) : ((sbyte)glyph[at + 4], (sbyte)glyph[at + 5]);
            at += wide ? 8 : 6;
            double xx = 1, xy = 0, yx = 0, yy = 1;
            if ((flags & OneScale) != 0)
            {
                xx = yy = Fixed(glyph, ref at);
            }
            else if ((flags & TwoScales) != 0)
            {
                (xx, yy) = (Fixed(glyph, ref at), Fixed(glyph, ref at));
            }
            else if ((flags & Matrix) != 0)
            {
                (xx, xy, yx, yy) = (Fixed(glyph, ref at), Fixed(glyph, ref at), Fixed(glyph, ref at), Fixed(glyph, ref at));
            }

            parts.Add(new Part(index, flags, xx, xy, yx, yy, dx, dy));
        }
        while ((flags & More) != 0);

        return parts;
    }

    private static byte[] Build(byte[] glyph, List<Part> parts)
    {
        var bytes = new List<byte>(glyph[..10]);
        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            var kept = part.Flags & ~(OneScale | TwoScales | Matrix | More);
            Add(kept | Words | Offsets | (i + 1 < parts.Count ? More : 0) | (part.Plain ? 0 : Matrix));
            Add(part.Glyph);
            Add((int)Math.Round(part.Dx));
            Add((int)Math.Round(part.Dy));
            foreach (var value in part.Plain ? [] : new[] { part.Xx, part.Xy, part.Yx, part.Yy })
            {
                Add((int)Math.Round(value * 16384));
            }
        }

        return [.. bytes];

        void Add(int value) => bytes.AddRange([(byte)(value >> 8), (byte)value]);
    }

    private static byte[] Write(ReadOnlySpan<byte> version, SortedDictionary<string, byte[]> tables)
    {
        using var file = new MemoryStream();
        var power = (int)Math.Log2(tables.Count);
        file.Write(version);
        foreach (var number in new[] { tables.Count, 16 << power, power, (16 * tables.Count) - (16 << power) })
        {
            file.Write([(byte)(number >> 8), (byte)number]);
        }

        var at = 12 + (16 * tables.Count);
        var entry = new byte[16];
        foreach (var (tag, table) in tables)
        {
            Encoding.ASCII.GetBytes(tag, entry);
            BinaryPrimitives.WriteUInt32BigEndian(entry.AsSpan(4), Sum(table));
            BinaryPrimitives.WriteUInt32BigEndian(entry.AsSpan(8), (uint)at);
            BinaryPrimitives.WriteUInt32BigEndian(entry.AsSpan(12), (uint)table.Length);
            file.Write(entry);
            at += (table.Length + 3) & ~3;
        }

        foreach (var table in tables.Values)
        {
            file.Write(table);
            file.Write(new byte[(4 - (table.Length % 4)) % 4]);
        }

        return file.ToArray();
    }

    private static uint Sum(byte[] table)
    {
        uint sum = 0;
        for (var i = 0; i < table.Length; i++)
        {
            sum += (uint)table[i] << (8 * (3 - (i % 4)));
        }

        return sum;
    }

    private static double Fixed(byte[] data, ref int at)
    {
        at += 2;
        return S16(data, at - 2) / 16384.0;
    }

    private static int U16(byte[] data, int at) => BinaryPrimitives.ReadUInt16BigEndian(data.AsSpan(at));

    private static int S16(byte[] data, int at) => BinaryPrimitives.ReadInt16BigEndian(data.AsSpan(at));
}
