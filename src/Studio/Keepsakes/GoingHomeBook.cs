using System.Data;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Papers;
using Studio.Settings;

namespace Studio.Keepsakes;

/// <summary>Everything left over goes back in one act: one entry for each keepsake, and one paper that is kept as it left.</summary>
public sealed class GoingHomeBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, SettingsBook settings, IssuedBook issued, IPieceNames pieces, News news)
{
    /// <summary>What is here of a commission's keepsakes, and what is not; null when there is no such commission.</summary>
    public async Task<GoingHomeView?> ReadAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        if (await db.Set<Commission>().AsNoTracking().Include(c => c.Customer).SingleOrDefaultAsync(c => c.Id == commissionId) is not { } commission)
        {
            return null;
        }

        var staying = await pieces.StayingAsync(db, commissionId);
        var lines = (await KeptAsync(db.Set<Keepsake>().AsNoTracking(), db, commissionId)).ConvertAll(k => Line(k.Keepsake, k.Log, Standing.Ended.Contains(commission.Stands, StringComparer.Ordinal), staying));
        return new(commissionId, commission.Number, commission.Title, commission.Remembers, commission.Customer!.Name, [.. lines.Where(l => l.Now.Balance.InHand)], [.. lines.Where(l => !l.Now.Balance.InHand)],
            await KeepsakeBook.StayingAsync(db, staying), await pieces.HereAsync(db, commissionId));
    }

    /// <summary>Writes down that these went home. All of it is kept, or nothing.</summary>
    /// <returns>Done with the paper's id.</returns>
    public Task<Saved> GoAsync(int commissionId, GoingHomeForm form, string by) => Saved.TryAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(form);
        if (new GoingHomeValidator().Validate(form) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        var house = PaperHouse.Of(await settings.ReadAsync());
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var whole = await db.Database.BeginTransactionAsync(IsolationLevel.Serializable);
        if (await db.Set<IssuedPaper>().Where(p => p.SubmitKey == form.SubmitKey).Select(p => p.Id).FirstOrDefaultAsync() is > 0 and var sent)
        {
            return Saved.Done(sent);
        }

        if (await db.Set<Commission>().AsNoTracking().Include(c => c.Customer).SingleOrDefaultAsync(c => c.Id == commissionId) is not { } commission)
        {
            return Saved.Refused("This commission is not in the book. Go back to the list.");
        }

        var kept = await KeptAsync(db.Set<Keepsake>(), db, commissionId);
        if (Refusals(form, kept) is { Count: > 0 } refused)
        {
            return Saved.Refused(string.Join(" ", refused));
        }

        var staying = await pieces.StayingAsync(db, commissionId);
        var here = await pieces.HereAsync(db, commissionId);
        if (form.PieceIds.Find(id => !here.Any(p => p.Id == id && p.Finished)) is > 0)
        {
            return Saved.Refused("A piece of this list is not here as finished any more. Load the page again.");
        }

        var parcel = new Dictionary<int, CustodyAmount>();
        foreach (var (keepsake, log) in kept)
        {
            if (form.Rows.Find(r => r.Goes && r.KeepsakeId == keepsake.Id) is { } row)
            {
                var act = row.Much.Amounts(CustodyLog.Read(log));
                parcel[keepsake.Id] = new(act.Count, act.MassG);
                var entry = new KeepsakeEvent { KeepsakeId = keepsake.Id, At = db.Now, By = by, Kind = CustodyKind.Returned, Count = act.Count, MassG = act.MassG, Whom = form.Whom.Trim(), Words = form.Packing.Trim() };
                db.Add(entry);
                log.Add(entry);
                CustodyLog.Follow(keepsake, log);
            }
        }

        var paper = ReturnPaper.Create(
            new ReturnPaperModel
            {
                Studio = house.Letterhead,
                Format = house.Format,
                Commission = commission.Number,
                Remembers = commission.Remembers,
                Family = new PaperPerson(commission.Customer!.Name, PaperHouse.Lines(commission.Customer.Address), commission.Customer.Phone, commission.Customer.Email),
                Whom = form.Whom.Trim(),
                Packing = form.Packing.Trim(),
                WrittenUtc = clock.GetUtcNow().UtcDateTime,
                Rows = kept.ConvertAll(k => new ReturnPaperRow(k.Keepsake.EntryNumber, k.Keepsake.Description, CustodyLog.Read(k.Log), parcel.TryGetValue(k.Keepsake.Id, out var goes) ? goes : null, staying)),
                Pieces = [.. here.Select(p => new ReturnPaperPiece(p.Name, form.PieceIds.Contains(p.Id), p.Words))],
            },
            house.Size);
        var left = await issued.KeepAsync(db, new IssuedPaper { Kind = PaperKinds.Return, Number = commission.Number, CommissionId = commissionId, FileName = $"going-home-{commission.Number}.pdf", By = by, State = "given", SubmitKey = form.SubmitKey }, paper);
        await pieces.LeaveAsync(db, form.PieceIds);
        await db.SaveChangesAsync();
        await whole.CommitAsync();
        news.Tell(News.Piece);
        news.Tell(News.Keepsake);
        news.Tell(News.Commission, commissionId);
        return Saved.Done(left.Id);
    });

    private static List<string> Refusals(GoingHomeForm form, List<(Keepsake Keepsake, List<KeepsakeEvent> Log)> kept)
    {
        var refused = new List<string>();
        foreach (var row in form.Rows.Where(r => r.Goes))
        {
            var (keepsake, log) = kept.Find(k => k.Keepsake.Id == row.KeepsakeId);
            if (keepsake is null)
            {
                refused.Add("A keepsake of this list is not with this commission any more. Load the page again.");
                continue;
            }

            var now = CustodyLog.Read(log);
            if (CustodyRules.Refusal(row.Much.Amounts(now), keepsake.Subject, now) is { } why)
            {
                refused.Add($"{keepsake.EntryNumber}, {keepsake.Description}: {why.Message}");
            }
        }

        return refused;
    }

    // in the order in which they came; those that were logged by mistake are on no paper
    private static async Task<List<(Keepsake Keepsake, List<KeepsakeEvent> Log)>> KeptAsync(IQueryable<Keepsake> keepsakes, StudioDb db, int commissionId)
    {
        var all = await keepsakes.Where(k => k.CommissionId == commissionId && k.Custody != CustodyWhereabouts.Withdrawn).OrderBy(k => k.Id).ToListAsync();
        var ids = all.ConvertAll(k => k.Id);
        var logs = (await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => ids.Contains(e.KeepsakeId)).OrderBy(e => e.Id).ToListAsync()).ToLookup(e => e.KeepsakeId);
        return all.ConvertAll(k => (k, logs[k.Id].ToList()));
    }

    private static GoingHomeLine Line(Keepsake k, List<KeepsakeEvent> log, bool ended, IReadOnlySet<int> staying)
    {
        var now = CustodyLog.Read(log);
        return new(k.Id, k.EntryNumber, k.Description, now.Place, now, CustodyWords.Balance(now.Balance), k.Permission.OnForm, ended ? "" : Yet(k.Permission, now, staying));
    }

    // what they lent to be cast or copied and is not, is not left over
    private static string Yet(PermissionRule permits, CustodyState now, IReadOnlySet<int> staying)
    {
        bool Goes(CustodySet s) => s.PieceId is not { } p || !staying.Contains(p);
        return permits.MayCast switch
        {
            CastShare.All or CastShare.Part when !now.SetIn.Any(Goes) => "It is to be cast, and nothing of it is in a piece that goes to them.",
            CastShare.Copy when !now.Copied => "It is to be copied, and no copy is written down.",
            _ => "",
        };
    }
}
