using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>
/// The one time a person may be created without signing in: while there is nobody. From this machine's own browser it is open;
/// from anywhere else, or through a proxy, it needs the code that the studio printed when it started.
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

    /// <summary>Whether this request may make the first person.</summary>
    public bool Admits(HttpContext http, string? code)
    {
        var here = http.Connection.RemoteIpAddress is { } ip && System.Net.IPAddress.IsLoopback(ip);
        var name = http.Request.Host.Host;
        var direct = here && name is "localhost" or "127.0.0.1" or "[::1]" && !http.Request.Headers.ContainsKey("X-Forwarded-For");
        return direct || (code is not null && CryptographicOperations.FixedTimeEquals(System.Text.Encoding.UTF8.GetBytes(code), System.Text.Encoding.UTF8.GetBytes(Code)));
    }

    /// <summary>Makes the owner; the words say what is wrong where it can't.</summary>
    public async Task<(StudioUser? User, IReadOnlyList<string> Wrong)> MakeOwnerAsync(string name, string email, string password)
    {
        await once.WaitAsync();
        try
        {
            if (!await EmptyAsync())
            {
                return (null, ["This studio has an owner already. Sign in, or ask the owner to add you under People."]);
            }

            await using var scope = scopes.CreateAsyncScope();
            var (user, wrong) = await MakeAsync(scope.ServiceProvider, name, email, password, Roles.Owner, clock);
            someone = user is not null;
            return (user, wrong);
        }
        finally
        {
            once.Release();
        }
    }

    /// <summary>Makes a person with one role.</summary>
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
            LockoutEnabled = true,
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
