using System.Net;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using Studio.Commissions;
using Studio.Customers;
using Studio.Data;
using Studio.Keepsakes;
using Studio.SignIn;

namespace Studio.Tests.Keepsakes;

/// <summary>The whole studio in memory with an owner and one commission.</summary>
public sealed partial class KeepsakeHost : WebApplicationFactory<Program>
{
    private const string Email = "morag@studio.example";
    private const string Password = "heather-on-the-hill";

    private readonly string data = Directory.CreateTempSubdirectory("studio-keepsakes-").FullName;

    /// <summary>A browser that nobody signed in with; it is not led to the sign-in page but told.</summary>
    public HttpClient Stranger() => CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = false });

    /// <summary>A signed-in browser, and the antiforgery token of a page that it opened.</summary>
    public async Task<(HttpClient Client, string Token)> MakerAsync()
    {
        await Services.GetRequiredService<FirstStart>().MakeOwnerAsync("Morag", Email, Password);
        var client = CreateClient(new WebApplicationFactoryClientOptions { AllowAutoRedirect = true });
        var page = await client.GetStringAsync("/sign-in");
        var fields = Hidden().Matches(page).ToDictionary(m => m.Groups["n"].Value, m => WebUtility.HtmlDecode(m.Groups["v"].Value), StringComparer.Ordinal);
        fields["Input.Email"] = Email;
        fields["Input.Password"] = Password;
        using var form = new FormUrlEncodedContent(fields);
        (await client.PostAsync("/sign-in", form)).EnsureSuccessStatusCode();
        var ledger = await client.GetStringAsync("/keepsakes");
        return (client, WebUtility.HtmlDecode(Hidden().Matches(ledger).First(m => m.Groups["n"].Value == "__RequestVerificationToken").Groups["v"].Value));
    }

    /// <summary>Takes in keepsakes as the intake does, with photographs that were sent before.</summary>
    public async Task<(int CommissionId, IReadOnlyList<string> Numbers)> TakeInAsync(string number, params (string Description, int? Photo)[] things)
    {
        await using var scope = Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs("Morag");
        await using var db = await scope.ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync();
        var commission = new Commission { Number = number, Remembers = "Angus, beekeeper", CreatedAt = db.Now, Customer = new Customer { Name = "Isla Fraser", Email = "isla@family.example", Address = "4 Heather Brae\nGlenfarrow", CreatedAt = db.Now } };
        db.Add(commission);
        await db.SaveChangesAsync();
        var book = scope.ServiceProvider.GetRequiredService<KeepsakeBook>();
        var numbers = new List<string>();
        foreach (var (description, photo) in things)
        {
            var form = KeepsakeScene.Form(description: description);
            form.PhotoIds = photo is { } id ? [id] : [];
            numbers.Add((await book.TakeInAsync(commission.Id, form, "Morag")).EntryNumber);
        }

        return (commission.Id, numbers);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseSetting("DataDir", data).UseSetting("Jobs:Storage", "InMemory");
        builder.ConfigureTestServices(s => s.AddSingleton<TimeProvider>(new FakeTimeProvider(new DateTimeOffset(2026, 3, 3, 9, 0, 0, TimeSpan.Zero))).Configure<PasswordHasherOptions>(o => o.IterationCount = 1000));
    }

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

    [GeneratedRegex("""<input type="hidden" name="(?<n>[^"]+)" value="(?<v>[^"]*)"\s*/>""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Hidden();
}
