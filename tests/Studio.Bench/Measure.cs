using System.Diagnostics;
using System.Globalization;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using Studio.Data;
using Studio.Shelf;
using Studio.SignIn;

namespace Studio.Bench.Tools;

/// <summary>Measures each thing beside what it is compared with, in one run, turn and turn about.</summary>
internal static class Measure
{
    public static async Task<int> RunAsync()
    {
        var folder = Directory.CreateTempSubdirectory("studio-bench-").FullName;
        try
        {
            Say($"Making {BigStudio.Pieces} pieces and {BigStudio.Keepsakes} keepsakes");
            await BigStudio.MakeAsync(folder);
            await ShelfAsync(folder);
            await PageAsync(folder);
            await QuoteCost.RunAsync();
            await TimeCost.RunAsync();
            return await MeshCost.RunAsync();
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            Directory.Delete(folder, recursive: true);
        }
    }

    /// <summary>Prints the medians of both, taken turn and turn about, and their ratio.</summary>
    public static async Task CompareAsync(string name, string ours, Func<Task> run, string other, Func<Task> against, double? aim, int rounds)
    {
        List<double> a = [], b = [];
        for (var i = 0; i < rounds + (rounds / 4); i++)
        {
            var (first, second) = (await TimeAsync(run), await TimeAsync(against));
            if (i >= rounds / 4)
            {
                a.Add(first);
                b.Add(second);
            }
        }

        a.Sort();
        b.Sort();
        var (x, y) = (a[a.Count / 2], b[b.Count / 2]);
        Say(string.Create(CultureInfo.InvariantCulture, $"{name}: {ours} {x:0.000} ms (95 % under {a[(int)(a.Count * 0.95)]:0.000}), {other} {y:0.000} ms, ratio {x / y:0.00}{(aim is { } most ? $" (aim at most {most})" : "")}"));
    }

    private static async Task ShelfAsync(string folder)
    {
        var book = new ShelfBook(Writer.Open(folder), TimeProvider.System);
        await using var db = new SqliteConnection($"Data Source={DataSetup.DatabaseFile(folder)}");
        await db.OpenAsync();
        var rows = await book.RowsAsync();
        Say($"On the shelf: {rows.Pieces.Count} pieces, {rows.Pours.Sum(p => p.Count())} pours; by hand {HandWritten.Read(db)} rows and counts");
        await CompareAsync("Shelf's data", "book", async () => await book.RowsAsync(), "hand-written SQL", () => Task.FromResult(HandWritten.Read(db)), 2, 200);
    }

    private static async Task PageAsync(string folder)
    {
        await using var host = new Host(folder);
        using var client = host.CreateClient(new() { AllowAutoRedirect = false });
        await using (var scope = host.Services.CreateAsyncScope())
        {
            scope.ServiceProvider.GetRequiredService<Who>().ActAs("bench");
            await FirstStart.MakeAsync(scope.ServiceProvider, "Bench", "bench@studio.example", "a bench to measure at", Roles.Owner, TimeProvider.System);
        }

        await SignInAsync(client);
        async Task Get(string path)
        {
            using var response = await client.GetAsync(path);
            response.EnsureSuccessStatusCode();
            await response.Content.ReadAsByteArrayAsync();
        }

        // a page that stumbled is fast too: what is measured must be the shelf
        if (!(await client.GetStringAsync("/")).Contains("data-piece", StringComparison.Ordinal))
        {
            throw new InvalidOperationException("The shelf's page shows no piece.");
        }

        await CompareAsync("Full page", "shelf", () => Get("/"), "empty page", () => Get("/not-found"), 2.5, 100);
    }

    private static async Task SignInAsync(HttpClient client)
    {
        var page = await client.GetStringAsync("/sign-in");
        var token = System.Text.RegularExpressions.Regex.Match(page, "name=\"__RequestVerificationToken\" value=\"(?<token>[^\"]+)\"", System.Text.RegularExpressions.RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1)).Groups["token"].Value;
        using var form = new FormUrlEncodedContent(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["_handler"] = "sign-in",
            ["__RequestVerificationToken"] = token,
            ["Input.Email"] = "bench@studio.example",
            ["Input.Password"] = "a bench to measure at",
        });
        using var response = await client.PostAsync("/sign-in", form);
        if ((int)response.StatusCode is not 302)
        {
            throw new InvalidOperationException("The bench could not sign in: " + (int)response.StatusCode);
        }
    }

    private static async Task<double> TimeAsync(Func<Task> run)
    {
        var watch = Stopwatch.StartNew();
        await run();
        return watch.Elapsed.TotalMilliseconds;
    }

    private static void Say(string words) => Console.WriteLine(words);

    private sealed class Host(string folder) : WebApplicationFactory<ShelfBook>
    {
        protected override void ConfigureWebHost(IWebHostBuilder builder) => builder.UseContentRoot(AppContext.BaseDirectory).UseSetting("DataDir", folder).UseSetting("Jobs:Storage", "InMemory");
    }
}
