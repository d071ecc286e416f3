using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>One thing that happened at the door, in words.</summary>
/// <param name="At">[UTC]</param>
/// <param name="Grave">True for what an owner should look at: tries that failed, cookies that were brought again.</param>
public sealed record AccessLine(int Id, DateTime At, string Words, bool Grave);

/// <summary>A page of them, newest first.</summary>
public sealed record AccessList(IReadOnlyList<AccessLine> Lines, bool More);

/// <summary>Reads what happened at the door, and writes down who asked for what is not theirs.</summary>
public sealed class AccessBook(IDbContextFactory<StudioDb> factory, AccessLog log)
{
    /// <summary>The newest so many.</summary>
    public async Task<AccessList> ListAsync(int take)
    {
        await using var db = await factory.CreateDbContextAsync();
        var names = await db.Users.ToDictionaryAsync(u => u.Id, u => u.DisplayName, StringComparer.Ordinal);
        var found = await db.Set<AccessEntry>().AsNoTracking().OrderByDescending(a => a.Id).Take(take + 1).ToListAsync();
        return new([.. found.Take(take).Select(a => new AccessLine(a.Id, a.At, Words(a, Named), IsGrave(a.Kind)))], found.Count > take);
        string Named(string id) => names.GetValueOrDefault(id, "somebody who is not in the book any more");
    }

    /// <summary>Writes down that a signed-in person asked for a page or paper that their role does not reach.</summary>
    /// <param name="userId">Who.</param>
    /// <param name="route">The address as the program knows it, without what was filled in.</param>
    /// <param name="network">Already shortened; empty from within an open page.</param>
    public Task<Saved> RefusedAsync(string userId, string route, string network = "") => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.WriteAs("sign-in");
        await log.NoteAsync(db, AccessKind.NotTheirs, userId, route, network);
        return Saved.Done();
    });

    /// <summary>Writes down that a cookie was brought whose sign-in had ended.</summary>
    public Task<Saved> StaleAsync(string userId, string network) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.WriteAs("sign-in");
        await log.NoteAsync(db, AccessKind.Stale, userId, "", network);
        return Saved.Done();
    });

    /// <summary>The sentence for an entry.</summary>
    /// <param name="entry">What happened.</param>
    /// <param name="named">A person's name from their number.</param>
    internal static string Words(AccessEntry entry, Func<string, string> named)
    {
        var who = entry.UserId.Length > 0 ? named(entry.UserId) : "somebody unknown";
        var by = entry.ByUserId.Length > 0 ? $" by {named(entry.ByUserId)}" : "";
        var from = entry.Network.Length > 0 ? $", from {entry.Network}" : "";
        return entry.Kind switch
        {
            AccessKind.SignedIn => $"{who} signed in{from}.",
            AccessKind.Failed when entry.UserId.Length == 0 => $"Somebody tried an e-mail that is nobody’s here{from}.",
            AccessKind.Failed when entry.Detail == EndedBy.Retired => $"Somebody tried to sign in as {who}, who is retired{from}.",
            AccessKind.Failed => $"Somebody tried a wrong password for {who}{from}.",
            AccessKind.Delayed => $"A try for {who} came too soon after others and was not looked at{from}.",
            AccessKind.Flood => "More tries failed within this minute than are written down one by one.",
            AccessKind.Ended => $"A sign-in of {who} ended: {WhyEnded(entry.Detail)}{by}{from}.",
            AccessKind.Stale => $"A browser brought a cookie of {who} that had ended; it was refused{from}.",
            AccessKind.NotTheirs => $"{who} asked for {entry.Detail}, which their role does not reach{from}.",
            AccessKind.Added => $"{who} was added as {entry.Detail}{by}.",
            AccessKind.Role => $"{who} is {entry.Detail} from here on, set{by}.",
            AccessKind.Password when entry.Detail.Length > 0 => $"A new password for {who} was set at the command line.",
            AccessKind.Password => entry.ByUserId.Length > 0 ? $"A new password for {who} was set{by}." : $"{who} has a new password.",
            AccessKind.Retired => $"{who} was retired{by}.",
            AccessKind.BroughtBack => $"{who} may sign in again, brought back{by}.",
            _ => $"{entry.Kind}: {who}{by}{from}.",
        };
    }

    private static bool IsGrave(string kind) => kind is AccessKind.Failed or AccessKind.Delayed or AccessKind.Flood or AccessKind.Stale or AccessKind.NotTheirs;

    private static string WhyEnded(string why) => why switch
    {
        EndedBy.SignOut => "they signed out",
        EndedBy.Elsewhere => "they ended it from another device",
        EndedBy.SignInAnew => "they signed in anew at the same browser",
        EndedBy.Password => "the password was set anew",
        EndedBy.Role => "their role changed",
        EndedBy.Retired => "they were retired",
        _ => why,
    };
}
