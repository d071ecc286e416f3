using System.Net;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Studio.Data;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>What the door answers, and what it costs to be told no.</summary>
public sealed class DoorTests : IAsyncLifetime
{
    private readonly StudioHosted studio = new();

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    public ValueTask InitializeAsync() => studio.InitializeAsync();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task Every_failure_says_the_same()
    {
        var id = await studio.AddAsync("Ash", Roles.Maker);
        await studio.People.RetireAsync(id, "Wren");
        using var browser = studio.Browser();
        var said = new List<string>
        {
            await SaidAsync(browser, "nobody@studio.example", StudioHosted.Password),
            await SaidAsync(browser, "not an address", StudioHosted.Password),
            await SaidAsync(browser, "ash@studio.example", StudioHosted.Password),
        };
        for (var i = 0; i < 4; i++)
        {
            said.Add(await SaidAsync(browser, StudioHosted.OwnerEmail, "a wrong password"));
        }

        // delayed by now, so that the right one is not looked at either
        said.Add(await SaidAsync(browser, StudioHosted.OwnerEmail, StudioHosted.Password));
        said.Distinct().ShouldBe([DoorBook.Sentence]);
    }

    [Fact]
    public void Every_failure_costs_one_check_of_a_password_with_the_rounds_of_now()
    {
        var (hasher, old) = (new Counting(PasswordCost.Rounds), new Counting(1000));
        var cost = new PasswordCost(hasher, Options.Create(new PasswordHasherOptions { IterationCount = 4000 }));
        var kept = new StudioUser { PasswordHash = hasher.HashPassword(new(), "heather and brass") };
        var before = new StudioUser { PasswordHash = old.HashPassword(new(), "heather and brass") };
        var retired = new StudioUser { PasswordHash = kept.PasswordHash, Retired = true };
        cost.Spend("nobody's password is made once");
        foreach (var (user, password) in new[] { (kept, "wrong"), (null, "heather and brass"), (retired, "heather and brass"), (before, "wrong") })
        {
            (hasher.Checked, hasher.Made) = (0, 0);
            cost.Check(user, password).ShouldBe(PasswordVerificationResult.Failed);
            (hasher.Checked, hasher.Made).ShouldBe((1, 0));
        }

        cost.Check(kept, "heather and brass").ShouldNotBe(PasswordVerificationResult.Failed);
    }

    [Fact]
    public void Nobodys_password_is_one_for_the_whole_studio() =>
        // made anew for each request it would cost a second check, and tell who has a sign-in here
        studio.Scope().ServiceProvider.GetRequiredService<PasswordCost>().ShouldBeSameAs(studio.Scope().ServiceProvider.GetRequiredService<PasswordCost>());

    [Fact]
    public void A_studio_keeps_passwords_with_the_rounds_it_should()
    {
        // OWASP, Password Storage Cheat Sheet, pull request 1055: PBKDF2-HMAC-SHA512 210 000 rounds
        using var services = new ServiceCollection().AddLogging().AddSignIn().BuildServiceProvider();
        var options = services.GetRequiredService<IOptions<PasswordHasherOptions>>();
        options.Value.IterationCount.ShouldBeGreaterThanOrEqualTo(210_000);

        // format 3: 1, the function (2 is HMAC-SHA-512), the rounds, big-endian (ASP.NET Core, PasswordHasher.cs)
        var hash = Convert.FromBase64String(new PasswordHasher<StudioUser>(options).HashPassword(new(), "heather and brass"));
        hash[..9].ShouldBe([1, 0, 0, 0, 2, 0x00, 0x03, 0x5B, 0x60]);
    }

    [Fact]
    public async Task A_password_kept_with_fewer_rounds_is_kept_anew_at_the_next_sign_in_and_ends_nothing()
    {
        using var before = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        await SetHashAsync(new PasswordHasher<StudioUser>(Options.Create(new PasswordHasherOptions { IterationCount = 100 })).HashPassword(new(), StudioHosted.Password));
        using var browser = await studio.SignedInAsync(StudioHosted.OwnerEmail);

        Convert.FromBase64String(await HashAsync())[5..9].ShouldBe([0, 0, 0x03, 0xE8]); // the tests' own 1000
        using var still = await before.GetAsync(new Uri("/commissions", UriKind.Relative), Cancel);
        still.StatusCode.ShouldBe(HttpStatusCode.OK);
    }

    [Fact]
    public async Task A_short_password_from_before_stays_good_until_it_is_changed()
    {
        await SetHashAsync(new PasswordHasher<StudioUser>(Options.Create(new PasswordHasherOptions { IterationCount = 1000 })).HashPassword(new(), "ten letters"));
        using var browser = studio.Browser();
        (await StudioHosted.SignInAsync(browser, StudioHosted.OwnerEmail, "ten letters")).ShouldBeTrue();
    }

