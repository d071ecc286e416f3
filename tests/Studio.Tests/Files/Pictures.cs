using System.Buffers.Binary;
using System.Text;
using SkiaSharp;

namespace Studio.Tests.Files;

/// <summary>Picture files made for the tests, with metadata put in by hand.</summary>
internal static class Pictures
{
    internal static readonly SKColor[] Corners = [SKColors.Red, SKColors.Lime, SKColors.Blue, SKColors.Yellow];

    /// <summary>Shown upright: red top left, lime top right, blue bottom left, yellow bottom right; wider than high.</summary>
    internal static SKBitmap Quarters(int width = 480, int height = 320)
    {
        var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb());
        for (var y = 0; y < height; y++)
        {
            for (var x = 0; x < width; x++)
            {
                bitmap.SetPixel(x, y, Corners[(y < height / 2 ? 0 : 2) + (x < width / 2 ? 0 : 1)]);
            }
        }

        return bitmap;
    }

    /// <summary>The same picture as a camera held another way stores it. Exif 2.3, tag 0x0112: where the stored row 0 and column 0 are seen.</summary>
    internal static SKBitmap StoredFor(int orientation, SKBitmap upright)
    {
        var (w, h) = (upright.Width, upright.Height);
        var turned = orientation >= 5;
        var stored = new SKBitmap(turned ? h : w, turned ? w : h, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb());
        for (var row = 0; row < stored.Height; row++)
        {
            for (var column = 0; column < stored.Width; column++)
            {
                var (x, y) = orientation switch
                {
                    1 => (column, row), // row 0 at the top, column 0 at the left
                    2 => (w - 1 - column, row), // top, right
                    3 => (w - 1 - column, h - 1 - row), // bottom, right
                    4 => (column, h - 1 - row), // bottom, left
                    5 => (row, column), // left, top
                    6 => (w - 1 - row, column), // right, top
                    7 => (w - 1 - row, h - 1 - column), // right, bottom
                    _ => (row, h - 1 - column), // left, bottom
                };
                stored.SetPixel(column, row, upright.GetPixel(x, y));
            }
        }

        return stored;
    }

    internal static byte[] Jpeg(SKBitmap bitmap, int quality = 95) => Encode(bitmap, SKEncodedImageFormat.Jpeg, quality);

    internal static byte[] Encode(SKBitmap bitmap, SKEncodedImageFormat format, int quality = 100)
    {
        using var data = bitmap.Encode(format, quality);
        return data.ToArray();
    }

    /// <summary>Noise hardly packs, so the file is large.</summary>
    internal static byte[] Noise(int width, int height)
    {
        using var bitmap = new SKBitmap(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateSrgb());
        var pixels = new byte[width * height * 4];
        new Random(2).NextBytes(pixels);
        System.Runtime.InteropServices.Marshal.Copy(pixels, 0, bitmap.GetPixels(), pixels.Length);
        return Jpeg(bitmap, 100);
    }

    /// <summary>A little-endian Exif block: orientation, time of taking and a place (54° 10' 30" N, 3° 5' 0" W).</summary>
    internal static byte[] Exif(int orientation, string taken = "2024:07:09 18:30:05")
    {
        const int exifAt = 8 + 2 + (3 * 12) + 4, dateAt = exifAt + 2 + 12 + 4, gpsAt = dateAt + 20, latitudeAt = gpsAt + 2 + (4 * 12) + 4;
        using var block = new MemoryStream();
        using var w = new BinaryWriter(block);
        w.Write("II*\0"u8);
        w.Write(8);
        w.Write((ushort)3);
        Entry(w, 0x0112, 3, 1, orientation);
        Entry(w, 0x8769, 4, 1, exifAt);
        Entry(w, 0x8825, 4, 1, gpsAt);
        w.Write(0);
        w.Write((ushort)1);
        Entry(w, 0x9003, 2, 20, dateAt);
        w.Write(0);
        w.Write(Encoding.ASCII.GetBytes(taken + "\0"));
        w.Write((ushort)4);
        Entry(w, 1, 2, 2, 'N');
        Entry(w, 2, 5, 3, latitudeAt);
        Entry(w, 3, 2, 2, 'W');
        Entry(w, 4, 5, 3, latitudeAt + 24);
        w.Write(0);
        foreach (var number in (int[])[54, 1, 10, 1, 30, 1, 3, 1, 5, 1, 0, 1])
        {
            w.Write(number);
        }

        return block.ToArray();
    }

    /// <summary>Puts a segment right after the start of a JPEG.</summary>
    internal static byte[] WithSegment(byte[] jpeg, byte marker, byte[] content) =>
        [.. jpeg[..2], 0xFF, marker, (byte)((content.Length + 2) >> 8), (byte)(content.Length + 2), .. content, .. jpeg[2..]];

    internal static byte[] WithExif(byte[] jpeg, byte[] exif) => WithSegment(jpeg, 0xE1, [.. "Exif\0\0"u8, .. exif]);

    internal static byte[] PngHeader(uint width, uint height)
    {
        byte[] size = [0, 0, 0, 0, 0, 0, 0, 0, 8, 2, 0, 0, 0];
        BinaryPrimitives.WriteUInt32BigEndian(size, width);
        BinaryPrimitives.WriteUInt32BigEndian(size.AsSpan(4), height);
        return [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A, .. Chunk("IHDR", size), .. Chunk("IDAT", []), .. Chunk("IEND", [])];
    }

    /// <summary>Puts a chunk right after a PNG's header chunk.</summary>
    internal static byte[] WithChunk(byte[] png, string type, byte[] content) => [.. png[..33], .. Chunk(type, content), .. png[33..]];

    private static byte[] Chunk(string type, byte[] content)
    {
        byte[] named = [.. Encoding.ASCII.GetBytes(type), .. content];
        var ends = new byte[8];
        BinaryPrimitives.WriteInt32BigEndian(ends, content.Length);
        BinaryPrimitives.WriteUInt32BigEndian(ends.AsSpan(4), Crc(named));
        return [.. ends[..4], .. named, .. ends[4..]];
    }

    // table form, unlike the product's: ISO/IEC 15948 annex D
    private static uint Crc(byte[] bytes)
    {
        var table = Enumerable.Range(0, 256).Select(n => Enumerable.Range(0, 8).Aggregate((uint)n, (c, _) => (c & 1) == 1 ? 0xEDB88320 ^ (c >> 1) : c >> 1)).ToArray();
        return ~bytes.Aggregate(uint.MaxValue, (crc, b) => table[(crc ^ b) & 0xFF] ^ (crc >> 8));
    }

    private static void Entry(BinaryWriter w, ushort tag, ushort type, int count, int value)
    {
        w.Write(tag);
        w.Write(type);
        w.Write(count);
        w.Write(value);
    }
}
