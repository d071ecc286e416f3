using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

public sealed class FirstStartTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    private string Code => studio.Services.GetRequiredService<FirstStart>().Code;

    public ValueTask InitializeAsync() => ValueTask.CompletedTask;

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Theory]
    [InlineData("")]
    [InlineData("?code=")]
    [InlineData("?code=000000000000")]
    public async Task Without_the_code_it_makes_nobody_and_says_where_the_code_is(string query)
    {
        var page = await PageAsync("/first-start" + query);
        page.ShouldContain("Code from the terminal");
        page.ShouldNotContain("Create the studio");
        page.ShouldNotContain("load-demo");
    }

    [Fact]
    public async Task With_the_code_it_offers_both()
    {
        var page = await PageAsync("/first-start?code=" + Code);
        page.ShouldContain("Create the studio");
        page.ShouldContain("load-demo");
        page.ShouldNotContain("Code from the terminal");
    }

    [Fact]
    public async Task A_form_that_is_sent_without_the_code_makes_nobody()
    {
        using var browser = studio.Browser();
        var page = await browser.GetStringAsync(new Uri("/first-start?code=" + Code, UriKind.Relative), TestContext.Current.CancellationToken);
        using var form = new FormUrlEncodedContent(StudioHosted.Hidden(page, "owner", new()
        {
            ["Input.Studio"] = "Ling",
            ["Input.Name"] = "Wren",
            ["Input.Email"] = StudioHosted.OwnerEmail,
            ["Input.Password"] = StudioHosted.Password,
            ["Input.Zone"] = "Europe/London",
            ["Input.Code"] = "000000000000",
        }));
        using var answer = await browser.PostAsync(new Uri("/first-start", UriKind.Relative), form, TestContext.Current.CancellationToken);
        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest); // without the code there is no such form
        (await studio.Services.GetRequiredService<FirstStart>().EmptyAsync()).ShouldBeTrue();
    }

    [Fact]
    public async Task The_owner_is_made_with_the_studio_and_is_signed_in()
    {
        using var browser = studio.Browser();
        var page = await browser.GetStringAsync(new Uri("/first-start?code=" + Code, UriKind.Relative), TestContext.Current.CancellationToken);
        using var form = new FormUrlEncodedContent(StudioHosted.Hidden(page, "owner", new()
        {
            ["Input.Studio"] = "Ling & Larch",
            ["Input.Name"] = "Wren",
            ["Input.Email"] = StudioHosted.OwnerEmail,
            ["Input.Password"] = StudioHosted.Password,
            ["Input.Zone"] = "Europe/London",
            ["Input.Code"] = Code,
        }));
        using var answer = await browser.PostAsync(new Uri("/first-start", UriKind.Relative), form, TestContext.Current.CancellationToken);
        answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
        (await browser.GetStringAsync(new Uri("/me", UriKind.Relative), TestContext.Current.CancellationToken)).ShouldContain("Ling &amp; Larch");
    }

    [Fact]
    public async Task What_the_studio_is_to_be_called_is_no_password()
    {
        var (user, wrong) = await studio.Services.GetRequiredService<FirstStart>().MakeOwnerAsync("Wren", StudioHosted.OwnerEmail, "Ling & Larch Castings", ("Ling & Larch Castings", "Europe/London"));
        user.ShouldBeNull();
        wrong.ShouldHaveSingleItem().ShouldContain("called");
    }

    private async Task<string> PageAsync(string path)
    {
        using var browser = studio.Browser();
        return await browser.GetStringAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
    }
}
