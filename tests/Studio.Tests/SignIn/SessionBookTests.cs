using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>What everybody may see and do about their own sign-ins.</summary>
public sealed class SessionBookTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    public ValueTask InitializeAsync() => studio.InitializeAsync();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task The_list_is_ones_own_and_knows_which_is_this_one()
    {
        await studio.AddAsync("Ash", Roles.FrontDesk);
        using var other = await studio.SignedInAsync("ash@studio.example");
        using var first = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        studio.Clock.Advance(TimeSpan.FromDays(1));
        using var second = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);

        var mine = await Book(page).MineAsync();

        (mine.Name, mine.Role, mine.Email).ShouldBe(("Wren", Roles.Owner, StudioHosted.OwnerEmail));
        mine.Sessions.Select(s => s.Here).ShouldBe([true, false]);
        mine.Sessions.ShouldAllBe(s => s.Network == "127.0.0.0/24" && s.Extends);
        (mine.Sessions[0].EndsAt - mine.Sessions[0].SeenAt).TotalDays.ShouldBe(14);
    }

    [Fact]
    public async Task Signing_out_everywhere_else_leaves_this_one()
    {
        using var phone = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        using var desk = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);

        (await Book(page).EndOthersAsync()).Ok.ShouldBeTrue();

        (await StatusAsync(phone)).ShouldBe(HttpStatusCode.Redirect);
        (await StatusAsync(desk)).ShouldBe(HttpStatusCode.OK);
        (await Book(page).MineAsync()).Sessions.ShouldHaveSingleItem();
    }

    [Fact]
    public async Task Nobody_ends_a_sign_in_that_is_not_theirs()
    {
        await studio.AddAsync("Ash", Roles.FrontDesk);
        using var owner = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var owners = await studio.PageAsync(StudioHosted.OwnerEmail);
        using var ash = await studio.SignedInAsync("ash@studio.example");
        await using var page = await studio.PageAsync("ash@studio.example");

        await Book(page).EndAsync((await Book(owners).MineAsync()).Sessions[0].Id);

        (await StatusAsync(owner)).ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Ones_own_password_needs_the_present_one_and_ends_the_other_sign_ins()
    {
        using var phone = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        studio.Clock.Advance(TimeSpan.FromSeconds(1));
        using var desk = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);
        (await Book(page).ChangePasswordAsync("not the present one", "copper kettle moon")).Words.ShouldContain("present password");
        (await Book(page).ChangePasswordAsync(StudioHosted.Password, "Wren12345678")).Words.ShouldContain("called");
        (await StatusAsync(phone)).ShouldBe(HttpStatusCode.OK);

        (await Book(page).ChangePasswordAsync(StudioHosted.Password, "copper kettle moon")).Words.ShouldBe("");

        (await StatusAsync(phone)).ShouldBe(HttpStatusCode.Redirect);
        (await StatusAsync(desk)).ShouldBe(HttpStatusCode.OK);
        (await page.WriteAsync("still here")).Ok.ShouldBeTrue();
        using var anew = studio.Browser();
        (await StudioHosted.SignInAsync(anew, StudioHosted.OwnerEmail, StudioHosted.Password)).ShouldBeFalse();
        (await StudioHosted.SignInAsync(anew, StudioHosted.OwnerEmail, "copper kettle moon")).ShouldBeTrue();
    }

    [Fact]
    public async Task The_present_password_cannot_be_guessed_at_an_open_page()
    {
        using var desk = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);
        for (var i = 0; i < Tries.FreeHere; i++)
        {
            await Book(page).ChangePasswordAsync("a guess " + i, "copper kettle moon");
        }

        (await Book(page).ChangePasswordAsync(StudioHosted.Password, "copper kettle moon")).Ok.ShouldBeFalse();
        studio.Clock.Advance(TimeSpan.FromSeconds(2));
        (await Book(page).ChangePasswordAsync(StudioHosted.Password, "copper kettle moon")).Ok.ShouldBeTrue();
    }

    [Fact]
    public async Task The_page_of_ones_own_shows_where_one_is_signed_in()
    {
        await studio.AddAsync("Ash", Roles.FrontDesk);
        using var ash = await studio.SignedInAsync("ash@studio.example");
        var page = await ash.GetStringAsync(new Uri("/me", UriKind.Relative), TestContext.Current.CancellationToken);
        page.ShouldContain("this one");
        page.ShouldContain("ash@studio.example");
        page.ShouldNotContain(StudioHosted.OwnerEmail);
    }

    private static SessionBook Book(OpenPage page) => page.Services.GetRequiredService<SessionBook>();

    private static async Task<HttpStatusCode> StatusAsync(HttpClient browser)
    {
        using var answer = await browser.GetAsync(new Uri("/commissions", UriKind.Relative), TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }
}
