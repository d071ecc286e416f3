using System.Security.Claims;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>Lets people in and out: checks who they are, begins a sign-in, ends it.</summary>
public sealed class DoorBook(IServiceScopeFactory scopes, Tries tries, Sessions sessions, PasswordCost cost, AccessLog log, SignInManager<StudioUser> signIns)
{
    /// <summary>The one answer to every try that fails, whatever it failed by: it must not tell who has a sign-in here.</summary>
    public const string Sentence = "E-mail and password do not belong together, or there were too many tries in a row. Check both and try again in a moment; after many tries the moment grows to a quarter of an hour.";

    private const int KnownDays = 90;
    private const int KeptDays = 400;
    private const int LongestEmail = 254;

    /// <summary>Checks e-mail and password and, where they belong together, signs the person in at this browser.</summary>
    /// <param name="http">The request, which gets the cookie.</param>
    /// <param name="stay">Whether the cookie outlives the browser.</param>
    public Task<Saved> EnterAsync(HttpContext http, string email, string password, bool stay) => Saved.TryAsync(async () =>
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs("sign-in");
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StudioUser>>();
        var db = scope.ServiceProvider.GetRequiredService<StudioDb>();
        var visitor = Visitor.Of(http);
        var typed = users.NormalizeEmail(email.Trim()) is { Length: <= LongestEmail } normal ? normal : "";
        var user = await users.FindByEmailAsync(typed);
        var (here, network) = (Network.Exact(visitor.Address), await KnownAsync(db, user, visitor));
        if (!tries.Begin(typed, here, network))
        {
            cost.Spend(password);
            await log.NoteAsync(db, AccessKind.Delayed, user?.Id, network: Network.Shortened(visitor.Address));
            return Saved.Refused(Sentence);
        }

        var answer = cost.Check(user, password);
        if (user is null || answer is PasswordVerificationResult.Failed)
        {
            await log.NoteAsync(db, AccessKind.Failed, user?.Id, user is { Retired: true } ? EndedBy.Retired : "", Network.Shortened(visitor.Address));
            return Saved.Refused(Sentence);
        }

        tries.Right(typed, here, network);
        if (answer is PasswordVerificationResult.SuccessRehashNeeded)
        {
            user.PasswordHash = users.PasswordHasher.HashPassword(user, password);
            await users.UpdateAsync(user);
        }

        await BeginAsync(db, user, visitor, stay);
        return Saved.Done();
    });

    /// <summary>Signs in somebody who needs no password: whoever just made the studio, or opened the demo.</summary>
    public async Task AdmitAsync(HttpContext http, StudioUser user)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs("first start");
        await BeginAsync(scope.ServiceProvider.GetRequiredService<StudioDb>(), user, Visitor.Of(http), stay: false);
    }

    /// <summary>As <see cref="AdmitAsync(HttpContext, StudioUser)"/>, by e-mail; nothing happens where it is nobody's.</summary>
    public async Task AdmitAsync(HttpContext http, string email)
    {
        if (await signIns.UserManager.FindByEmailAsync(email) is { } user)
        {
            await AdmitAsync(http, user);
        }
    }

    /// <summary>Ends the sign-in of this browser, wherever else its cookie or its pages are open.</summary>
    public async Task LeaveAsync(HttpContext http)
    {
        await using var scope = scopes.CreateAsyncScope();
        scope.ServiceProvider.GetRequiredService<Who>().ActAs("sign-in");
        var db = scope.ServiceProvider.GetRequiredService<StudioDb>();
        var visitor = Visitor.Of(http);
        var ended = await Sessions.EndAsync(db, EndedBy.SignOut, db.Set<SignedIn>().Where(s => s.Id == visitor.Before));
        await log.NoteEndedAsync(db, ended, network: Network.Shortened(visitor.Address));
        sessions.Forget(ended);
        await signIns.SignOutAsync();
    }

    private async Task BeginAsync(StudioDb db, StudioUser user, Visitor visitor, bool stay)
    {
        var session = new SignedIn
        {
            Id = RandomNumberGenerator.GetHexString(32, lowercase: true),
            UserId = user.Id,
            Stamp = user.SecurityStamp ?? "",
            StartedAt = db.Now,
            SeenAt = db.Now,
            Device = Device.Words(visitor.Agent),
            Network = Network.Shortened(visitor.Address),
        };
        db.Add(session);
        var ended = await Sessions.EndAsync(db, EndedBy.SignInAnew, db.Set<SignedIn>().Where(s => s.Id == visitor.Before));
        await log.NoteEndedAsync(db, ended, network: session.Network);
        await log.NoteAsync(db, AccessKind.SignedIn, user.Id, network: session.Network);
        sessions.Forget(ended);
        await ThinAsync(db);
        await signIns.SignInWithClaimsAsync(user, new AuthenticationProperties { IsPersistent = stay }, [new Claim(Sessions.Claim, session.Id)]);
    }

    // the network they signed in from lately; null where nobody did
    private static async Task<string?> KnownAsync(StudioDb db, StudioUser? user, Visitor visitor)
    {
        var (id, network, since) = (user?.Id ?? "", Network.Shortened(visitor.Address), db.Now.AddDays(-KnownDays));
        return network.Length > 0 && await db.Set<SignedIn>().AnyAsync(s => s.UserId == id && s.Network == network && s.StartedAt >= since) ? network : null;
    }

    // what no list shows any more and no delay asks for is let go
    private static async Task ThinAsync(StudioDb db)
    {
        var (sessionsBefore, entriesBefore) = (db.Now.AddDays(-KnownDays), db.Now.AddDays(-KeptDays));
        await db.Set<SignedIn>().Where(s => s.StartedAt < sessionsBefore).ExecuteDeleteAsync();
        await db.Set<AccessEntry>().Where(a => a.At < entriesBefore).ExecuteDeleteAsync();
    }
}
