using Studio.Data;

namespace Studio.SignIn;

/// <summary>Writes down what happens at the door, for the owner and for the machine's own log, without e-mails and with addresses shortened.</summary>
public sealed class AccessLog(TimeProvider clock, ILogger<AccessLog> log)
{
    private const int MostFailuresAMinute = 30;

    private readonly Lock turn = new();
    private DateTime minute;
    private int failures;

    /// <summary>Writes one thing down and saves it with whatever else the context holds.</summary>
    /// <param name="db">The caller's context.</param>
    /// <param name="kind">A constant of <see cref="AccessKind"/>.</param>
    /// <param name="userId">Whom it concerns; null for nobody known.</param>
    /// <param name="detail">The kind's own detail as a key.</param>
    /// <param name="network">Already shortened.</param>
    /// <param name="byUserId">Who did it, where that is somebody else.</param>
    public async Task NoteAsync(StudioDb db, string kind, string? userId, string detail = "", string network = "", string byUserId = "")
    {
        log.LogInformation("At the door: {Kind}. Whom: {UserId}. By: {ByUserId}. Detail: {Detail}. From: {Network}.", kind, Or(userId), Or(byUserId), Or(detail), Or(network));
        if (Counted(kind) is { } written)
        {
            Add(db, written, written == kind ? userId : null, detail, written == kind ? network : "", byUserId);
        }

        await db.SaveChangesAsync();
    }

    /// <summary>Writes down which sign-ins ended, and saves.</summary>
    public async Task NoteEndedAsync(StudioDb db, IReadOnlyList<SignedIn> ended, string network = "", string byUserId = "")
    {
        foreach (var session in ended)
        {
            log.LogInformation("At the door: {Kind}. Whom: {UserId}. By: {ByUserId}. Detail: {Detail}. From: {Network}.", AccessKind.Ended, session.UserId, Or(byUserId), session.Ended, Or(network));
            Add(db, AccessKind.Ended, session.UserId, session.Ended, network, byUserId == session.UserId ? "" : byUserId);
        }

        await db.SaveChangesAsync();
    }

    private static string Or(string? said) => string.IsNullOrEmpty(said) ? "-" : said;

    private static void Add(StudioDb db, string kind, string? userId, string detail, string network, string byUserId) =>
        db.Add(new AccessEntry { At = db.Now, Kind = kind, UserId = userId ?? "", ByUserId = byUserId, Detail = detail, Network = network });

    // somebody who tries by the thousand must not fill the disk: the first of a minute are written down, then one line that says so
    private string? Counted(string kind)
    {
        if (kind is not (AccessKind.Failed or AccessKind.Delayed or AccessKind.NotTheirs))
        {
            return kind;
        }

        lock (turn)
        {
            var now = clock.GetUtcNow().UtcDateTime;
            (minute, failures) = now - minute >= TimeSpan.FromMinutes(1) ? (now, 1) : (minute, failures + 1);
            return failures switch
            {
                <= MostFailuresAMinute => kind,
                MostFailuresAMinute + 1 => AccessKind.Flood,
                _ => null,
            };
        }
    }
}
