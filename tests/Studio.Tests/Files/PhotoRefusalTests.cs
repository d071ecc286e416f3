using System.Text;
using SkiaSharp;
using Studio.Data.Files;

namespace Studio.Tests.Files;

public sealed class PhotoRefusalTests : PhotoStoreTestBase
{
    private static readonly byte[] Whole = Pictures.Jpeg(Pictures.Quarters());

    [Fact]
    public async Task Empty_file() => (await Refused([])).ShouldStartWith("The file is empty.");

    // first bytes: ISO/IEC 14496-12 ftyp box with a HEIF brand; PE, ELF, PDF, GIF, TIFF signatures from memory
    [Theory]
    [InlineData("\0\0\0\u0018ftypheic\0\0\0\0mif1heic", "Most compatible")]
    [InlineData("\0\0\0\u0018ftypavif\0\0\0\0mif1", "JPEG")]
    [InlineData("\0\0\0\u0018ftypqt  \0\0\0\0qt  ", "film")]
    [InlineData("MZ\u0090\0\u0003\0\0\0\u0004\0\0\0\u00ff\u00ff", "program")]
    [InlineData("\u007fELF\u0002\u0001\u0001", "program")]
    [InlineData("%PDF-1.7 and more", "PDF")]
    [InlineData("GIF89a and more of it", "GIF")]
    [InlineData("II*\0\u0008\0\0\0", "TIFF")]
    [InlineData("A letter to my sister", "not a photograph")]
    [InlineData("x", "not a photograph")]
    public async Task Something_else_under_a_photographs_name(string start, string says) =>
        (await Refused(Encoding.Latin1.GetBytes(start), "IMG_0001.jpg")).ShouldContain(says);

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.95)]
    public async Task Jpeg_that_ends_too_soon(double share) =>
        (await Refused(Whole[..(int)(Whole.Length * share)])).ShouldContain("ends before it is whole");

    [Fact]
    public async Task Jpeg_without_its_last_byte() => (await Refused(Whole[..^1])).ShouldContain("ends before it is whole");

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.9)]
    public async Task Png_that_ends_too_soon(double share)
    {
        var png = Pictures.Encode(Pictures.Quarters(), SKEncodedImageFormat.Png);
        (await Refused(png[..(int)(png.Length * share)], "a.png")).ShouldContain("ends before it is whole");
    }

    [Fact]
    public async Task Webp_that_ends_too_soon()
    {
        var webp = Pictures.Encode(Pictures.Quarters(), SKEncodedImageFormat.Webp, 90);
        (await Refused(webp[..(webp.Length / 2)], "a.webp")).ShouldContain("again");
    }

    [Fact]
    public async Task Start_of_a_jpeg_and_nothing_sensible_after_it()
    {
        byte[] nonsense = [0xFF, 0xD8, 0xFF, .. Enumerable.Range(0, 5000).Select(i => (byte)(i * 7))];
        (await Refused(nonsense)).ShouldContain("damaged");
    }

    [Theory]
    [InlineData(60_000, 60_000)]
    [InlineData(4_294_967_295, 4_294_967_295)]
    [InlineData(10_001, 10_000)]
    public async Task Small_file_that_would_unfold_to_a_huge_picture(uint width, uint height)
    {
        var before = GC.GetTotalMemory(forceFullCollection: true);
        (await Refused(Pictures.PngHeader(width, height), "bomb.png")).ShouldContain("million that can be opened");
        (GC.GetTotalMemory(forceFullCollection: true) - before).ShouldBeLessThan(50_000_000);
    }

    [Fact]
    public async Task Picture_without_a_pixel() => (await Refused(Pictures.PngHeader(0, 10), "none.png")).ShouldContain("damaged");

    [Fact]
    public async Task Picture_that_moves()
    {
        var png = Pictures.Encode(Pictures.Quarters(), SKEncodedImageFormat.Png);
        (await Refused(Pictures.WithChunk(png, "acTL", [0, 0, 0, 2, 0, 0, 0, 0]), "moves.png")).ShouldContain("moving");
    }

    [Fact]
    public async Task File_over_forty_megabytes_is_refused_while_it_arrives()
    {
        byte[] large = [.. Whole, .. new byte[41 * 1024 * 1024]];
        using var content = new MemoryStream(large);
        var outcome = await Store.AddAsync(content, "large.jpg", TestContext.Current.CancellationToken);
        outcome.Refusal!.ShouldContain("40 MB");
        content.Position.ShouldBeLessThan(large.Length);
        Files().ShouldBeEmpty();
    }

    [Fact]
    public async Task Connection_that_breaks_off_leaves_nothing()
    {
        await using var broken = new BreakingStream(Whole, new IOException("reset"));
        var outcome = await Store.AddAsync(broken, "a.jpg", TestContext.Current.CancellationToken);
        outcome.Refusal!.ShouldContain("connection");
        Files().ShouldBeEmpty();
    }

    [Fact]
    public async Task Transfer_that_is_cancelled_leaves_nothing()
    {
        await using var cancelled = new BreakingStream(Whole, new OperationCanceledException());
        await Should.ThrowAsync<OperationCanceledException>(() => Store.AddAsync(cancelled, "a.jpg", TestContext.Current.CancellationToken));
        Files().ShouldBeEmpty();
    }

    [Fact]
    public async Task Folder_that_cannot_be_written_is_said_and_not_thrown()
    {
        var inTheWay = Path.Combine(Root, "a-file");
        await File.WriteAllTextAsync(inTheWay, "", TestContext.Current.CancellationToken);
        using var store = new PhotoStore(inTheWay);
        var outcome = await store.AddAsync(new MemoryStream(Whole), "a.jpg", TestContext.Current.CancellationToken);
        outcome.Refusal!.ShouldContain("Nothing was kept");
    }

    // errno 28 is ENOSPC on Linux, from memory; .NET passes it on as the exception's HResult
    [Theory]
    [InlineData(28, "disk is full")]
    [InlineData(unchecked((int)0x80070070), "disk is full")]
    [InlineData(5, "look at the disk")]
    public void Full_disk_is_told_from_other_trouble(int hresult, string says) =>
        PhotoStore.Sentence(new IOException("x", hresult)).ShouldContain(says);

    [Fact]
    public void Folder_without_permission_is_said() =>
        PhotoStore.Sentence(new UnauthorizedAccessException()).ShouldContain("may not write");

    [Fact]
    public async Task Damaged_exif_costs_the_facts_and_not_the_photograph()
    {
        for (var cut = 0; cut < 120; cut += 7)
        {
            var exif = Pictures.Exif(6)[..cut];
            (await Keep(Pictures.WithExif(Whole, exif))).WidthPx.ShouldBeOneOf(480, 320);
        }

        byte[] wild = [.. "II*\0"u8, 8, 0, 0, 0, 0xFF, 0xFF, .. Enumerable.Repeat((byte)0xFF, 60)];
        (await Keep(Pictures.WithExif(Whole, wild))).TakenAt.ShouldBeNull();
        (await Keep(Pictures.WithExif(Whole, Pictures.Exif(1, "0000:00:00 00:00:00")))).TakenAt.ShouldBeNull();
    }

    private sealed class BreakingStream(byte[] content, Exception breaks) : MemoryStream(content)
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) =>
            Position >= 1000 ? throw breaks : base.ReadAsync(buffer[..Math.Min(500, buffer.Length)], cancellationToken);
    }
}
