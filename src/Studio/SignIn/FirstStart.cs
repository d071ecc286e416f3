using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Settings;

namespace Studio.SignIn;

/// <summary>
/// The one time a person may be created without signing in: while there is nobody. It always needs the code that the studio printed when
/// it started: also at this machine's own browser, because any account on the machine, and any proxy before it, comes from there too.
/// </summary>
public sealed class FirstStart(IServiceScopeFactory scopes, TimeProvider clock)
{
    private readonly SemaphoreSlim once = new(1, 1);
    private bool someone;

    /// <summary>Printed at start on an empty database; new at every start.</summary>
    public string Code { get; } = RandomNumberGenerator.GetHexString(12, lowercase: true);

    /// <summary>True while nobody can sign in.</summary>
    public async Task<bool> EmptyAsync()
    {
        if (someone)
        {
            return false;
        }

        await using var scope = scopes.CreateAsyncScope();
        someone = await scope.ServiceProvider.GetRequiredService<StudioDb>().Users.AnyAsync();
        return !someone;
    }

    /// <summary>Whether this code is the one that was printed.</summary>
    public bool Admits(string? code) =>
        code is not null && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(code.Trim()), System.Text.Encoding.UTF8.GetBytes(Code));

    /// <summary>Makes the owner, and with them the studio's name and time zone where they are given; the words say what is wrong where it can't.</summary>
    public async Task<(StudioUser? User, IReadOnlyList<string> Wrong)> MakeOwnerAsync(string name, string email, string password, (string Name, string Zone)? studio = null)
    {
        await once.WaitAsync();
        try
        {
            if (!await EmptyAsync())
            {
                return (null, ["This studio has an owner already. Sign in, or ask the owner to add you under People."]);
            }

            if (PasswordRules.Wrong(password, new(studio?.Name ?? "", name, email)) is { } weak)
            {
                return (null, [weak]);
            }

            await using var scope = scopes.CreateAsyncScope();
            scope.ServiceProvider.GetRequiredService<Who>().ActAs(name.Trim());
            var (user, wrong) = await MakeAsync(scope.ServiceProvider, name, email, password, Roles.Owner, clock);
            someone = user is not null;
            if (someone && studio is var (called, zone))
            {
                var book = scope.ServiceProvider.GetRequiredService<SettingsBook>();
                var settings = await book.ReadAsync();
                (settings.StudioName, settings.TimeZone) = (called.Trim(), zone);
                return (user, await book.SaveAsync(settings, name.Trim()) is { Ok: false } saved ? [saved.Words] : []);
            }

            return (user, wrong);
        }
        finally
        {
            once.Release();
        }
    }

    /// <summary>Makes a person with one role. Whoever calls has said who is at work in these services' scope.</summary>
    public static async Task<(StudioUser? User, IReadOnlyList<string> Wrong)> MakeAsync(IServiceProvider services, string name, string email, string password, string role, TimeProvider clock)
    {
        var roles = services.GetRequiredService<RoleManager<IdentityRole>>();
        foreach (var (key, _) in Roles.All)
        {
            if (!await roles.RoleExistsAsync(key))
            {
                await roles.CreateAsync(new IdentityRole(key));
            }
        }

        var users = services.GetRequiredService<UserManager<StudioUser>>();
        var user = new StudioUser
        {
            UserName = email.Trim(),
            Email = email.Trim(),
            EmailConfirmed = true,
            DisplayName = name.Trim(),
            CreatedAt = clock.GetUtcNow().UtcDateTime,
        };
        var made = await users.CreateAsync(user, password);
        if (!made.Succeeded)
        {
            return (null, [.. made.Errors.Select(e => e.Description)]);
        }

        await users.AddToRoleAsync(user, role);
        return (user, []);
    }
}
