using System.Diagnostics;
using SkiaSharp;
using Studio.Data.Files;

namespace Studio.Tests.Files;

/// <summary>
/// 100,000 broken pictures, small ones so that it is quick: each through the readers of headers, metadata and segments and, where those
/// let it pass, through the whole decoder and a recipe. Each is either read or refused by a sentence, in little time and little memory.
/// </summary>
public sealed class PhotoFuzzTests
{
    private const int Runs = 100_000;
    private const long MostGrowth = 256L * 1024 * 1024;

    [Fact]
    public void A_hundred_thousand_broken_pictures_are_read_or_refused_and_nothing_else()
    {
        var seeds = Seeds();
        Through(seeds[0]);
        var before = Environment.WorkingSet;
        var (read, refused, slowest, peak) = (0, 0, TimeSpan.Zero, 0L);
        for (var run = 0; run < Runs; run++)
        {
            var mutant = Mutate(seeds[run % seeds.Length], new Random(run), seeds);
            var start = Stopwatch.GetTimestamp();
            _ = Through(mutant) ? read++ : refused++;
            slowest = TimeSpan.FromTicks(Math.Max(slowest.Ticks, Stopwatch.GetElapsedTime(start).Ticks));
            peak = run % 50 == 0 ? Math.Max(peak, Environment.WorkingSet) : peak;
        }

        // both must happen, or the mutations say nothing
        read.ShouldBeGreaterThan(Runs / 20);
        refused.ShouldBeGreaterThan(Runs / 20);
        slowest.ShouldBeLessThan(TimeSpan.FromSeconds(5));
        (peak - before).ShouldBeLessThan(MostGrowth);
    }

    // true when it was read; any exception but a refusal fails the test
    private static bool Through(byte[] file)
    {
        try
        {
            using var from = new MemoryStream(file);
            var facts = PhotoKinds.Of(file.AsSpan(0, Math.Min(file.Length, PhotoKinds.BytesNeeded))) switch
            {
                PhotoKind.Jpeg => JpegCleaner.Copy(from, Stream.Null),
                PhotoKind.Png => PngCleaner.Copy(from, Stream.Null),
                _ => WebpFacts.Read(from),
            };
            facts.Orientation.ShouldBeInRange(1, 8);
            ExifFacts.Read(file.AsSpan(Math.Min(file.Length, 30))).Orientation.ShouldBeInRange(1, 8);
            using var made = SKBitmap.Decode(PreparedPicture.Make(() => new MemoryStream(file), new() { QuarterTurns = 1, StraightenDegrees = 3, CropLeft = 0.2, OneColour = true }, 320));
            Math.Max(made.Width, made.Height).ShouldBeLessThanOrEqualTo(320);
            return true;
        }
        catch (PhotoRefusedException refusal)
        {
            refusal.Message.Length.ShouldBeInRange(20, 400);
            return false;
        }
    }

    private static byte[][] Seeds()
    {
        using var picture = Pictures.Quarters(48, 32);
        using var sideways = Pictures.StoredFor(6, picture);
        var exif = Pictures.Exif(6);
        return
        [
            Pictures.WithExif(Pictures.Jpeg(sideways), exif),
            Pictures.WithSegment(Pictures.Jpeg(picture, 60), 0xFE, "a comment"u8.ToArray()),
            Pictures.WithChunk(Pictures.Encode(sideways, SKEncodedImageFormat.Png), "eXIf", exif),
            Pictures.Encode(picture, SKEncodedImageFormat.Png),
            Pictures.Encode(picture, SKEncodedImageFormat.Webp, 80),
        ];
    }

    private static byte[] Mutate(byte[] seed, Random random, byte[][] seeds)
    {
        var bytes = seed.ToList();
        for (var times = random.Next(1, 5); times > 0; times--)
        {
            var at = random.Next(bytes.Count + 1);
            switch (random.Next(8))
            {
                case 0:
                    bytes.RemoveRange(at, Math.Min(random.Next(bytes.Count + 1), bytes.Count - at)); // cut short, or a hole in it
                    break;
                case 1:
                    var other = seeds[random.Next(seeds.Length)];
                    var from = random.Next(other.Length);
                    bytes.InsertRange(at, other[from..random.Next(from, other.Length)]);
                    break;
                case 2:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(100), bytes.Count - at)));
                    break;
                case 3 when at + 4 <= bytes.Count:
                    byte[] edge = random.Next(3) switch { 0 => [0xFF, 0xFF, 0xFF, 0xFF], 1 => [0x7F, 0xFF, 0xFF, 0xFF], _ => [0, 0, 0, 0] };
                    edge.CopyTo(System.Runtime.InteropServices.CollectionsMarshal.AsSpan(bytes)[at..]); // a length or an offset at its limit
                    break;
                default:
                    Flip(bytes, random);
                    break;
            }
        }

        return [.. bytes];
    }

    private static void Flip(List<byte> bytes, Random random)
    {
        for (var i = random.Next(1, 6); i > 0 && bytes.Count > 0; i--)
        {
            var near = random.Next(3) == 0 ? bytes.Count : Math.Min(bytes.Count, 64); // headers lie in front
            bytes[random.Next(near)] ^= (byte)(1 << random.Next(8));
        }
    }
}
