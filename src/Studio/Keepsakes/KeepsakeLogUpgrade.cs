using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>
/// Brings the logs of versions before 0.4, which were sentences, into entries with references and amounts. What a sentence told stays beside
/// its entry as it was written; what cannot be told from the records is left open, and nothing is made up.
/// </summary>
internal sealed class KeepsakeLogUpgrade(IPieceNames pieces, IPourNames pours) : IUpgrade
{
    private const string Embedded = "embedded";
    private const string CopyCast = "copy-cast";
    private const string UndonePrefix = "undone:";
    private const string WithPrefix = "With ";

    public async Task UpgradeAsync(StudioDb db)
    {
        var waiting = await db.Set<KeepsakeEvent>().Where(e => e.Format == 0).Select(e => e.KeepsakeId).Distinct().ToListAsync();
        if (waiting.Count == 0)
        {
            return;
        }

        await using var whole = await db.Database.BeginTransactionAsync();
        (db.By, db.Now) = ("the upgrade", db.Now);
        foreach (var keepsake in await db.Set<Keepsake>().Where(k => waiting.Contains(k.Id)).OrderBy(k => k.Id).ToListAsync())
        {
            var log = await db.Set<KeepsakeEvent>().Where(e => e.KeepsakeId == keepsake.Id).OrderBy(e => e.Id).ToListAsync();
            var named = await pieces.OfCommissionAsync(db, keepsake.CommissionId);
            foreach (var entry in log.Where(e => e.Format == 0))
            {
                await RewriteAsync(db, keepsake, entry, log, named);
            }

            CustodyLog.Follow(keepsake, log);
            await NameTellingsAsync(db, keepsake, log);
        }

        await db.SaveChangesAsync();
        await whole.CommitAsync();
    }

    private async Task RewriteAsync(StudioDb db, Keepsake keepsake, KeepsakeEvent e, List<KeepsakeEvent> log, IReadOnlyList<PieceName> named)
    {
        (e.OldWords, e.Words, e.Format, e.Changes) = (e.Words, "", KeepsakeEvent.Now, []);
        var before = CustodyLog.Read(log.TakeWhile(o => o.Id < e.Id));
        switch (e.Kind)
        {
            case CustodyKind.Received:
                (e.Count, e.Words) = (keepsake.Count, keepsake.Method);
                break;
            case Embedded:
                // where all of it went in, the old log named the piece as its place; else a rest stayed, and how many went in was not kept
                var all = e.Place.Length > 0;
                (e.Kind, e.Place, e.Count, e.MassG) = (CustodyKind.SetIn, "", all ? before.Balance.Held.Count : 0, e.MassG ?? (all ? before.Balance.Held.MassG : null));
                await IntoAsync(db, keepsake, e, named);
                break;
            case CopyCast:
                (e.Kind, e.MassG) = (CustodyKind.CopySetIn, null);
                await IntoAsync(db, keepsake, e, named);
                break;
            case CustodyKind.Returned when !before.Balance.InHand && before.Balance.SetIn.Count > 0:
                (e.Kind, e.Whom, e.Place, e.MassG) = (CustodyKind.HomeInPiece, With(e.Place), "", null);
                break;
            case CustodyKind.Returned:
                (e.Whom, e.Place, e.Count, e.MassG) = (With(e.Place), "", before.Balance.Held.Count, e.MassG ?? before.Balance.Held.MassG);
                break;
            default:
                if (e.Kind.StartsWith(UndonePrefix, StringComparison.Ordinal) && int.TryParse(e.Kind.AsSpan(UndonePrefix.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var undone))
                {
                    (e.Kind, e.RefId) = (CustodyKind.Undone, undone);
                }

                break;
        }
    }

    // one piece of the commission is named in the sentence, and no other: then it is that one
    private async Task IntoAsync(StudioDb db, Keepsake keepsake, KeepsakeEvent e, IReadOnlyList<PieceName> named)
    {
        var told = named.Where(p => e.OldWords.Contains("into " + p.Name, StringComparison.Ordinal)).ToList();
        var longest = told.Where(p => told.All(o => o == p || !o.Name.Contains(p.Name, StringComparison.Ordinal))).ToList();
        if (longest is not [var piece])
        {
            return;
        }

        e.PieceId = piece.Id;
        if (await pours.HoldingAsync(db, piece.Id, keepsake.Id) is [var (pour, layer)])
        {
            (e.PourId, e.LayerId) = (pour, layer);
        }
    }

    // the commission's story told the same in its own words: from now on the entry is told, and once
    private static async Task NameTellingsAsync(StudioDb db, Keepsake keepsake, List<KeepsakeEvent> log)
    {
        foreach (var telling in await db.Set<CommissionEvent>().Where(t => t.CommissionId == keepsake.CommissionId && t.Kind == "keepsake" && t.About == "").ToListAsync())
        {
            if (telling.Words.StartsWith(keepsake.EntryNumber, StringComparison.Ordinal) && log.Find(e => e.At == telling.At) is { } entry)
            {
                telling.About = string.Create(CultureInfo.InvariantCulture, $"keepsake/{keepsake.Id}/{entry.Id}");
            }
        }
    }

    private static string With(string place) => place.StartsWith(WithPrefix, StringComparison.Ordinal) ? place[WithPrefix.Length..] : "";
}
