using System.Buffers.Binary;

namespace Studio.Data.Files;

/// <summary>Finds the Exif chunk of a WebP file (RIFF container).</summary>
internal static class WebpFacts
{
    private const int HeaderLength = 12;
    private const int LongestExif = 1 << 20;

    internal static ExifFacts Read(Stream from)
    {
        Span<byte> head = stackalloc byte[8];
        from.Position = HeaderLength;
        while (from.ReadAtLeast(head, head.Length, throwOnEndOfStream: false) == head.Length)
        {
            var length = BinaryPrimitives.ReadUInt32LittleEndian(head[4..]);
            if (head.StartsWith("EXIF"u8) && length < LongestExif)
            {
                var exif = new byte[length];
                var read = from.ReadAtLeast(exif, exif.Length, throwOnEndOfStream: false);
                var block = exif.AsSpan(0, read);
                return ExifFacts.Read(block.StartsWith("Exif\0\0"u8) ? block[6..] : block);
            }

            var next = from.Position + length + (length & 1);
            if (next > from.Length)
            {
                return ExifFacts.None; // a length that leads out of the file
            }

            from.Position = next;
        }

        return ExifFacts.None;
    }
}
