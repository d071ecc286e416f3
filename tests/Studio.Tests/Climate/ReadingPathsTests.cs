using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using Studio.Climate;
using Studio.Tests.SignIn;

namespace Studio.Tests.Climate;

public sealed class ReadingPathsTests(StudioHosted studio) : IClassFixture<StudioHosted>
{
    [Fact]
    public async Task A_sensor_posts_with_its_token_and_with_nothing_else()
    {
        using var scope = studio.Scope("Wren");
        var book = scope.ServiceProvider.GetRequiredService<SensorBook>();
        var made = await book.SaveAsync(new() { Name = "Shelf" }, "Wren");
        using var client = studio.CreateClient();
        (await PostAsync(client, null, """{"celsius":20}""")).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
        (await PostAsync(client, "guess", """{"celsius":20}""")).StatusCode.ShouldBe(HttpStatusCode.Unauthorized);
        var kept = await PostAsync(client, made.Token, """{"celsius":20,"humidityPercent":50}""");
        kept.StatusCode.ShouldBe(HttpStatusCode.OK);
        (await kept.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)).ShouldBe("""{"kept":1,"folded":0,"doubts":[]}""");
        var wrong = await PostAsync(client, made.Token, """[{"celsius":21,"at":"2026-03-02T08:50:00Z"},{"celsius":null}]""");
        wrong.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        var words = await wrong.Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        words.ShouldContain("\"kept\":1");
        words.ShouldContain("[1].celsius");
        (await PostAsync(client, made.Token, new string(' ', 1_100_000))).StatusCode.ShouldBe(HttpStatusCode.RequestEntityTooLarge);
        await book.RemoveAsync(made.Saved.Id, "Wren");
        (await PostAsync(client, made.Token, """{"celsius":20}""")).StatusCode.ShouldBe(HttpStatusCode.Gone);
    }

    [Fact]
    public async Task A_flood_is_asked_to_slow_down()
    {
        using var scope = studio.Scope("Wren");
        var made = await scope.ServiceProvider.GetRequiredService<SensorBook>().SaveAsync(new() { Name = "Flood" }, "Wren");
        using var client = studio.CreateClient();
        var answers = new List<HttpStatusCode>();
        for (var i = 0; i < 300 && !answers.Contains(HttpStatusCode.TooManyRequests); i++)
        {
            answers.Add((await PostAsync(client, made.Token, """{"celsius":20}""")).StatusCode);
        }

        answers.ShouldContain(HttpStatusCode.TooManyRequests);
        answers.Count(a => a == HttpStatusCode.OK).ShouldBeGreaterThan(60, "once a second is welcome");
    }

    private static async Task<HttpResponseMessage> PostAsync(HttpClient client, string? token, string body)
    {
        using var request = new HttpRequestMessage(HttpMethod.Post, "/api/readings") { Content = new StringContent(body, Encoding.UTF8, "application/json") };
        if (token is not null)
        {
            request.Headers.Authorization = new AuthenticationHeaderValue("Bearer", token);
        }

        return await client.SendAsync(request, TestContext.Current.CancellationToken);
    }
}
