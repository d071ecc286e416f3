using System.CommandLine;
using System.Text;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Commands;

/// <summary>
/// <c>studio owner-password --email X</c>: sets an owner's forgotten password at the machine itself, where nobody can sign in to do it under
/// People. The new one is read from standard input, never from the command line, which other accounts of the machine can see.
/// </summary>
internal static class OwnerPasswordCommand
{
    private const string Name = "owner-password";

    /// <summary>The command, to be added to the root.</summary>
    public static Command Create()
    {
        var data = new Option<string?>("--data") { Description = "The data folder; left out, the same as the studio's own" };
        var email = new Option<string>("--email") { Description = "The owner's e-mail, as they sign in with it", Required = true };
        var command = new Command(Name, "Set an owner's forgotten password: read from standard input, it ends all their sign-ins") { data, email };
        command.SetAction((parsed, _) => RunAsync(parsed.GetValue(data), parsed.GetValue(email)!, Ask, Console.Out, Console.Error));
        return command;
    }

    /// <summary>Reads the password and sets it.</summary>
    /// <param name="data">The data folder; null for the studio's own.</param>
    /// <param name="email">Whose.</param>
    /// <param name="ask">Gives the password; asked after everything else was found in order.</param>
    /// <param name="said">For what was done.</param>
    /// <param name="wrong">For why it was not.</param>
    /// <returns>0 when it is set, 1 otherwise.</returns>
    internal static async Task<int> RunAsync(string? data, string email, Func<string> ask, TextWriter said, TextWriter wrong)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = data is null ? [] : ["--DataDir", data] });
        var folder = DataSetup.Folder(builder.Configuration);
        if (string.IsNullOrWhiteSpace(builder.Configuration["Database:Postgres"]) && !File.Exists(DataSetup.DatabaseFile(folder)))
        {
            await wrong.WriteLineAsync($"There is no studio in {folder}: it holds no studio.db. Name the right folder with --data FOLDER.");
            return 1;
        }

        PrivateFolder.NewFilesToo();
        builder.AddStudio();
        await using var app = builder.Build();
        await using var scope = app.Services.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs("command line");
        var saved = await Saved.TryAsync(() => SetAsync(scope.ServiceProvider, email.Trim(), ask));
        await (saved.Ok ? said : wrong).WriteLineAsync(saved.Ok ? "The new password counts from now on. Every sign-in that went by the old one ends within a minute." : saved.Words);
        return saved.Ok ? 0 : 1;
    }

    private static async Task<Saved> SetAsync(IServiceProvider services, string email, Func<string> ask)
    {
        var db = services.GetRequiredService<StudioDb>();
        if ((await db.Database.GetPendingMigrationsAsync()).Any())
        {
            return Saved.Refused("This studio was last opened by another version. Start it once with this version, then set the password.");
        }

        var users = services.GetRequiredService<UserManager<StudioUser>>();
        if (await users.FindByEmailAsync(email) is not { Retired: false } user || !await users.IsInRoleAsync(user, Roles.Owner))
        {
            return Saved.Refused($"No owner signs in with {email}. An owner sets everybody else's password under People.");
        }

        var set = await users.ResetPasswordAsync(user, await users.GeneratePasswordResetTokenAsync(user), ask());
        if (!set.Succeeded)
        {
            return Saved.Refused(string.Join(" ", set.Errors.Select(e => e.Description)));
        }

        var log = services.GetRequiredService<AccessLog>();
        var ended = await Sessions.EndAsync(db, EndedBy.Password, db.Set<SignedIn>().Where(s => s.UserId == user.Id));
        await log.NoteAsync(db, AccessKind.Password, user.Id, Name);
        await log.NoteEndedAsync(db, ended);
        return Saved.Done();
    }

    private static string Ask()
    {
        if (Console.IsInputRedirected)
        {
            return Console.In.ReadLine() ?? "";
        }

        Console.Error.Write("New password, twelve characters or more (it is not shown): ");
        var typed = new StringBuilder();
        for (var key = Console.ReadKey(intercept: true); key.Key is not ConsoleKey.Enter; key = Console.ReadKey(intercept: true))
        {
            if (key.Key is ConsoleKey.Backspace)
            {
                typed.Length = Math.Max(0, typed.Length - 1);
            }
            else if (!char.IsControl(key.KeyChar))
            {
                typed.Append(key.KeyChar);
            }
        }

        Console.Error.WriteLine();
        return typed.ToString();
    }
}
