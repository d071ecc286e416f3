using System.CommandLine;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Shell;

namespace Studio.Commands;

/// <summary><c>studio custody check [--data FOLDER]</c>: recomputes every keepsake's balance from its log. Exit 0 when everything adds up, 2 when something does not.</summary>
internal static class CustodyCommand
{
    private const int AddsUp = 0;
    private const int DoesNot = 2;

    /// <summary>The command, to be added to the root.</summary>
    public static Command Create()
    {
        var data = new Option<string?>("--data") { Description = "The studio's data folder; the account's own when left out" };
        var check = new Command("check", "Recompute every keepsake's balance from its log, and name what does not add up.") { data };
        check.SetAction(async (parsed, cancel) => await CheckAsync(parsed.GetValue(data), Console.Out, Console.Error));
        return new Command("custody", "Look after the records of the family's things.") { check };
    }

    /// <summary>Looks, and writes what it finds.</summary>
    internal static async Task<int> CheckAsync(string? folder, TextWriter output, TextWriter trouble)
    {
        var builder = WebApplication.CreateBuilder(folder is null ? [] : [$"--DataDir={folder}"]);
        builder.AddStudio();
        await using var app = builder.Build();
        var file = DataSetup.DatabaseFile(DataSetup.Folder(app.Configuration));
        if (string.IsNullOrWhiteSpace(app.Configuration["Database:Postgres"]) && !File.Exists(file))
        {
            await trouble.WriteLineAsync($"There is no studio in {DataSetup.Folder(app.Configuration)}. Name its folder with --data FOLDER.");
            return DoesNot;
        }

        await using var scope = app.Services.CreateAsyncScope();
        await using (var db = await scope.ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContextAsync())
        {
            if ((await db.Database.GetPendingMigrationsAsync()).Any())
            {
                await trouble.WriteLineAsync("These records are of an older version. Start this version of the studio once, which brings them up to date, and check again.");
                return DoesNot;
            }
        }

        var found = await scope.ServiceProvider.GetRequiredService<CustodyBook>().CheckAsync();
        foreach (var line in found.Faults)
        {
            await output.WriteLineAsync("Does not add up: " + line);
        }

        foreach (var line in found.Unknown)
        {
            await output.WriteLineAsync("Not known: " + line);
        }

        await output.WriteLineAsync(found.AddsUp ? $"{found.Looked} keepsakes: everything adds up." : $"{found.Looked} keepsakes: {found.Faults.Count} things do not add up.");
        return found.AddsUp ? AddsUp : DoesNot;
    }
}
