using Studio.Data;

namespace Studio.Commissions;

/// <summary>Reads and writes commissions and their story.</summary>
public sealed partial class CommissionBook
{
    /// <summary>
    /// Adds one sentence to a commission's story. It is written by the caller's own save, so it is on disk exactly when the thing it tells of is;
    /// the caller tells the news afterwards.
    /// </summary>
    /// <param name="db">The caller's open context; nothing is saved here.</param>
    /// <param name="commissionId">The commission.</param>
    /// <param name="kind">Open key: <c>stands</c>, <c>quote</c>, <c>payment</c>, <c>keepsake</c>, <c>piece</c>, <c>note</c>.</param>
    /// <param name="words">A whole sentence.</param>
    /// <param name="by">Who did it.</param>
    public static void Append(StudioDb db, int commissionId, string kind, string words, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentException.ThrowIfNullOrWhiteSpace(words);
        db.Set<CommissionEvent>().Add(new CommissionEvent { CommissionId = commissionId, At = db.Now, By = by, Kind = kind, Words = words.Trim() });
    }

    /// <summary>
    /// Moves a commission on when it stands at <paramref name="from"/>, and leaves it alone otherwise: sending a second price does not send an agreed commission back.
    /// Written by the caller's own save, like <see cref="Append"/>.
    /// </summary>
    public static async Task MoveIfAsync(StudioDb db, int commissionId, string from, string to, string words, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        var commission = await db.Set<Commission>().FindAsync(commissionId);
        if (commission?.Stands == from)
        {
            commission.Stands = to;
            Append(db, commissionId, "stands", words, by);
        }
    }
}
