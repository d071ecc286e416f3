using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>One sign-in as its owner sees it.</summary>
/// <param name="StartedAt">[UTC]</param>
/// <param name="SeenAt">[UTC], to five minutes.</param>
/// <param name="EndsAt">When it ends by itself [UTC].</param>
/// <param name="Extends">True while using it moves that end.</param>
/// <param name="Here">True for the one this page is open in.</param>
public sealed record SessionLine(string Id, string Device, string Network, DateTime StartedAt, DateTime SeenAt, DateTime EndsAt, bool Extends, bool Here);

/// <summary>A person as they see themselves.</summary>
public sealed record Mine(string Name, string Email, string Role, string Means, IReadOnlyList<SessionLine> Sessions);

/// <summary>What a person may see and do about their own sign-ins and password. It knows nobody else's.</summary>
public sealed class SessionBook(IServiceScopeFactory scopes, IDbContextFactory<StudioDb> factory, Who who, Sessions sessions, Tries tries, PasswordCost cost, AccessLog log, TimeProvider clock)
{
    /// <summary>Who is here, and everywhere they are signed in, the latest used first.</summary>
    public async Task<Mine> MineAsync()
    {
        var me = await who.HereAsync();
        var now = clock.GetUtcNow().UtcDateTime;
        await using var db = await factory.CreateDbContextAsync();
        var email = await db.Users.Where(u => u.Id == me.UserId).Select(u => u.Email).SingleOrDefaultAsync() ?? "";
        var all = await db.Set<SignedIn>().AsNoTracking().Where(s => s.UserId == me.UserId && s.EndedAt == null).OrderByDescending(s => s.SeenAt).ToListAsync();
        return new(me.Name, email, me.Role, Roles.All.FirstOrDefault(r => r.Key == me.Role).Means ?? "",
            [.. all.Where(s => Sessions.WhyOver(s, now) is null).Select(s => Line(s, me))]);
    }

    /// <summary>Ends one of one's own sign-ins.</summary>
    public Task<Saved> EndAsync(string id) => EndAsync(me => s => s.UserId == me.UserId && s.Id == id);

    /// <summary>Ends all of one's own but the one this page is open in.</summary>
    public Task<Saved> EndOthersAsync() => EndAsync(me => s => s.UserId == me.UserId && s.Id != me.SessionId);

    /// <summary>Sets one's own password anew and ends the other sign-ins; the present one goes on.</summary>
    /// <param name="present">The one that counts now; asked so that an open page alone cannot take the sign-in over.</param>
    /// <param name="next">The one to be.</param>
    public Task<Saved> ChangePasswordAsync(string present, string next) => Saved.TryAsync(async () =>
    {
        var me = await who.HereAsync();
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().GoOnAs(me);
        var db = scope.ServiceProvider.GetRequiredService<StudioDb>();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StudioUser>>();
        await using var whole = await db.Database.BeginTransactionAsync();
        var user = await users.FindByIdAsync(me.UserId) ?? throw new SignedOutException();
        if (!tries.Begin(me.UserId, "own page", "own page") || cost.Check(user, present) is PasswordVerificationResult.Failed)
        {
            return Saved.Refused("This is not your present password, or it was tried too often in a row. Type it again in a moment; if it is forgotten, an owner can set a new one.");
        }

        tries.Right(me.UserId, "own page", "own page");
        var set = await users.ResetPasswordAsync(user, await users.GeneratePasswordResetTokenAsync(user), next);
        if (!set.Succeeded)
        {
            return Saved.Refused(string.Join(" ", set.Errors.Select(e => e.Description)));
        }

        // this sign-in is carried over to the new stamp; the others end
        await db.Set<SignedIn>().Where(s => s.Id == me.SessionId).ExecuteUpdateAsync(s => s.SetProperty(x => x.Stamp, user.SecurityStamp));
        var ended = await Sessions.EndAsync(db, EndedBy.Password, db.Set<SignedIn>().Where(s => s.UserId == me.UserId && s.Id != me.SessionId));
        await log.NoteAsync(db, AccessKind.Password, me.UserId);
        await log.NoteEndedAsync(db, ended);
        await whole.CommitAsync();
        sessions.Forget(ended);
        return Saved.Done();
    });

    private static SessionLine Line(SignedIn s, Present me)
    {
        var (oldest, unused) = (s.StartedAt.AddDays(Sessions.LongestDays), s.SeenAt.AddDays(Sessions.LongestUnusedDays));
        return new(s.Id, s.Device, s.Network, s.StartedAt, s.SeenAt, oldest < unused ? oldest : unused, unused < oldest, s.Id == me.SessionId);
    }

    private Task<Saved> EndAsync(Func<Present, System.Linq.Expressions.Expression<Func<SignedIn, bool>>> which) => Saved.TryAsync(async () =>
    {
        var me = await who.HereAsync();
        await using var db = await factory.CreateDbContextAsync();
        var ended = await Sessions.EndAsync(db, EndedBy.Elsewhere, db.Set<SignedIn>().Where(which(me)));
        await log.NoteEndedAsync(db, ended);
        sessions.Forget(ended);
        return Saved.Done();
    });
}
