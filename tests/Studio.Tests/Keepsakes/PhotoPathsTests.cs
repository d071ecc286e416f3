using System.Net;
using System.Net.Http.Json;
using SkiaSharp;
using Studio.Tests.Files;

namespace Studio.Tests.Keepsakes;

public sealed class PhotoPathsTests(KeepsakeHost host) : IClassFixture<KeepsakeHost>
{
    private static readonly byte[] Whole = Pictures.Jpeg(Pictures.Quarters());

    private sealed record Answer(int Id, string Hash, int WidthPx, int HeightPx, string? Words);

    [Fact]
    public async Task Nobody_unsigned_sends_or_sees_a_photograph()
    {
        using var stranger = host.Stranger();
        var sent = await SendAsync(stranger, "none", Whole, "heather.jpg");
        sent.StatusCode.ShouldBeOneOf(HttpStatusCode.Redirect, HttpStatusCode.Unauthorized);
        var seen = await stranger.GetAsync($"/photos/{new string('a', 64)}/small", Cancel);
        seen.StatusCode.ShouldBeOneOf(HttpStatusCode.Redirect, HttpStatusCode.Unauthorized);
        var label = await stranger.GetAsync("/k/KS-26-00001-6", Cancel);
        label.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        label.Headers.Location!.ToString().ShouldContain("/sign-in");
    }

    [Fact]
    public async Task Another_sites_form_cannot_send_a_photograph()
    {
        var (client, _) = await host.MakerAsync();
        var answer = await SendAsync(client, "a-token-from-nowhere", Whole, "heather.jpg");
        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await WordsAsync(answer)).ShouldContain("Sign in again");
    }

    [Fact]
    public async Task A_photograph_comes_back_upright_small_and_never_changes()
    {
        var (client, token) = await host.MakerAsync();
        // EXIF orientation 6: the camera was held upright, so width and height change places (EXIF 2.32, tag 0x0112)
        var turned = Pictures.WithExif(Pictures.Jpeg(Pictures.StoredFor(6, Pictures.Quarters(3000, 2000))), Pictures.Exif(6));
        var kept = (await (await SendAsync(client, token, turned, "wild heather é.jpg")).Content.ReadFromJsonAsync<Answer>(Cancel))!;
        (kept.WidthPx, kept.HeightPx).ShouldBe((3000, 2000));
        var small = await client.GetAsync($"/photos/{kept.Hash}/small", Cancel);
        small.Content.Headers.ContentType!.MediaType.ShouldBe("image/jpeg");
        small.Headers.CacheControl!.ToString().ShouldContain("immutable");
        small.Headers.GetValues("X-Content-Type-Options").ShouldBe(["nosniff"]);
        using var picture = SKBitmap.Decode(await small.Content.ReadAsByteArrayAsync(Cancel));
        (picture.Width, picture.Height).ShouldBe((320, 213));
        (await client.GetAsync($"/photos/{kept.Hash}/original", Cancel)).StatusCode.ShouldBe(HttpStatusCode.OK);
        (await client.GetAsync($"/photos/{kept.Hash}/huge", Cancel)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await client.GetAsync("/photos/..%2F..%2Fstudio.db/original", Cancel)).StatusCode.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public async Task What_is_no_photograph_is_refused_with_what_to_do()
    {
        var (client, token) = await host.MakerAsync();
        var cases = new (string Name, byte[] Content, string Says)[]
        {
            ("IMG_0001.HEIC", [0, 0, 0, 24, .. "ftypheic"u8, 0, 0, 0, 0, .. "mif1heic"u8], "Most compatible"),
            ("holiday.jpg", [.. "MZ"u8, .. new byte[2000]], "program"),
            ("half.jpg", Whole[..(Whole.Length / 2)], "again"),
            ("bomb.png", Pictures.PngHeader(60_000, 60_000), "."),
            ("empty.jpg", [], "empty"),
        };
        foreach (var (name, content, says) in cases)
        {
            var answer = await SendAsync(client, token, content, name);
            answer.StatusCode.ShouldBe(HttpStatusCode.UnprocessableEntity, name);
            var words = await WordsAsync(answer);
            words.ShouldContain(says, Case.Insensitive, name);
            words.ShouldNotContain("Exception", Case.Insensitive, name);
        }
    }

    [Fact]
    public async Task More_than_forty_megabytes_is_refused_before_it_is_read_and_while_it_is_read()
    {
        var (client, token) = await host.MakerAsync();
        var large = new byte[(40 * 1024 * 1024) + 1];
        Whole.CopyTo(large, 0);
        var said = await SendAsync(client, token, large, "large.jpg");
        said.StatusCode.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
        (await WordsAsync(said)).ShouldContain("40 MB");
        var unsaid = await SendAsync(client, token, large, "large.jpg", chunked: true);
        unsaid.StatusCode.ShouldBe(HttpStatusCode.UnprocessableEntity);
        (await WordsAsync(unsaid)).ShouldContain("40 MB");
    }

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    private static async Task<string> WordsAsync(HttpResponseMessage answer) => (await answer.Content.ReadFromJsonAsync<Answer>(Cancel))!.Words!;

    private static async Task<HttpResponseMessage> SendAsync(HttpClient client, string token, byte[] content, string name, bool chunked = false)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/photos") { Content = new ByteArrayContent(content) };
        request.Headers.Add("RequestVerificationToken", token);
        request.Headers.Add("X-File-Name", Uri.EscapeDataString(name));
        if (chunked)
        {
            request.Headers.TransferEncodingChunked = true;
            request.Content.Headers.ContentLength = null;
        }

        return await client.SendAsync(request, Cancel);
    }
}
