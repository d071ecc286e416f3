using System.Net;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Studio.Data;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

public sealed class PeopleBookTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    public ValueTask InitializeAsync() => studio.InitializeAsync();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task The_last_owner_can_be_neither_retired_nor_demoted()
    {
        var wren = await Find("Wren");

        (await studio.People.RetireAsync(wren.Id, "Wren")).Words.ShouldContain("only owner");
        (await studio.People.ChangeRoleAsync(wren.Id, Roles.Maker, "Wren")).Words.ShouldContain("only owner");

        (await Find("Wren")).ShouldBe(wren);
    }

    [Fact]
    public async Task A_retired_owner_does_not_count_as_one()
    {
        await AddAsync("Ash", Roles.Owner);
        (await studio.People.RetireAsync((await Find("Ash")).Id, "Wren")).Ok.ShouldBeTrue();

        (await studio.People.RetireAsync((await Find("Wren")).Id, "Wren")).Ok.ShouldBeFalse();
    }

    [Fact]
    public async Task Two_owners_retiring_each_other_in_the_same_moment_leave_one()
    {
        await AddAsync("Ash", Roles.Owner);
        string wren = (await Find("Wren")).Id, ash = (await Find("Ash")).Id;

        var saves = await Task.WhenAll(Task.Run(() => studio.People.RetireAsync(wren, "Ash")), Task.Run(() => studio.People.RetireAsync(ash, "Wren")));

        saves.Count(s => s.Ok).ShouldBe(1);
        (await studio.People.ListAsync()).Count(p => p is { Retired: false, Role: Roles.Owner }).ShouldBe(1);
    }

    [Fact]
    public async Task A_retired_person_cannot_sign_in_until_brought_back()
    {
        await AddAsync("Ash", Roles.Maker);
        var ash = await Find("Ash");
        using var browser = studio.Browser();

        await studio.People.RetireAsync(ash.Id, "Wren");
        (await StudioHosted.SignInAsync(browser, ash.Email, StudioHosted.Password)).ShouldBeFalse();
        await studio.People.BringBackAsync(ash.Id, "Wren");
        (await StudioHosted.SignInAsync(browser, ash.Email, StudioHosted.Password)).ShouldBeTrue();
    }

    [Fact]
    public async Task A_retired_persons_open_sign_in_ends_at_the_next_request()
    {
        await AddAsync("Ash", Roles.Maker);
        var ash = await Find("Ash");
        using var browser = studio.Browser();
        (await StudioHosted.SignInAsync(browser, ash.Email, StudioHosted.Password)).ShouldBeTrue();
        (await StatusAsync(browser)).ShouldBe(HttpStatusCode.OK);

        await studio.People.RetireAsync(ash.Id, "Wren");

        (await StatusAsync(browser)).ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task A_new_password_replaces_the_old_one()
    {
        await AddAsync("Ash", Roles.FrontDesk);
        var ash = await Find("Ash");
        using var browser = studio.Browser();
        (await studio.People.SetPasswordAsync(ash.Id, "copper kettle moon", "Wren")).Ok.ShouldBeTrue();

        (await StudioHosted.SignInAsync(browser, ash.Email, StudioHosted.Password)).ShouldBeFalse();
        (await StudioHosted.SignInAsync(browser, ash.Email, "copper kettle moon")).ShouldBeTrue();
    }

    [Theory]
    [InlineData("", "ash@studio.example", "maker", "long enough words")]
    [InlineData("Ash", "", "maker", "long enough words")]
    [InlineData("Ash", "not an address", "maker", "long enough words")]
    [InlineData("Ash", "ash@studio.example", "emperor", "long enough words")]
    [InlineData("Ash", "ash@studio.example", "maker", "short")]
    [InlineData("Ash", StudioHosted.OwnerEmail, "maker", "long enough words")]
    public async Task What_cannot_be_a_person_is_refused_in_words(string name, string email, string role, string password)
    {
        var saved = await studio.People.AddAsync(new PersonForm { Name = name, Email = email, Role = role, Password = password }, "Wren");

        saved.Ok.ShouldBeFalse();
        saved.Words.ShouldEndWith(".");
        (await studio.People.ListAsync()).Select(p => p.Name).ShouldBe(["Wren"]);
    }

    [Fact]
    public async Task What_was_done_to_a_person_is_written_down_without_the_password()
    {
        await AddAsync("Ash", Roles.Maker);
        var ash = await Find("Ash");
        await studio.People.ChangeRoleAsync(ash.Id, Roles.FrontDesk, "Wren");
        await studio.People.SetPasswordAsync(ash.Id, "copper kettle moon", "Wren");

        await using var db = studio.Open();
        var written = string.Concat(await db.Set<AuditEntry>().Where(a => a.Entity == nameof(StudioUser)).Select(a => a.By + a.Changes).ToListAsync(TestContext.Current.CancellationToken));
        written.ShouldContain("front desk");
        written.ShouldContain("Password of Ash");
        written.ShouldNotContain("kettle");
    }

    [Fact]
    public async Task What_an_owner_does_to_people_and_what_is_refused_them_stands_at_the_door()
    {
        using var owner = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);
        var people = page.Services.GetRequiredService<PeopleBook>();
        await people.AddAsync(new PersonForm { Name = "Ash", Email = "ash@studio.example", Role = Roles.Maker, Password = StudioHosted.Password }, "Wren");
        var ash = await Find("Ash");
        using var browser = await studio.SignedInAsync(ash.Email);
        using var refused = await browser.GetAsync(new Uri("/papers/quote/1.pdf", UriKind.Relative), TestContext.Current.CancellationToken);
        using var settings = await browser.GetAsync(new Uri("/settings/people", UriKind.Relative), TestContext.Current.CancellationToken);
        await people.ChangeRoleAsync(ash.Id, Roles.FrontDesk, "Wren");
        await StatusAsync(browser);
        await StatusAsync(browser);
        await people.SetPasswordAsync(ash.Id, "copper kettle moon", "Wren");
        await people.RetireAsync(ash.Id, "Wren");
        await people.BringBackAsync(ash.Id, "Wren");

        var lines = (await page.Services.GetRequiredService<AccessBook>().ListAsync(20)).Lines.Select(l => l.Words).Reverse().ToList();
        lines.ShouldBe(
        [
            "Wren signed in, from 127.0.0.0/24.",
            "Ash was added as maker by Wren.",
            "Ash signed in, from 127.0.0.0/24.",
            "Ash asked for /settings/people, which their role does not reach, from 127.0.0.0/24.",
            "Ash is front desk from here on, set by Wren.",
            "A sign-in of Ash ended: their role changed by Wren.",
            "A browser brought a cookie of Ash that had ended; it was refused, from 127.0.0.0/24.",
            "A new password for Ash was set by Wren.",
            "Ash was retired by Wren.",
            "Ash may sign in again, brought back by Wren.",
        ]);
    }

    [Fact]
    public async Task A_maker_who_reaches_the_book_itself_changes_nobody()
    {
        await AddAsync("Ash", Roles.Maker);
        using var browser = await studio.SignedInAsync("ash@studio.example");
        await using var page = await studio.PageAsync("ash@studio.example");
        await Should.ThrowAsync<SignedOutException>(() => page.Services.GetRequiredService<PeopleBook>().RetireAsync((page.Person.FindFirst(System.Security.Claims.ClaimTypes.NameIdentifier)!).Value, "Ash"));
    }

    private static async Task<HttpStatusCode> StatusAsync(HttpClient browser)
    {
        using var answer = await browser.GetAsync(new Uri("/commissions", UriKind.Relative), TestContext.Current.CancellationToken);
        return answer.StatusCode;
    }

    private async Task AddAsync(string name, string role) =>
        (await studio.People.AddAsync(new PersonForm { Name = name, Email = $"{name}@studio.example", Role = role, Password = StudioHosted.Password }, "Wren")).Ok.ShouldBeTrue();

    private async Task<Person> Find(string name) => (await studio.People.ListAsync()).Single(p => p.Name == name);
}
