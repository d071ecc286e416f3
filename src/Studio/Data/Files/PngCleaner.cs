using System.Buffers.Binary;
using System.Text;

namespace Studio.Data.Files;

/// <summary>
/// Copies a PNG without its metadata (ISO/IEC 15948 chunks): picture, palette, transparency and colour chunks stay byte for byte;
/// Exif, text, times and unknown chunks, and all that follows the end of the picture, are left behind.
/// </summary>
internal static class PngCleaner
{
    private const int SignatureLength = 8;

    private static readonly HashSet<string> Kept = new(StringComparer.Ordinal)
    {
        "IHDR", "PLTE", "IDAT", "IEND", "tRNS", "cHRM", "gAMA", "iCCP", "sBIT", "sRGB", "cICP", "bKGD", "pHYs",
    };

    /// <summary>Copies the file; returns the facts of the Exif chunk that was dropped.</summary>
    /// <exception cref="PhotoRefusedException">The file ends before its picture does, is damaged, or moves.</exception>
    internal static ExifFacts Copy(Stream from, Stream to)
    {
        var facts = ExifFacts.None;
        Span<byte> head = stackalloc byte[SignatureLength];
        Read(from, head);
        to.Write(head);
        for (var type = ""; !Is(type, "IEND");)
        {
            Read(from, head);
            var length = BinaryPrimitives.ReadUInt32BigEndian(head);
            type = Encoding.ASCII.GetString(head[4..]);
            if (length > PhotoStore.LargestBytes)
            {
                throw new PhotoRefusedException(PhotoStore.Damaged);
            }

            var chunk = new byte[length + 4]; // data and its check sum
            Read(from, chunk);
            if (Is(type, "acTL"))
            {
                throw new PhotoRefusedException(PhotoStore.Moving);
            }

            if (Is(type, "eXIf"))
            {
                facts = ExifFacts.Read(chunk.AsSpan(0, (int)length));
            }

            if (Kept.Contains(type))
            {
                WriteOrientationBefore(type, facts, to);
                to.Write(head);
                to.Write(chunk);
            }
        }

        return facts;
    }

    // the orientation goes last, just before the end, wherever the Exif chunk stood
    private static void WriteOrientationBefore(string type, ExifFacts facts, Stream to)
    {
        if (!Is(type, "IEND") || facts.Orientation == 1)
        {
            return;
        }

        byte[] named = [.. "eXIf"u8, .. ExifFacts.OnlyOrientation(facts.Orientation)];
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, named.Length - 4);
        to.Write(number);
        to.Write(named);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc(named));
        to.Write(number);
    }

    private static bool Is(string type, string name) => string.Equals(type, name, StringComparison.Ordinal);

    private static void Read(Stream from, Span<byte> into)
    {
        if (from.ReadAtLeast(into, into.Length, throwOnEndOfStream: false) < into.Length)
        {
            throw new PhotoRefusedException(PhotoStore.Truncated);
        }
    }

    // ISO/IEC 15948 annex D, bit by bit: the block is 30 bytes long
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var crc = uint.MaxValue;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var bit = 0; bit < 8; bit++)
            {
                crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320;
            }
        }

        return ~crc;
    }
}
