using System.Net;
using System.Net.Http.Json;
using Microsoft.Extensions.DependencyInjection;
using SkiaSharp;
using Studio.Keepsakes;
using Studio.Tests.Files;
using Studio.Tests.Papers;
using UglyToad.PdfPig;
using ZXing;

namespace Studio.Tests.Keepsakes;

public sealed class KeepsakePapersTests(KeepsakeHost host) : IClassFixture<KeepsakeHost>
{
    private sealed record Answer(int Id);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_receipt_lists_every_number_with_the_familys_word_and_its_picture()
    {
        var (client, token) = await host.MakerAsync();
        var photo = await PhotoAsync(client, token);
        var (commission, numbers) = await host.TakeInAsync("26-101", ("heather from the hill", photo), ("hive nails", null));
        var answer = await client.GetAsync($"/papers/receipt/{commission}.pdf", Cancel);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/pdf");
        using var pdf = PdfDocument.Open(await answer.Content.ReadAsByteArrayAsync(Cancel));
        var words = string.Join(' ', pdf.GetPages().SelectMany(p => p.GetWords()).Select(w => w.Text));
        numbers.ShouldAllBe(n => words.Contains(n, StringComparison.Ordinal));
        words.ShouldContain("All of it may be cast in resin.");
        words.ShouldContain("4 Heather Brae");
        pdf.GetPages().Sum(p => p.NumberOfImages).ShouldBe(1);
    }

    [Fact]
    public async Task A_labels_square_opens_its_keepsake()
    {
        Tool.Need("pdftoppm");
        var (client, _) = await host.MakerAsync();
        var (commission, numbers) = await host.TakeInAsync("26-102", ("heather from the hill", null), ("hive nails", null));
        var sheet = PaperTools.Pages(await client.GetByteArrayAsync($"/papers/labels/{commission}.pdf?from=5", Cancel), 150).ShouldHaveSingleItem();
        var read = Decode(sheet);
        read.Select(r => new Uri(r).AbsolutePath).ShouldBe(numbers.Select(n => "/k/" + n), ignoreOrder: true);
        var page = await client.GetStringAsync(new Uri(read[0]).PathAndQuery, Cancel);
        page.ShouldContain("What the family permits");
    }

    [Fact]
    public async Task Only_the_ticked_ones_go_on_the_labels_and_a_start_off_the_sheet_begins_at_the_first()
    {
        Tool.Need("pdftoppm");
        var (client, _) = await host.MakerAsync();
        var (commission, numbers) = await host.TakeInAsync("26-103", ("heather", null), ("nails", null), ("buttons", null));
        await using var scope = host.Services.CreateAsyncScope();
        var second = (await scope.ServiceProvider.GetRequiredService<KeepsakeBook>().ForCommissionAsync(commission))[1];
        var sheet = PaperTools.Pages(await client.GetByteArrayAsync($"/papers/labels/{commission}.pdf?from=99&only={second.Id},x", Cancel), 150).ShouldHaveSingleItem();
        Decode(sheet).ShouldHaveSingleItem().ShouldEndWith(numbers[1]);
    }

    [Fact]
    public async Task A_commission_without_keepsakes_has_no_papers_and_says_so_with_a_page()
    {
        var (client, _) = await host.MakerAsync();
        var answer = await client.GetAsync("/papers/receipt/4711.pdf", Cancel);
        answer.StatusCode.ShouldBe(HttpStatusCode.NotFound);
        (await answer.Content.ReadAsStringAsync(Cancel)).ShouldContain("There is no page at this address");
    }

    [Fact]
    public async Task The_mail_names_every_number_and_survives_its_address_line()
    {
        await host.MakerAsync();
        var (commission, numbers) = await host.TakeInAsync("26-104", ("heather & hive", null), ("nails", null));
        await using var scope = host.Services.CreateAsyncScope();
        var mail = (await scope.ServiceProvider.GetRequiredService<KeepsakePaperBook>().MailAsync(commission, new HashSet<int>())).ShouldNotBeNull();
        numbers.ShouldAllBe(n => mail.Body.Contains(n, StringComparison.Ordinal));
        mail.Body.ShouldNotContain("!");
        // RFC 6068: line breaks are %0D%0A and a reserved character such as & is percent-encoded
        mail.Href.ShouldStartWith("mailto:isla@family.example?subject=");
        mail.Href.ShouldContain("%0D%0A");
        mail.Href.ShouldContain("heather%20%26%20hive");
    }

    private static async Task<int> PhotoAsync(HttpClient client, string token)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/photos") { Content = new ByteArrayContent(Pictures.Jpeg(Pictures.Quarters())) };
        request.Headers.Add("RequestVerificationToken", token);
        return (await (await client.SendAsync(request, Cancel)).Content.ReadFromJsonAsync<Answer>(Cancel))!.Id;
    }

    private static List<string> Decode(byte[] png)
    {
        using var bitmap = SKBitmap.Decode(png).Copy(SKColorType.Rgba8888);
        var reader = new BarcodeReaderGeneric { Options = { TryHarder = true, PossibleFormats = [BarcodeFormat.QR_CODE] } };
        return [.. (reader.DecodeMultiple(new RGBLuminanceSource(bitmap.Bytes, bitmap.Width, bitmap.Height, RGBLuminanceSource.BitmapFormat.RGBA32)) ?? []).Select(r => r.Text)];
    }
}
