using System.Collections.Concurrent;
using System.Data.Common;
using System.Security.Claims;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>
/// Which sign-ins stand. The database knows; what it said is remembered for three seconds, and what ended in this process is known at once.
/// It never writes, because it is asked in the middle of other people's transactions.
/// </summary>
public sealed class Sessions(IServiceScopeFactory scopes, TimeProvider clock) : IStanding
{
    /// <summary>The claim by which a cookie names its sign-in.</summary>
    public const string Claim = "session";

    /// <summary>The longest a sign-in stands, used or not [days].</summary>
    public const int LongestDays = 30;

    /// <summary>The longest it stands unused [days].</summary>
    public const int LongestUnusedDays = 14;

    private static readonly TimeSpan Remembered = TimeSpan.FromSeconds(3);
    private static readonly TimeSpan SeenEvery = TimeSpan.FromMinutes(5);

    private readonly ConcurrentDictionary<string, Look> looks = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, DateTime> used = new(StringComparer.Ordinal);

    private sealed record Look(bool Stands, DateTime At, DateTime SeenAt, bool Over = false, bool Told = false);

    private sealed record Found(SignedIn Session, string? Stamp, bool Retired);

    public async Task<bool> StandsAsync(ClaimsPrincipal person, bool afresh = false)
    {
        var (id, userId, now) = (person.FindFirstValue(Claim), person.FindFirstValue(ClaimTypes.NameIdentifier), clock.GetUtcNow().UtcDateTime);
        if (id is null || userId is null)
        {
            return false;
        }

        // a request or an act is use; an open page that only looks after itself is none
        if (!afresh)
        {
            used[id] = now;
        }

        if (looks.TryGetValue(id, out var before) && (before.Over || (!afresh && now - before.At < Remembered)))
        {
            return before.Stands;
        }

        await using var scope = scopes.CreateAsyncScope();
        await using var db = scope.ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext();
        var found = await db.Set<SignedIn>().AsNoTracking().Where(s => s.Id == id && s.UserId == userId)
            .Join(db.Users, s => s.UserId, u => u.Id, (s, u) => new Found(s, u.SecurityStamp, u.Retired)).SingleOrDefaultAsync();
        var stands = found is not null && WhyOver(found.Session, now) is null && !found.Retired && found.Session.Stamp == found.Stamp;
        // what ended while the database was asked stays ended
        var look = new Look(stands, now, found?.Session.SeenAt ?? now);
        return looks.AddOrUpdate(id, look, (_, known) => known.Over ? known : look with { Told = known.Told }).Stands;
    }

    /// <summary>True the first time that a cookie of an ended sign-in is refused: it is written down once, however often it is brought.</summary>
    internal bool IsFirstRefusal(ClaimsPrincipal person) =>
        person.FindFirstValue(Claim) is { } id && looks.TryGetValue(id, out var look) && !look.Told && looks.TryUpdate(id, look with { Told = true }, look);

    /// <summary>Why a sign-in no longer stands, as a constant of <see cref="EndedBy"/>; null while it does.</summary>
    public static string? WhyOver(SignedIn session, DateTime now) => session switch
    {
        { EndedAt: not null } => session.Ended,
        _ when now - session.StartedAt >= TimeSpan.FromDays(LongestDays) => EndedBy.Age,
        _ when now - session.SeenAt >= TimeSpan.FromDays(LongestUnusedDays) => EndedBy.Unused,
        _ => null,
    };

    /// <summary>Writes down that a sign-in was used since, at most every five minutes. For moments in which no transaction of the caller's is open.</summary>
    public async Task SeeAsync(ClaimsPrincipal person)
    {
        if (person.FindFirstValue(Claim) is not { } id || !looks.TryGetValue(id, out var look) || !used.TryGetValue(id, out var at) || at - look.SeenAt < SeenEvery)
        {
            return;
        }

        try
        {
            await using var scope = scopes.CreateAsyncScope();
            await using var db = scope.ServiceProvider.GetRequiredService<IDbContextFactory<StudioDb>>().CreateDbContext();
            db.WriteAs("sign-in");
            await db.Set<SignedIn>().Where(s => s.Id == id && s.EndedAt == null).ExecuteUpdateAsync(s => s.SetProperty(x => x.SeenAt, at));
            looks.TryUpdate(id, look with { SeenAt = at }, look);
        }
        catch (DbException)
        {
            // a full or read-only disk must not keep anybody from reading; the next use tries again
        }
    }

    /// <summary>Marks a person's standing sign-ins as ended, in the caller's transaction; <see cref="Forget"/> them once it is committed.</summary>
    /// <param name="db">The caller's context.</param>
    /// <param name="why">A constant of <see cref="EndedBy"/>.</param>
    /// <param name="which">Whose, and which of theirs.</param>
    /// <returns>Those that ended.</returns>
    public static async Task<IReadOnlyList<SignedIn>> EndAsync(StudioDb db, string why, IQueryable<SignedIn> which)
    {
        var ending = await which.Where(s => s.EndedAt == null).ToListAsync();
        foreach (var session in ending)
        {
            (session.EndedAt, session.Ended) = (db.Now, why);
        }

        return ending;
    }

    /// <summary>From now on these are over, whatever was remembered of them.</summary>
    public void Forget(IEnumerable<SignedIn> ended)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        foreach (var session in ended)
        {
            looks[session.Id] = new Look(Stands: false, now, now, Over: true);
        }

        // an ended one's cookie is too old for its own good after so long
        foreach (var (id, look) in looks.Where(l => now - l.Value.At > TimeSpan.FromDays(LongestDays)))
        {
            looks.TryRemove(new(id, look));
            used.TryRemove(id, out _);
        }
    }
}