    [Fact]
    public async Task Strangers_who_guess_shut_nobody_out_of_their_own_network()
    {
        using (await studio.SignedInAsync(StudioHosted.OwnerEmail))
        {
        }

        for (var i = 0; i < 30; i++)
        {
            using var stranger = From($"198.51.100.{i}");
            (await StudioHosted.SignInAsync(stranger, StudioHosted.OwnerEmail, "a guess")).ShouldBeFalse();
        }

        using var elsewhere = From("203.0.113.9");
        (await StudioHosted.SignInAsync(elsewhere, StudioHosted.OwnerEmail, StudioHosted.Password)).ShouldBeFalse();
        using var home = From("127.0.0.55");
        (await StudioHosted.SignInAsync(home, StudioHosted.OwnerEmail, StudioHosted.Password)).ShouldBeTrue();
    }

    [Fact]
    public async Task What_happens_at_the_door_is_written_down_without_an_e_mail_or_a_whole_address()
    {
        using var stranger = From("203.0.113.77");
        (await StudioHosted.SignInAsync(stranger, "nobody@family.example", "a guess at it")).ShouldBeFalse();
        (await StudioHosted.SignInAsync(stranger, StudioHosted.OwnerEmail, "a guess at it")).ShouldBeFalse();
        (await StudioHosted.SignInAsync(stranger, StudioHosted.OwnerEmail, StudioHosted.Password)).ShouldBeTrue();
        await StudioHosted.SignOutAsync(stranger);

        var lines = (await studio.Scope().ServiceProvider.GetRequiredService<AccessBook>().ListAsync(20)).Lines.Select(l => l.Words).Reverse().ToList();
        lines.ShouldBe(
        [
            "Somebody tried an e-mail that is nobody’s here, from 203.0.113.0/24.",
            "Somebody tried a wrong password for Wren, from 203.0.113.0/24.",
            "Wren signed in, from 203.0.113.0/24.",
            "A sign-in of Wren ended: they signed out, from 203.0.113.0/24.",
        ]);
        using var owner = await studio.SignedInAsync(StudioHosted.OwnerEmail);
        (await owner.GetStringAsync(new Uri("/settings/history", UriKind.Relative), Cancel)).ShouldContain("Somebody tried a wrong password for Wren, from 203.0.113.0/24.");
        await using var db = studio.Open();
        var kept = string.Join(' ', await db.Set<AccessEntry>().Select(a => a.Kind + a.UserId + a.ByUserId + a.Detail + a.Network).ToListAsync(Cancel));
        kept.ShouldNotContain("@");
        kept.ShouldNotContain("Wren");
        kept.ShouldNotContain("113.77");
    }

    [Fact]
    public async Task A_flood_of_tries_writes_a_line_that_says_so_and_no_more()
    {
        using var stranger = From("203.0.113.77");
        for (var i = 0; i < 40; i++)
        {
            await StudioHosted.SignInAsync(stranger, $"nobody{i}@family.example", "a guess at it");
        }

        await using var db = studio.Open();
        var kinds = await db.Set<AccessEntry>().Select(a => a.Kind).ToListAsync(Cancel);
        kinds.Count(k => k == AccessKind.Failed).ShouldBe(30);
        kinds.Count(k => k == AccessKind.Flood).ShouldBe(1);
    }

    private HttpClient From(string address)
    {
        var browser = studio.Browser();
        browser.DefaultRequestHeaders.Add(StudioHosted.From, address);
        return browser;
    }

    private static async Task<string> SaidAsync(HttpClient browser, string email, string password)
    {
        using var answer = await StudioHosted.AskAsync(browser, email, password);
        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        var page = await answer.Content.ReadAsStringAsync(Cancel);
        var from = page.IndexOf("role=\"alert\">", StringComparison.Ordinal) + "role=\"alert\">".Length;
        return WebUtility.HtmlDecode(page[from..page.IndexOf('<', from)]);
    }

    private async Task SetHashAsync(string hash)
    {
        await using var db = studio.Open();
        await db.Users.ExecuteUpdateAsync(u => u.SetProperty(x => x.PasswordHash, hash), Cancel);
    }

    private async Task<string> HashAsync()
    {
        await using var db = studio.Open();
        return (await db.Users.Select(u => u.PasswordHash).SingleAsync(Cancel))!;
    }

    private sealed class Counting(int rounds) : IPasswordHasher<StudioUser>
    {
        private readonly PasswordHasher<StudioUser> inner = new(Options.Create(new PasswordHasherOptions { IterationCount = Math.Min(rounds, 4000) }));

        public int Checked { get; set; }

        public int Made { get; set; }

        public string HashPassword(StudioUser user, string password)
        {
            Made++;
            return inner.HashPassword(user, password);
        }

        public PasswordVerificationResult VerifyHashedPassword(StudioUser user, string hashedPassword, string providedPassword)
        {
            Checked++;
            return inner.VerifyHashedPassword(user, hashedPassword, providedPassword);
        }
    }
}
