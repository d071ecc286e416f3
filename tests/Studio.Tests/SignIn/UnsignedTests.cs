using System.Net;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.Routing.Patterns;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;

namespace Studio.Tests.SignIn;

/// <summary>Every address the host answers to is asked without a cookie.</summary>
public sealed class UnsignedTests(StudioHosted studio) : IClassFixture<StudioHosted>
{
    // whoever adds an address that is open to the world adds it here, with the reason
    private static readonly Dictionary<string, string> Open = new(StringComparer.Ordinal)
    {
        ["/api/readings"] = "a sensor has a token of its own; ReadingPathsTests asks it with none and with a wrong one",
        ["/first-start"] = "nobody can sign in yet; it asks for the code that the terminal printed",
        ["/fonts/{name}.ttf"] = "the sign-in page is set in the studio's own faces; nothing of the studio's is in them",
        ["/not-found"] = "says that there is no such page, and nothing else",
        ["/sign-in"] = "the way in",
        ["/trouble"] = "says that something went wrong, also with the sign-in itself",
    };

    private IEnumerable<RouteEndpoint> Endpoints => studio.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>();

    [Fact]
    public async Task Nothing_is_reachable_unsigned_but_what_says_so()
    {
        using var browser = studio.Browser();
        var wrong = new List<string>();
        var asked = 0;
        foreach (var endpoint in Endpoints.Where(e => !IsOpen(e)))
        {
            using var request = new HttpRequestMessage(Method(endpoint), Filled(endpoint.RoutePattern));
            using var answer = await browser.SendAsync(request, TestContext.Current.CancellationToken);
            asked++;
            var sent = answer.StatusCode == HttpStatusCode.Redirect && answer.Headers.Location!.AbsolutePath == "/sign-in";
            if (!sent && answer.StatusCode is not (HttpStatusCode.Unauthorized or HttpStatusCode.Forbidden))
            {
                wrong.Add($"{request.Method} {request.RequestUri} answered {answer.StatusCode}");
            }
        }

        wrong.ShouldBeEmpty();
        asked.ShouldBeGreaterThan(10);
    }

    [Fact]
    public void The_addresses_open_to_the_world_are_these_and_no_others() =>
        Endpoints.Where(e => IsOpen(e) && e.Metadata.GetMetadata<StaticAssetDescriptor>() is null)
            .Select(e => "/" + e.RoutePattern.RawText!.TrimStart('/')).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ShouldBe(Open.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("/settings")]
    [InlineData("/settings/people")]
    [InlineData("/settings/history")]
    [InlineData("/jobs")]
    public async Task A_makers_sign_in_does_not_reach_the_owners_pages(string path)
    {
        var email = $"maker{path.Length}@studio.example";
        (await studio.People.AddAsync(new Studio.SignIn.PersonForm { Name = "Ash", Email = email, Password = StudioHosted.Password, Role = Studio.SignIn.Roles.Maker }, "Wren")).Ok.ShouldBeTrue();
        using var browser = studio.Browser();
        (await StudioHosted.SignInAsync(browser, email, StudioHosted.Password)).ShouldBeTrue();

        using var answer = await browser.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

        answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        answer.Headers.Location!.AbsolutePath.ShouldBe("/not-yours");
        using var commissions = await browser.GetAsync(new Uri("/commissions", UriKind.Relative), TestContext.Current.CancellationToken);
        commissions.StatusCode.ShouldBe(HttpStatusCode.OK);
    }

    private static bool IsOpen(RouteEndpoint endpoint) => endpoint.Metadata.GetMetadata<IAllowAnonymous>() is not null;

    private static HttpMethod Method(RouteEndpoint endpoint) =>
        endpoint.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods is { Count: > 0 } methods && !methods.Contains("GET") ? new HttpMethod(methods[0]) : HttpMethod.Get;

    private static Uri Filled(RoutePattern pattern) => new(
        "/" + string.Join('/', pattern.PathSegments.Select(s => string.Concat(s.Parts.Select(Part)))),
        UriKind.Relative);

    private static string Part(RoutePatternPart part) => part switch
    {
        RoutePatternLiteralPart literal => literal.Content,
        RoutePatternSeparatorPart separator => separator.Content,
        RoutePatternParameterPart parameter => parameter.ParameterPolicies.Any(p => p.Content is "int" or "long") ? "1" : "x",
        _ => "",
    };
}
