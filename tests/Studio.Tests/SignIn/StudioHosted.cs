using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Studio.SignIn;

namespace Studio.Tests.SignIn;

/// <summary>The whole program in memory, with a data folder of its own and one owner.</summary>
public sealed partial class StudioHosted : WebApplicationFactory<Program>, IAsyncLifetime
{
    public const string OwnerEmail = "wren@studio.example";

    public const string Password = "heather and brass";

    private readonly string data = Directory.CreateTempSubdirectory("studio-host-").FullName;

    /// <summary>Stands until a test moves it.</summary>
    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    public PeopleBook People => Services.CreateScope().ServiceProvider.GetRequiredService<PeopleBook>();

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
        var page = await browser.GetStringAsync(new Uri("/sign-in", UriKind.Relative));
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["__RequestVerificationToken"] = Token().Match(page).Groups["token"].Value,
            ["_handler"] = "sign-in",
            ["Input.Email"] = email,
            ["Input.Password"] = password,
            ["Input.Stay"] = "false",
        });
        using var answer = await browser.PostAsync(new Uri("/sign-in", UriKind.Relative), form);
        return answer.StatusCode == HttpStatusCode.Redirect;
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("DataDir", data);
        builder.UseSetting("Jobs:Storage", "InMemory");
        builder.ConfigureTestServices(s => s.AddSingleton<TimeProvider>(Clock));
    }

    [GeneratedRegex("""name="__RequestVerificationToken"[^>]*value="(?<token>[^"]+)""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Token();
}
