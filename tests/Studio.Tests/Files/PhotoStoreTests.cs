using System.Security.Cryptography;
using System.Text;
using SkiaSharp;
using Studio.Data.Files;

namespace Studio.Tests.Files;

public sealed class PhotoStoreTests : PhotoStoreTestBase
{
    [Fact]
    public async Task Photograph_is_kept_under_the_hash_of_what_is_stored()
    {
        var photo = await Keep(Pictures.Jpeg(Pictures.Quarters()), "C:\\Pictures\\heather\u0007.jpg");
        photo.Hash.ShouldBe(Convert.ToHexStringLower(SHA256.HashData(Read(photo, PhotoSize.Original))));
        (photo.WidthPx, photo.HeightPx, photo.ContentType, photo.FileName).ShouldBe((480, 320, "image/jpeg", "heather.jpg"));
        File.Exists(Path.Combine(Root, photo.Hash[..2], photo.Hash[2..4], photo.Hash + ".jpg")).ShouldBeTrue();
        Files().Length.ShouldBe(3);
    }

    // Exif 2.3, tag 0x0112: where the stored row 0 and column 0 are seen
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public async Task However_the_camera_was_held_the_picture_is_upright(int orientation)
    {
        var stored = Pictures.StoredFor(orientation, Pictures.Quarters());
        var photo = await Keep(Pictures.WithExif(Pictures.Jpeg(stored), Pictures.Exif(orientation)));
        (photo.WidthPx, photo.HeightPx).ShouldBe((480, 320));
        foreach (var size in (PhotoSize[])[PhotoSize.Small, PhotoSize.Large])
        {
            using var seen = Picture(photo, size);
            ShouldShowTheCorners(seen);
        }

        using var codec = SKCodec.Create(new MemoryStream(Read(photo, PhotoSize.Original)));
        ((int)codec.EncodedOrigin).ShouldBe(orientation);
    }

    [Fact]
    public async Task Place_and_all_other_metadata_are_gone_and_the_picture_is_untouched()
    {
        var plain = Pictures.Jpeg(Pictures.Quarters());
        var full = Pictures.WithExif(plain, Pictures.Exif(1));
        full = Pictures.WithSegment(full, 0xE1, Encoding.ASCII.GetBytes("http://ns.adobe.com/xap/1.0/\0<x exif:GPSLatitude='SECRET'/>"));
        full = Pictures.WithSegment(full, 0xED, Encoding.ASCII.GetBytes("Photoshop 3.0\0SECRET"));
        full = Pictures.WithSegment(full, 0xFE, Encoding.ASCII.GetBytes("SECRET comment"));
        full = [.. full, .. Encoding.ASCII.GetBytes("ftypmp42 SECRET film after the picture")];
        var photo = await Keep(full);
        Read(photo, PhotoSize.Original).ShouldBe(plain);
        foreach (var file in Files())
        {
            Encoding.Latin1.GetString(await File.ReadAllBytesAsync(file, TestContext.Current.CancellationToken)).ShouldNotContain("SECRET");
            (await ExifTool("-gps:all", "-xmp:all", "-iptc:all", "-comment", file)).ShouldBeEmpty();
        }

        photo.TakenAt.ShouldBe(new DateTime(2024, 7, 9, 18, 30, 5, DateTimeKind.Unspecified));
    }

    // the tests' own Exif block must be one that others can read, or the test above proves nothing
    [Fact]
    public async Task Planted_place_is_there_before()
    {
        var file = Path.Combine(Root, "planted.jpg");
        await File.WriteAllBytesAsync(file, Pictures.WithExif(Pictures.Jpeg(Pictures.Quarters()), Pictures.Exif(6)), TestContext.Current.CancellationToken);
        Tool.Need("exiftool");
        (await ExifTool("-gps:all", "-n", file)).ShouldContain("54.175");
    }

    [Fact]
    public async Task Orientation_alone_is_written_back()
    {
        var photo = await Keep(Pictures.WithExif(Pictures.Jpeg(Pictures.StoredFor(6, Pictures.Quarters())), Pictures.Exif(6)));
        Tool.Need("exiftool");
        (await ExifTool("-exif:all", "-n", Files().Single(f => f.EndsWith(photo.Hash + ".jpg", StringComparison.Ordinal)))).Trim().ShouldBe("6");
    }

    [Fact]
    public async Task Colour_profile_stays()
    {
        using var wide = new SKBitmap(new SKImageInfo(64, 64, SKColorType.Rgba8888, SKAlphaType.Opaque, SKColorSpace.CreateRgb(SKColorSpaceTransferFn.Srgb, SKColorSpaceXyz.DisplayP3)));
        var jpeg = Pictures.Jpeg(wide);
        Encoding.Latin1.GetString(jpeg).ShouldContain("ICC_PROFILE");
        Read(await Keep(jpeg), PhotoSize.Original).ShouldBe(jpeg);
    }

    [Fact]
    public async Task Same_photograph_twice_is_one_file_even_when_one_copy_has_lost_its_place()
    {
        var plain = Pictures.Jpeg(Pictures.Quarters());
        var first = await Keep(plain);
        var second = await Keep(Pictures.WithExif(plain, Pictures.Exif(1)), "again.jpg");
        second.Hash.ShouldBe(first.Hash);
        (first.WasHere, second.WasHere).ShouldBe((false, true));
        Files().Length.ShouldBe(3);
    }

