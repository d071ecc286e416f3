using System.Net;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Studio.Data;
using Studio.Moulds;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>A sign-in that has ended is over everywhere: in other tabs, for a copied cookie, in pages that stay open.</summary>
public sealed class EndedTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => studio.InitializeAsync();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Theory]
    [InlineData("retired")]
    [InlineData("demoted")]
    [InlineData("given a new password")]
    [InlineData("removed")]
    [InlineData("signed out")]
    [InlineData("ended elsewhere")]
    [InlineData("owner-password")]
    public async Task An_open_page_of_somebody_who_is_can_neither_write_nor_stay(string what)
    {
        var id = await studio.AddAsync("Ash", Roles.Owner);
        using var browser = await studio.SignedInAsync("ash@studio.example");
        await using var page = await studio.PageAsync("ash@studio.example");
        (await page.WriteAsync("before")).Ok.ShouldBeTrue();
        (await page.MayStayAsync()).ShouldBeTrue();

        await HappenAsync(what, id, browser);
        // the longest that anything is remembered; the page itself looks after half a minute
        studio.Clock.Advance(TimeSpan.FromSeconds(StillAllowed.EverySeconds));

        await Should.ThrowAsync<SignedOutException>(() => page.WriteAsync("after"));
        (await page.MayStayAsync()).ShouldBeFalse();
        (await studio.Scope().ServiceProvider.GetRequiredService<Studio.Settings.SettingsBook>().ReadAsync()).TaxName.ShouldBe("before");
        (await StatusAsync(browser)).ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task A_demoted_makers_open_page_takes_no_file_and_no_write_past_the_tracker()
    {
        var id = await studio.AddAsync("Ash", Roles.Maker);
        using var browser = await studio.SignedInAsync("ash@studio.example");
        await using var page = await studio.PageAsync("ash@studio.example");
        await studio.People.ChangeRoleAsync(id, Roles.FrontDesk, "Wren");

        await Should.ThrowAsync<SignedOutException>(() => page.Services.GetRequiredService<MouldBook>().ReceiveAsync(Stream.Null, "a.stl", _ => { }, Cancel));
        await using var db = page.Services.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext();
        await Should.ThrowAsync<SignedOutException>(() => db.Set<AuditEntry>().ExecuteDeleteAsync(Cancel));
        await Should.ThrowAsync<SignedOutException>(() => db.Set<AuditEntry>().ExecuteUpdateAsync(a => a.SetProperty(e => e.By, "x"), Cancel));
        await Should.ThrowAsync<SignedOutException>(() => db.Database.ExecuteSqlAsync($"delete from AuditEntry", Cancel));
        Should.Throw<SignedOutException>(() => db.SaveChanges());
    }

    [Fact]
    public async Task Where_nobody_is_signed_in_nothing_is_written_and_nobody_is_named()
    {
        using var scope = studio.Services.CreateScope();
        await Should.ThrowAsync<SignedOutException>(scope.ServiceProvider.GetRequiredService<Who>().NameAsync);
        await Should.ThrowAsync<SignedOutException>(() => scope.ServiceProvider.GetRequiredService<StudioDb>().SaveChangesAsync(Cancel));
        await Should.ThrowAsync<SignedOutException>(() => scope.ServiceProvider.GetRequiredService<PeopleBook>().BringBackAsync("anybody", "Wren"));
    }

    [Fact]
    public async Task What_an_open_page_writes_bears_the_name_of_whoever_is_signed_in_where_the_book_names_nobody()
    {
        using var browser = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);
        await using var db = page.Services.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext();
        await db.SaveChangesAsync(Cancel);
        db.By.ShouldBe("Wren");
    }

    [Fact]
    public async Task The_look_itself_ends_an_open_page()
    {
        await using var quick = new StudioHosted { Every = 1 };
        await quick.InitializeAsync();
        var id = await quick.AddAsync("Ash", Roles.Maker);
        using var browser = await quick.SignedInAsync("ash@studio.example");
        await using var page = await quick.PageAsync("ash@studio.example");
        var told = new TaskCompletionSource<bool>(TaskCreationOptions.RunContinuationsAsynchronously);
        page.Services.GetRequiredService<AuthenticationStateProvider>().AuthenticationStateChanged += async now => told.TrySetResult((await now).User.Identity?.IsAuthenticated == true);

        await quick.People.RetireAsync(id, "Wren");

        (await told.Task.WaitAsync(TimeSpan.FromMinutes(1), Cancel)).ShouldBeFalse();
    }

    [Fact]
    public async Task A_copied_cookie_is_worth_nothing_after_its_owner_signed_out()
    {
        using var browser = studio.Browser();
        using var entered = await StudioHosted.AskAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password);
        var copied = entered.Headers.GetValues("Set-Cookie").Single(c => c.StartsWith(SignInSetup.Cookie + "=", StringComparison.Ordinal)).Split(';')[0];
        (await WithAsync(copied)).ShouldBe(HttpStatusCode.OK);

        await StudioHosted.SignOutAsync(browser);

        (await WithAsync(copied)).ShouldBe(HttpStatusCode.Redirect);
    }

    [Fact]
    public async Task Signing_out_ends_this_sign_in_and_no_other()
    {
        using var phone = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        using var desk = await studio.SignedInAsync(StudioHosted.OwnerEmail);

        await StudioHosted.SignOutAsync(phone);

        (await StatusAsync(phone)).ShouldBe(HttpStatusCode.Redirect);
        (await StatusAsync(desk)).ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task Signing_in_again_at_the_same_browser_ends_the_sign_in_before()
    {
        using var browser = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);
        (await StudioHosted.SignInAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password)).ShouldBeTrue();

        (await page.MayStayAsync()).ShouldBeFalse();
        (await StatusAsync(browser)).ShouldBe(HttpStatusCode.OK);
    }

    [Theory]
    [InlineData(13.9, 1, true)]
    [InlineData(14.1, 1, false)] // unused
    [InlineData(7, 4, true)]
    [InlineData(7, 5, false)] // 35 days, used all along
    public async Task A_sign_in_ends_unused_after_fourteen_days_and_in_any_case_after_thirty(double everyDays, int times, bool stands)
    {
        using var browser = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        for (var i = 0; i < times; i++)
        {
            studio.Clock.Advance(TimeSpan.FromDays(everyDays));
            (await StatusAsync(browser)).ShouldBe(stands || i < times - 1 ? HttpStatusCode.OK : HttpStatusCode.Redirect);
        }
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Acting_in_an_open_page_is_use_and_leaving_it_open_is_none(bool acts)
    {
        using var browser = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await using var page = await studio.PageAsync(StudioHosted.OwnerEmail);
        studio.Clock.Advance(TimeSpan.FromDays(10));
        if (acts)
        {
            (await page.WriteAsync("still at work")).Ok.ShouldBeTrue();
        }

        (await page.MayStayAsync()).ShouldBeTrue();
        studio.Clock.Advance(TimeSpan.FromDays(10));
        (await page.MayStayAsync()).ShouldBe(acts);
    }

    private async Task HappenAsync(string what, string id, HttpClient browser)
    {
        switch (what)
        {
            case "retired":
                await studio.People.RetireAsync(id, "Wren");
                break;
            case "demoted":
                await studio.People.ChangeRoleAsync(id, Roles.FrontDesk, "Wren");
                break;
            case "given a new password":
                (await studio.People.SetPasswordAsync(id, "copper kettle moon", "Wren")).Ok.ShouldBeTrue();
                break;
            case "removed":
                await using (var db = studio.Open())
                {
                    await db.Users.Where(u => u.Id == id).ExecuteDeleteAsync(Cancel);
                }

                break;
            case "signed out":
                await StudioHosted.SignOutAsync(browser);
                break;
            case "ended elsewhere":
                studio.Clock.Advance(TimeSpan.FromSeconds(1));
                using (await studio.SignedInAsync("ash@studio.example"))
                {
                    await using var other = await studio.PageAsync("ash@studio.example");
                    (await other.Services.GetRequiredService<SessionBook>().EndOthersAsync()).Ok.ShouldBeTrue();
                }

                break;
            default:
                (await Studio.Commands.OwnerPasswordCommand.RunAsync(studio.DataFolder, "ash@studio.example", () => "copper kettle moon", TextWriter.Null, TextWriter.Null)).ShouldBe(0);
                break;
        }
    }

    private async Task<HttpStatusCode> WithAsync(string cookie)
    {
        using var thief = studio.CreateClient(new() { AllowAutoRedirect = false, HandleCookies = false });
        using var request = new HttpRequestMessage(HttpMethod.Get, "/commissions");
        request.Headers.Add("Cookie", cookie);
        using var answer = await thief.SendAsync(request, Cancel);
        return answer.StatusCode;
    }

    private static async Task<HttpStatusCode> StatusAsync(HttpClient browser)
    {
        using var answer = await browser.GetAsync(new Uri("/commissions", UriKind.Relative), Cancel);
        return answer.StatusCode;
    }
}
