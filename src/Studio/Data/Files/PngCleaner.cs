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
    private const int ChecksumLength = 4;
    private const int LongestExif = 1 << 20;

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
            long length = BinaryPrimitives.ReadUInt32BigEndian(head);
            type = Encoding.ASCII.GetString(head[4..]);
            switch (type)
            {
                case "acTL":
                    throw new PhotoRefusedException(PhotoStore.Moving);
                case "eXIf" when length < LongestExif:
                    facts = ReadExif(from, (int)length);
                    WriteOrientation(facts.Orientation, to);
                    break;
                case var kept when Kept.Contains(kept):
                    to.Write(head);
                    CopyBytes(from, to, length + ChecksumLength);
                    break;
                default:
                    CopyBytes(from, Stream.Null, length + ChecksumLength);
                    break;
            }
        }

        return facts;
    }

    private static ExifFacts ReadExif(Stream from, int length)
    {
        var chunk = new byte[length + ChecksumLength];
        Read(from, chunk);
        return ExifFacts.Read(chunk.AsSpan(0, length));
    }

    private static void WriteOrientation(int orientation, Stream to)
    {
        if (orientation == 1)
        {
            return;
        }

        byte[] named = [.. "eXIf"u8, .. ExifFacts.OnlyOrientation(orientation)];
        Span<byte> number = stackalloc byte[4];
        BinaryPrimitives.WriteInt32BigEndian(number, named.Length - 4);
        to.Write(number);
        to.Write(named);
        BinaryPrimitives.WriteUInt32BigEndian(number, Crc(named));
        to.Write(number);
    }

    private static bool Is(string type, string name) => string.Equals(type, name, StringComparison.Ordinal);

    private static void CopyBytes(Stream from, Stream to, long count)
    {
        var buffer = new byte[Math.Min(count, 81920)];
        for (var left = count; left > 0;)
        {
            var part = buffer.AsSpan(0, (int)Math.Min(left, buffer.Length));
            Read(from, part);
            to.Write(part);
            left -= part.Length;
        }
    }

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