    [Fact]
    public async Task Smaller_copy_that_was_lost_is_made_again()
    {
        var jpeg = Pictures.Jpeg(Pictures.Quarters());
        await Keep(jpeg);
        File.Delete(Files().Single(f => f.EndsWith(".320.jpg", StringComparison.Ordinal)));
        var photo = await Keep(jpeg);
        photo.WasHere.ShouldBeTrue();
        Picture(photo, PhotoSize.Small).Width.ShouldBe(320);
    }

    [Fact]
    public async Task Many_at_once_are_all_kept()
    {
        var jpegs = Enumerable.Range(0, 8).Select(i => Pictures.Jpeg(Pictures.Quarters(200 + (i / 2), 100))).ToList();
        var photos = await Task.WhenAll(jpegs.Select(j => Keep(j)));
        photos.Select(p => p.Hash).Distinct().Count().ShouldBe(4);
        Files().Length.ShouldBe(12);
    }

    [Theory]
    [InlineData(3000, 2000, 1280, 853, 320, 213)]
    [InlineData(2000, 3000, 853, 1280, 213, 320)]
    [InlineData(1281, 1281, 1280, 1280, 320, 320)]
    [InlineData(100, 50, 100, 50, 100, 50)]
    [InlineData(3000, 1, 1280, 1, 320, 1)]
    public async Task Smaller_copies_fit_and_never_grow(int w, int h, int largeW, int largeH, int smallW, int smallH)
    {
        var photo = await Keep(Pictures.Jpeg(new SKBitmap(w, h)));
        using var large = Picture(photo, PhotoSize.Large);
        using var small = Picture(photo, PhotoSize.Small);
        (large.Width, large.Height, small.Width, small.Height).ShouldBe((largeW, largeH, smallW, smallH));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(6)]
    public async Task Png_keeps_its_picture_and_its_orientation_and_loses_its_words(int orientation)
    {
        var stored = Pictures.StoredFor(orientation, Pictures.Quarters());
        var png = Pictures.Encode(stored, SKEncodedImageFormat.Png);
        png = Pictures.WithChunk(png, "tEXt", Encoding.ASCII.GetBytes("Comment\0SECRET"));
        png = Pictures.WithChunk(png, "eXIf", Pictures.Exif(orientation));
        var photo = await Keep(png, "screen.png");
        photo.ContentType.ShouldBe("image/png");
        photo.TakenAt.ShouldNotBeNull();
        var kept = Read(photo, PhotoSize.Original);
        Encoding.Latin1.GetString(kept).ShouldNotContain("SECRET");
        SKBitmap.Decode(kept).Bytes.ShouldBe(SKBitmap.Decode(png).Bytes);
        using var small = Picture(photo, PhotoSize.Small);
        ShouldShowTheCorners(small);
        Tool.Need("exiftool");
        var path = Files().Single(f => f.EndsWith(".png", StringComparison.Ordinal));
        (await ExifTool("-exif:all", "-n", path)).Trim().ShouldBe(orientation == 1 ? "" : "6");
        (await ExifTool("-validate", "-warning", path)).Trim().ShouldBe("OK");
    }

    [Fact]
    public async Task Webp_is_kept_as_jpeg()
    {
        var photo = await Keep(Pictures.Encode(Pictures.Quarters(), SKEncodedImageFormat.Webp), "heather.webp");
        photo.ContentType.ShouldBe("image/jpeg");
        using var original = Picture(photo, PhotoSize.Original);
        ShouldShowTheCorners(original);
    }

    [Theory]
    [InlineData("")]
    [InlineData("../../etc/passwd")]
    [InlineData("ABCDEF")]
    [InlineData("0000000000000000000000000000000000000000000000000000000000000000")]
    public void Only_a_hash_that_is_kept_opens(string hash) => Store.Open(hash, PhotoSize.Original).ShouldBeNull();

    [Fact]
    public async Task Half_received_files_of_a_killed_process_are_cleared_at_the_start()
    {
        var photo = await Keep(Pictures.Jpeg(Pictures.Quarters()));
        await File.WriteAllTextAsync(Path.Combine(Root, "incoming", "half"), "half", TestContext.Current.CancellationToken);
        Store.ClearHalfReceived();
        Files().Length.ShouldBe(3);
        Read(photo, PhotoSize.Original).ShouldNotBeEmpty();
    }

    private static async Task<string> ExifTool(params string[] arguments)
    {
        using var tool = System.Diagnostics.Process.Start(new System.Diagnostics.ProcessStartInfo(Tool.Need("exiftool"), ["-a", "-s3", .. arguments]) { RedirectStandardOutput = true, UseShellExecute = false })!;
        return await tool.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
    }

    private static void ShouldShowTheCorners(SKBitmap seen)
    {
        seen.Width.ShouldBeGreaterThan(seen.Height);
        var (x, y) = (seen.Width / 4, seen.Height / 4);
        SKColor[] corners = [seen.GetPixel(x, y), seen.GetPixel(3 * x, y), seen.GetPixel(x, 3 * y), seen.GetPixel(3 * x, 3 * y)];
        for (var i = 0; i < 4; i++)
        {
            var (is_, right) = (corners[i], Pictures.Corners[i]);
            (Math.Abs(is_.Red - right.Red) + Math.Abs(is_.Green - right.Green) + Math.Abs(is_.Blue - right.Blue)).ShouldBeLessThan(30, $"corner {i}");
        }
    }
}
