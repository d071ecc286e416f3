using System.Net;
using Microsoft.Extensions.DependencyInjection;

namespace Studio.Tests.SignIn;

/// <summary>Cookies, addresses and names: what the studio believes of a request, and what it asks a browser to keep.</summary>
public sealed class HostCookiesTests(StudioHosted studio) : IClassFixture<StudioHosted>
{
    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Plain_http_on_this_machine_keeps_plain_names()
    {
        using var browser = studio.Browser();
        using var entered = await StudioHosted.AskAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password);
        Cookie(entered, "studio=").ShouldSatisfyAllConditions(c => c.ShouldNotContain("secure", Case.Insensitive), c => c.ShouldContain("httponly", Case.Insensitive), c => c.ShouldContain("samesite=lax", Case.Insensitive));
        entered.Headers.Contains("Strict-Transport-Security").ShouldBeFalse();
    }

    // RFC 6265bis, 4.1.3.2: a __Host- cookie is Secure, has the path / and no domain
    [Fact]
    public async Task Over_https_both_cookies_are_tied_to_the_host()
    {
        using var browser = Secure();
        using var page = await browser.GetAsync(new Uri("/sign-in", UriKind.Relative), Cancel);
        using var entered = await StudioHosted.AskAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password);
        entered.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        foreach (var cookie in new[] { Cookie(page, "__Host-studio-form="), Cookie(entered, "__Host-studio=") })
        {
            cookie.ShouldContain("; secure", Case.Insensitive);
            cookie.ShouldContain("; path=/;", Case.Insensitive);
            cookie.ShouldContain("; httponly", Case.Insensitive);
            cookie.ShouldNotContain("domain", Case.Insensitive);
        }

        using var inside = await browser.GetAsync(new Uri("/commissions", UriKind.Relative), Cancel);
        inside.StatusCode.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Over_https_a_cookie_with_the_plain_name_counts_for_nothing()
    {
        using var browser = Secure();
        using var entered = await StudioHosted.AskAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password);
        var value = Cookie(entered, "__Host-studio=")["__Host-".Length..].Split(';')[0];

        (await WithAsync("https", value)).ShouldBe(HttpStatusCode.Redirect);
        (await WithAsync("https", "__Host-" + value)).ShouldBe(HttpStatusCode.OK);
    }

    [Theory]
    [InlineData("127.0.0.1", true)]
    [InlineData("192.0.2.1", false)]
    public async Task A_proxy_is_believed_on_this_machine_and_nowhere_else(string proxy, bool believed)
    {
        using var browser = studio.Browser();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/sign-in");
        request.Headers.Add(StudioHosted.From, proxy);
        request.Headers.Add("X-Forwarded-Proto", "https");
        request.Headers.Add("X-Forwarded-For", "203.0.113.9");
        using var page = await browser.SendAsync(request, Cancel);
        page.Headers.GetValues("Set-Cookie").Any(c => c.StartsWith("__Host-", StringComparison.Ordinal)).ShouldBe(believed);
    }

    [Fact]
    public async Task The_proxies_that_the_setting_names_are_believed_instead()
    {
        await using var behind = new StudioHosted { Settings = new Dictionary<string, string> { ["KnownProxies"] = "192.0.2.1, 172.16.0.0/12", ["AllowedHosts"] = "studio.example" } };
        (await SchemeAsync(behind, "192.0.2.1")).ShouldBe("https");
        (await SchemeAsync(behind, "172.18.0.1")).ShouldBe("https");
        (await SchemeAsync(behind, "127.0.0.1")).ShouldBe("http");
        await using var nobody = new StudioHosted { Settings = new Dictionary<string, string> { ["KnownProxies"] = "none", ["AllowedHosts"] = "studio.example" } };
        (await SchemeAsync(nobody, "127.0.0.1")).ShouldBe("http");
    }

    [Theory]
    [InlineData("localhost", HttpStatusCode.OK)]
    [InlineData("127.0.0.1", HttpStatusCode.OK)]
    [InlineData("[::1]", HttpStatusCode.OK)]
    [InlineData("machine", HttpStatusCode.OK)]
    [InlineData("evil.example", HttpStatusCode.BadRequest)]
    [InlineData("localhost.evil.example", HttpStatusCode.BadRequest)]
    [InlineData("192.168.1.20", HttpStatusCode.BadRequest)]
    public async Task The_studio_answers_under_its_own_names_alone(string host, HttpStatusCode expected) =>
        (await StatusAsync(studio, host is "machine" ? Dns.GetHostName() : host)).ShouldBe(expected);

    [Fact]
    public async Task The_address_for_phones_is_a_name_of_its_own_as_soon_as_it_is_set()
    {
        await using var own = new StudioHosted();
        await own.InitializeAsync();
        (await StatusAsync(own, "studio.example")).ShouldBe(HttpStatusCode.BadRequest);
        var book = own.Scope().ServiceProvider.GetRequiredService<Studio.Settings.SettingsBook>();
        var settings = await book.ReadAsync();
        settings.PublicUrl = "https://studio.example:8443/";
        (await book.SaveAsync(settings, "Wren")).Ok.ShouldBeTrue();

        (await StatusAsync(own, "studio.example")).ShouldBe(HttpStatusCode.OK);
        (await StatusAsync(own, "other.example")).ShouldBe(HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task The_setting_names_all_there_are()
    {
        await using var own = new StudioHosted { Settings = new Dictionary<string, string> { ["AllowedHosts"] = "studio.example;*.studio.example" } };
        (await StatusAsync(own, "studio.example")).ShouldBe(HttpStatusCode.OK);
        (await StatusAsync(own, "phone.studio.example")).ShouldBe(HttpStatusCode.OK);
        (await StatusAsync(own, "evil.example")).ShouldBe(HttpStatusCode.BadRequest);
    }

    private static async Task<string> SchemeAsync(StudioHosted host, string proxy)
    {
        using var browser = host.Browser();
        using var request = new HttpRequestMessage(HttpMethod.Get, "http://studio.example/fonts/none.ttf");
        request.Headers.Add(StudioHosted.From, proxy);
        request.Headers.Add("X-Forwarded-Proto", "https");
        using var answer = await browser.SendAsync(request, Cancel);
        // only over https, RFC 6797, 7.2
        return answer.Headers.Contains("Strict-Transport-Security") ? "https" : "http";
    }

    private static async Task<HttpStatusCode> StatusAsync(StudioHosted host, string name)
    {
        using var browser = host.Browser();
        using var request = new HttpRequestMessage(HttpMethod.Get, "/not-found");
        request.Headers.Host = name;
        using var answer = await browser.SendAsync(request, Cancel);
        return answer.StatusCode;
    }

    private static string Cookie(HttpResponseMessage answer, string name) => answer.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith(name, StringComparison.Ordinal));

    private HttpClient Secure() => studio.CreateClient(new() { AllowAutoRedirect = false, BaseAddress = new Uri("https://localhost") });

    private async Task<HttpStatusCode> WithAsync(string scheme, string cookie)
    {
        using var browser = studio.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = false, BaseAddress = new Uri(scheme + "://localhost") });
        using var request = new HttpRequestMessage(HttpMethod.Get, "/commissions");
        request.Headers.Add("Cookie", cookie);
        using var answer = await browser.SendAsync(request, Cancel);
        return answer.StatusCode;
    }
}
