using System.Data;
using System.Text.Json;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>A person as the owner sees them.</summary>
public sealed record Person(string Id, string Name, string Email, string Role, bool Retired, DateTime Since);

/// <summary>
/// Reads and writes who may sign in. Nobody is ever deleted: their name stays in the history.
/// Each call takes a scope of its own, because a page stays open for hours and would go on seeing people as they were.
/// </summary>
public sealed class PeopleBook(IServiceScopeFactory scopes, IDbContextFactory<StudioDb> factory, Who who, Sessions sessions, AccessLog log, TimeProvider clock, News news)
{
    private const string LastOwner = "This is the only owner left. Make somebody else an owner first, or nobody could reach the settings.";

    private const string Gone = "This person is not in the book. Load the page again.";

    /// <summary>Everybody; those who still sign in first, each by name.</summary>
    public async Task<IReadOnlyList<Person>> ListAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        var roles = await db.UserRoles.Join(db.Roles, u => u.RoleId, r => r.Id, (u, r) => new { u.UserId, r.Name }).ToListAsync();
        var users = await db.Users.AsNoTracking().OrderBy(u => u.Retired).ThenBy(u => u.DisplayName).ToListAsync();
        return users.ConvertAll(u => new Person(u.Id, u.DisplayName, u.Email ?? "", roles.Find(r => r.UserId == u.Id)?.Name ?? "", u.Retired, u.CreatedAt));
    }

    /// <summary>Adds a person with a role and a first password.</summary>
    public Task<Saved> AddAsync(PersonForm form, string by) => Saved.TryAsync(async () =>
    {
        if (new PersonValidator().Validate(form) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        var me = await OwnerAsync();
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().GoOnAs(me);
        var (user, wrong) = await FirstStart.MakeAsync(scope.ServiceProvider, form.Name, form.Email, form.Password, form.Role, clock);
        if (user is null)
        {
            return Saved.Refused(string.Join(" ", wrong));
        }

        var db = scope.ServiceProvider.GetRequiredService<StudioDb>();
        Write(db, user, by, "Role", "", form.Role);
        await log.NoteAsync(db, AccessKind.Added, user.Id, form.Role, byUserId: me.UserId);
        news.Tell(News.Settings);
        return Saved.Done();
    });

    /// <summary>Gives a person another role; the last owner keeps theirs.</summary>
    public Task<Saved> ChangeRoleAsync(string id, string role, string by) => ChangeAsync(id, (AccessKind.Role, role, EndedBy.Role), async (db, users, user) =>
    {
        var before = await users.GetRolesAsync(user);
        if (Roles.All.All(r => r.Key != role))
        {
            return "Choose what they may do from the list.";
        }

        if (role != Roles.Owner && await IsLastOwnerAsync(db, user))
        {
            return LastOwner;
        }

        await users.RemoveFromRolesAsync(user, before);
        await users.AddToRoleAsync(user, role);
        Write(db, user, by, "Role", string.Join(", ", before), role);
        return null;
    });

    /// <summary>Sets a new password and ends every sign-in that goes by the old one.</summary>
    public Task<Saved> SetPasswordAsync(string id, string password, string by) => ChangeAsync(id, (AccessKind.Password, "", EndedBy.Password), async (db, users, user) =>
    {
        var set = await users.ResetPasswordAsync(user, await users.GeneratePasswordResetTokenAsync(user), password);
        Write(db, user, by, "Password", "kept secret", "set anew");
        return set.Succeeded ? null : string.Join(" ", set.Errors.Select(e => e.Description));
    });

    /// <summary>A retired person cannot sign in; their name stays. The last owner cannot be retired.</summary>
    public Task<Saved> RetireAsync(string id, string by) => ChangeAsync(id, (AccessKind.Retired, "", EndedBy.Retired), async (db, _, user) =>
    {
        if (await IsLastOwnerAsync(db, user))
        {
            return LastOwner;
        }

        user.Retired = true;
        Write(db, user, by, "Retired", "no", "yes");
        return null;
    });

    /// <summary>Lets a retired person sign in again.</summary>
    public Task<Saved> BringBackAsync(string id, string by) => ChangeAsync(id, (AccessKind.BroughtBack, "", EndedBy.Retired), (db, _, user) =>
    {
        user.Retired = false;
        Write(db, user, by, "Retired", "yes", "no");
        return Task.FromResult<string?>(null);
    });

    // in one serializable transaction, so that two owners cannot retire each other in the same moment
    private Task<Saved> ChangeAsync(string id, (string Kind, string Detail, string Ends) told, Func<StudioDb, UserManager<StudioUser>, StudioUser, Task<string?>> change) => Saved.TryAsync(async () =>
    {
        var me = await OwnerAsync();
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().GoOnAs(me);
        var db = scope.ServiceProvider.GetRequiredService<StudioDb>();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StudioUser>>();
        await using var transaction = await db.Database.BeginTransactionAsync(IsolationLevel.Serializable);
        if (await users.FindByIdAsync(id) is not { } user)
        {
            return Saved.Refused(Gone);
        }

        if (await change(db, users, user) is { } refusal)
        {
            return Saved.Refused(refusal);
        }

        // a new stamp as well as an end: also a sign-in that begins in this very moment is over
        await users.UpdateSecurityStampAsync(user);
        var ended = await Sessions.EndAsync(db, told.Ends, db.Set<SignedIn>().Where(s => s.UserId == id));
        await log.NoteAsync(db, told.Kind, id, told.Detail, byUserId: me.UserId);
        await log.NoteEndedAsync(db, ended, byUserId: me.UserId);
        await transaction.CommitAsync();
        sessions.Forget(ended);
        news.Tell(News.Settings);
        return Saved.Done();
    });

    // the page is the owner's; so is every act of it, whoever's page it was when it was opened
    private async Task<Present> OwnerAsync() => await who.HereAsync() is { Role: Roles.Owner } owner ? owner : throw new SignedOutException();

    private static async Task<bool> IsLastOwnerAsync(StudioDb db, StudioUser user)
    {
        var owners = await db.UserRoles.Join(db.Roles.Where(r => r.Name == Roles.Owner), u => u.RoleId, r => r.Id, (u, _) => u.UserId)
            .Join(db.Users.Where(u => !u.Retired), id => id, u => u.Id, (id, _) => id).ToListAsync();
        return owners.Count == 1 && owners[0] == user.Id;
    }

    private void Write(StudioDb db, StudioUser user, string by, string field, string before, string after) => db.Add(new AuditEntry
    {
        At = clock.GetUtcNow().UtcDateTime,
        By = by,
        Entity = nameof(StudioUser),
        EntityId = user.Id,
        Act = "changed",
        Changes = JsonSerializer.Serialize(new Dictionary<string, string[]>(StringComparer.Ordinal) { [$"{field} of {user.DisplayName}"] = [before, after] }),
    });
}
