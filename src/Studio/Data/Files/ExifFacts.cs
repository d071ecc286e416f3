using System.Buffers.Binary;
using System.Globalization;
using System.Text;

namespace Studio.Data.Files;

/// <summary>The two facts of a photograph's Exif block that are kept: which way is up, and when it was taken. All else, the place above all, is dropped.</summary>
/// <param name="Orientation">1 to 8 as in Exif tag 0x0112; 1 is upright.</param>
/// <param name="TakenAt">On the camera's own clock; null when it does not say.</param>
internal sealed record ExifFacts(int Orientation, DateTime? TakenAt)
{
    private const ushort OrientationTag = 0x0112;
    private const ushort DateTimeTag = 0x0132;
    private const ushort ExifFolderTag = 0x8769;
    private const ushort OriginalDateTag = 0x9003;
    private const ushort DigitizedDateTag = 0x9004;

    internal static ExifFacts None { get; } = new(1, null);

    /// <summary>Reads a TIFF-shaped Exif block; damage in it costs the facts, never the photograph.</summary>
    internal static ExifFacts Read(ReadOnlySpan<byte> tiff)
    {
        var little = tiff.StartsWith("II*\0"u8);
        if (tiff.Length < 8 || (!little && !tiff.StartsWith("MM\0*"u8)))
        {
            return None;
        }

        var main = Entries(tiff, UInt(tiff, 4, little), little);
        var exif = main.TryGetValue(ExifFolderTag, out var at) ? Entries(tiff, UInt(tiff, at + 8, little), little) : [];
        var orientation = main.TryGetValue(OrientationTag, out var o) ? UShort(tiff, o + 8, little) : 1;
        return new(
            orientation is >= 1 and <= 8 ? orientation : 1,
            Date(tiff, exif, OriginalDateTag, little) ?? Date(tiff, exif, DigitizedDateTag, little) ?? Date(tiff, main, DateTimeTag, little));
    }

    /// <summary>A TIFF-shaped Exif block that holds the orientation and nothing else.</summary>
    internal static byte[] OnlyOrientation(int orientation) =>
    [
        .. "MM\0*"u8, 0, 0, 0, 8, // big-endian, first folder at 8
        0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, (byte)orientation, 0, 0, // one entry: tag, SHORT, one value
        0, 0, 0, 0, // no further folder
    ];

    // tag → offset of its 12-byte entry; empty when the folder does not lie inside the block
    private static Dictionary<ushort, int> Entries(ReadOnlySpan<byte> tiff, long folder, bool little)
    {
        var entries = new Dictionary<ushort, int>();
        if (folder < 8 || folder + 2 > tiff.Length)
        {
            return entries;
        }

        var count = UShort(tiff, (int)folder, little);
        for (var at = (int)folder + 2; count > 0 && at + 12 <= tiff.Length; at += 12, count--)
        {
            entries.TryAdd(UShort(tiff, at, little), at);
        }

        return entries;
    }

    private static DateTime? Date(ReadOnlySpan<byte> tiff, Dictionary<ushort, int> entries, ushort tag, bool little)
    {
        const int length = 19;
        if (!entries.TryGetValue(tag, out var entry))
        {
            return null;
        }

        long at = UInt(tiff, entry + 8, little); // up to 4 GB, so its sum must not wrap round
        return at + length <= tiff.Length && DateTime.TryParseExact(
            Encoding.ASCII.GetString(tiff.Slice((int)at, length)), "yyyy:MM:dd HH:mm:ss", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? date
            : null;
    }

    private static ushort UShort(ReadOnlySpan<byte> tiff, int at, bool little) =>
        little ? BinaryPrimitives.ReadUInt16LittleEndian(tiff[at..]) : BinaryPrimitives.ReadUInt16BigEndian(tiff[at..]);

    private static uint UInt(ReadOnlySpan<byte> tiff, int at, bool little) =>
        little ? BinaryPrimitives.ReadUInt32LittleEndian(tiff[at..]) : BinaryPrimitives.ReadUInt32BigEndian(tiff[at..]);
}
