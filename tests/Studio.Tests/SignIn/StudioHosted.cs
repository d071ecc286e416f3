using System.Net;
using System.Security.Claims;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Studio.Data;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>The whole program in memory, with a data folder of its own and one owner.</summary>
public sealed partial class StudioHosted : WebApplicationFactory<Program>, IAsyncLifetime
{
    public const string OwnerEmail = "wren@studio.example";

    public const string Password = "heather and brass";

    private readonly string data = Directory.CreateTempSubdirectory("studio-host-").FullName;

    /// <summary>The header by which a test says where a request comes from; without it from this machine.</summary>
    public const string From = "X-Test-From";

    /// <summary>Stands until a test moves it.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    public string DataFolder => data;

    /// <summary>How often an open page looks whether it may stay [s]; long, so that it looks only where a test means it to.</summary>
    public int Every { get; init; } = 60;

    /// <summary>More settings for the host.</summary>
    public IReadOnlyDictionary<string, string> Settings { get; init; } = new Dictionary<string, string>(StringComparer.Ordinal);

    /// <summary>The people's book in the hands of an owner.</summary>
    public PeopleBook People => Scope("Wren").ServiceProvider.GetRequiredService<PeopleBook>();

    /// <summary>A scope of its own in which somebody is at work who need not sign in; gone with the host.</summary>
    public IServiceScope Scope(string name = "test")
    {
        var scope = Services.CreateScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs(name);
        return scope;
    }

    /// <summary>What a browser holds open once it is signed in: the scope of a page that needs no further request, as the framework opens it.</summary>
    public async Task<OpenPage> PageAsync(string email)
    {
        await using var db = Open();
        var normal = email.ToUpperInvariant();
        var user = await db.Users.SingleAsync(u => u.NormalizedEmail == normal);
        var session = await db.Set<SignedIn>().Where(s => s.UserId == user.Id && s.EndedAt == null).OrderByDescending(s => s.StartedAt).FirstAsync();
        var person = await Scope().ServiceProvider.GetRequiredService<IUserClaimsPrincipalFactory<StudioUser>>().CreateAsync(user);
        ((ClaimsIdentity)person.Identity!).AddClaim(new Claim(Sessions.Claim, session.Id));
        return new OpenPage(Services, person);
    }

    /// <summary>Adds a person who signs in as <c>name@studio.example</c> with <see cref="Password"/>.</summary>
    /// <returns>Their number.</returns>
    public async Task<string> AddAsync(string name, string role)
    {
        var email = $"{name.ToLowerInvariant()}@studio.example";
        (await People.AddAsync(new PersonForm { Name = name, Email = email, Role = role, Password = Password }, "Wren")).Words.ShouldBe("");
        return (await People.ListAsync()).Single(p => p.Email == email).Id;
    }

    /// <summary>A browser that is signed in.</summary>
    public async Task<HttpClient> SignedInAsync(string email)
    {
        var browser = Browser();
        (await SignInAsync(browser, email, Password)).ShouldBeTrue();
        return browser;
    }

    /// <summary>A context for arranging and looking.</summary>
    public StudioDb Open() => Scope().ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext();

    public async ValueTask InitializeAsync() =>
        (await Services.GetRequiredService<FirstStart>().MakeOwnerAsync("Wren", OwnerEmail, Password)).Wrong.ShouldBeEmpty();

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
        try
        {
            Directory.Delete(data, recursive: true);
        }
        catch (IOException)
        {
            // a straggling write only leaves a temporary folder behind
        }
    }

    /// <summary>A browser without scripts that follows nothing by itself.</summary>
    public HttpClient Browser() => CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false, BaseAddress = new Uri("http://localhost") });

    /// <summary>Fills in the sign-in page and sends it; true when it lets the person in.</summary>
    public static async Task<bool> SignInAsync(HttpClient browser, string email, string password)
    {
        using var answer = await AskAsync(browser, email, password);
        return answer.StatusCode == HttpStatusCode.Redirect;
    }

    /// <summary>Fills in the sign-in page and sends it.</summary>
    public static async Task<HttpResponseMessage> AskAsync(HttpClient browser, string email, string password)
    {
        var page = await browser.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["__RequestVerificationToken"] = Token().Match(page).Groups["token"].Value,
            ["_handler"] = "sign-in",
            ["Input.Email"] = email,
            ["Input.Password"] = password,
            ["Input.Stay"] = "false",
        });
        return await browser.PostAsync(new Uri("/sign-in", UriKind.Relative), form);
    }

    /// <summary>What a form sends: its token, its name, and what was typed.</summary>
    public static Dictionary<string, string> Hidden(string page, string handler, Dictionary<string, string> typed) =>
        new(typed, StringComparer.Ordinal) { ["__RequestVerificationToken"] = Token().Match(page).Groups["token"].Value, ["_handler"] = handler };

    /// <summary>Presses the button at the top of a page.</summary>
    public static async Task SignOutAsync(HttpClient browser)
    {
        var page = await browser.GetStringAsync(new Uri("/commissions", UriKind.Relative));
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal) { ["__RequestVerificationToken"] = Token().Match(page).Groups["token"].Value });
        using var answer = await browser.PostAsync(new Uri("/sign-out", UriKind.Relative), form);
        answer.StatusCode.ShouldBe(HttpStatusCode.Redirect);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("DataDir", data);
        builder.UseSetting("Jobs:Storage", "InMemory");
        builder.UseSetting("SignIn:LookEverySeconds", FormattableString.Invariant($"{Every}"));
        foreach (var (key, value) in Settings)
        {
            builder.UseSetting(key, value);
        }

        builder.ConfigureTestServices(s => s.AddSingleton<TimeProvider>(Clock).AddSingleton<IStartupFilter, Remote>().Configure<PasswordHasherOptions>(o => o.IterationCount = 1000));
    }

    // the test server has no sockets, so it has no addresses either
    private sealed class Remote : IStartupFilter
    {
        public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
        {
            app.Use((http, go) =>
            {
                http.Connection.RemoteIpAddress = IPAddress.Parse(http.Request.Headers.TryGetValue(From, out var from) ? from.ToString() : "127.0.0.1");
                return go(http);
            });
            next(app);
        };
    }

    [GeneratedRegex("""name="__RequestVerificationToken"[^>]*value="(?<token>[^"]+)""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}

/// <summary>A page that somebody has open: no request will come of it, only acts.</summary>
public sealed class OpenPage : IAsyncDisposable
{
    private readonly AsyncServiceScope scope;

    public OpenPage(IServiceProvider services, ClaimsPrincipal person)
    {
        scope = services.CreateAsyncScope();
        Person = person;
        var state = Task.FromResult(new AuthenticationState(person));
        ((IHostEnvironmentAuthenticationStateProvider)scope.ServiceProvider.GetRequiredService<AuthenticationStateProvider>()).SetAuthenticationState(state);
    }

    public ClaimsPrincipal Person { get; }

    public IServiceProvider Services => scope.ServiceProvider;

    /// <summary>What the look every half minute answers: whether the page may go on showing.</summary>
    public Task<bool> MayStayAsync() => ((StillAllowed)Services.GetRequiredService<AuthenticationStateProvider>()).LookAsync(new AuthenticationState(Person));

    /// <summary>An act, through a book as every page's.</summary>
    public async Task<Saved> WriteAsync(string words)
    {
        var book = Services.GetRequiredService<SettingsBook>();
        var settings = await book.ReadAsync();
        settings.TaxName = words;
        return await book.SaveAsync(settings, "a name the page kept from before");
    }

    public ValueTask DisposeAsync() => scope.DisposeAsync();
}
