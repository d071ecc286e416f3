using System.Buffers.Binary;

namespace Studio.Data.Files;

/// <summary>
/// Copies a JPEG without its metadata (ISO/IEC 10918-1 segments): the picture data and the colour profile stay byte for byte;
/// Exif, XMP, IPTC, maker notes, comments and all that follows the end of the picture (second pictures, films) are left behind.
/// </summary>
internal static class JpegCleaner
{
    private const byte App0 = 0xE0;
    private const byte App1 = 0xE1;
    private const byte App2 = 0xE2;
    private const byte App14 = 0xEE;
    private const byte App15 = 0xEF;
    private const byte Comment = 0xFE;
    private const byte StartOfScan = 0xDA;
    private const byte EndOfImage = 0xD9;

    /// <summary>Copies from just after the start-of-image marker on; returns the facts of the Exif block that was dropped.</summary>
    /// <exception cref="PhotoRefusedException">The file ends before its picture does, or is damaged.</exception>
    internal static ExifFacts Copy(Stream from, Stream to)
    {
        var source = new ByteSource(from);
        source.Skip(2);
        var body = new List<byte[]>();
        var facts = ExifFacts.None;
        var marker = source.Marker();
        while (marker is not StartOfScan)
        {
            var segment = source.Segment(marker);
            facts = ReferenceEquals(facts, ExifFacts.None) && IsExif(marker, segment) ? ExifFacts.Read(segment.AsSpan(10)) : facts;
            if (Keeps(marker, segment))
            {
                body.Add(segment);
            }

            marker = source.Marker();
        }

        WriteHead(to, body, facts.Orientation);
        CopyScans(source, to, marker);
        return facts;
    }

    private static void WriteHead(Stream to, List<byte[]> body, int orientation)
    {
        to.Write([0xFF, 0xD8]);
        if (orientation != 1)
        {
            byte[] exif = [.. "Exif\0\0"u8, .. ExifFacts.OnlyOrientation(orientation)];
            to.Write([0xFF, App1, 0, (byte)(exif.Length + 2), .. exif]);
        }

        body.ForEach(segment => to.Write(segment));
    }

    private static void CopyScans(ByteSource source, Stream to, byte marker)
    {
        while (marker != EndOfImage)
        {
            var segment = source.Segment(marker);
            if (Keeps(marker, segment))
            {
                to.Write(segment);
            }

            marker = marker == StartOfScan ? source.CopyUntilMarker(to) : source.Marker();
        }

        to.Write([0xFF, EndOfImage]);
    }

    private static bool IsExif(byte marker, byte[] segment) => marker == App1 && segment.AsSpan(4).StartsWith("Exif\0\0"u8) && segment.Length > 18;

    // JFIF says the density, Adobe how colours are stored, ICC what they mean; a JFIF extension holds a thumbnail and goes
    private static bool Keeps(byte marker, byte[] segment) => marker switch
    {
        App0 => segment.AsSpan(4).StartsWith("JFIF\0"u8),
        App2 => segment.AsSpan(4).StartsWith("ICC_PROFILE\0"u8),
        App14 => segment.AsSpan(4).StartsWith("Adobe"u8),
        >= App0 and <= App15 or Comment => false,
        _ => true,
    };

    /// <summary>Buffered bytes of the file, read once from front to back.</summary>
    private sealed class ByteSource(Stream stream)
    {
        private readonly byte[] buffer = new byte[81920];
        private int next;
        private int filled;

        internal void Skip(int count)
        {
            for (; count > 0; count--)
            {
                Byte();
            }
        }

        // a marker is 0xFF, any number of further 0xFF, and its code
        internal byte Marker()
        {
            if (Byte() != 0xFF)
            {
                throw new PhotoRefusedException(PhotoStore.Damaged);
            }

            var code = Byte();
            while (code == 0xFF)
            {
                code = Byte();
            }

            return code;
        }

        internal byte[] Segment(byte marker)
        {
            var (high, low) = (Byte(), Byte());
            var length = BinaryPrimitives.ReadUInt16BigEndian([high, low]);
            if (length < 2 || marker is 0 or 1 or (>= 0xD0 and <= 0xD9))
            {
                throw new PhotoRefusedException(PhotoStore.Damaged);
            }

            var segment = new byte[length + 2];
            (segment[0], segment[1], segment[2], segment[3]) = (0xFF, marker, high, low);
            for (var i = 4; i < segment.Length; i++)
            {
                segment[i] = Byte();
            }

            return segment;
        }

        // picture data up to the next marker; FF 00 is a data byte and FF D0 to FF D7 are restarts within the data
        internal byte CopyUntilMarker(Stream to)
        {
            while (true)
            {
                Fill();
                var run = buffer.AsSpan(next, filled - next);
                var stop = run.IndexOf((byte)0xFF);
                to.Write(stop < 0 ? run : run[..stop]);
                next += stop < 0 ? run.Length : stop;
                if (stop >= 0)
                {
                    var code = Marker();
                    if (code is not (0 or (>= 0xD0 and <= 0xD7)))
                    {
                        return code;
                    }

                    to.Write([0xFF, code]);
                }
            }
        }

        private byte Byte()
        {
            Fill();
            return buffer[next++];
        }

        private void Fill()
        {
            if (next == filled)
            {
                (next, filled) = (0, stream.Read(buffer));
                if (filled == 0)
                {
                    throw new PhotoRefusedException(PhotoStore.Truncated);
                }
            }
        }
    }
}
