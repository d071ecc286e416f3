using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>All reads and writes of keepsakes. Their custody is a list that only grows; what is true now is read from it.</summary>
public sealed partial class KeepsakeBook(IDbContextFactory<StudioDb> factory, SettingsBook settings, News news, IPieceNames pieces, IPourNames pours)
{
    private const int MostTries = 6;

    /// <summary>What the intake shows of its commission; null when there is none.</summary>
    public async Task<IntakeFor?> IntakeForAsync(int commissionId)
    {
        var places = (await settings.ReadAsync()).Places;
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Commission>().AsNoTracking().Where(c => c.Id == commissionId)
            .Select(c => new IntakeFor(c.Id, c.Number, c.Title, c.Remembers, c.Customer!.Name, places, db.Set<Keepsake>().Count(k => k.CommissionId == c.Id)))
            .SingleOrDefaultAsync();
    }

    /// <summary>The number that a form with this key got already; null when it is not kept yet.</summary>
    public async Task<string?> NumberOfAsync(string submitKey)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Keepsake>().Where(k => k.SubmitKey == submitKey).Select(k => k.EntryNumber).SingleOrDefaultAsync();
    }

    /// <param name="owner">True where the person may overrule that an only photograph is never cast.</param>
    /// <summary>Takes a keepsake in: its number, the first link of its chain and its photographs, all or nothing. The same form twice adds nothing.</summary>
    public async Task<TakenIn> TakeInAsync(int commissionId, IntakeForm form, string by, bool owner = false)
    {
        TakenIn? taken = null;
        var zone = await settings.ZoneAsync();
        var saved = await Saved.TryAsync(async () =>
        {
            for (var i = 1; ; i++)
            {
                try
                {
                    taken = await TryTakeInAsync(commissionId, form, by, owner, zone);
                    return taken.Ok ? Saved.Done(taken.Id) : Saved.Refused(taken.Words);
                }
                catch (DbUpdateException e) when (i < MostTries && Taken(e))
                {
                    // somebody else got this number, or this very form, in the same moment: look again
                }
            }
        });
        if (!saved.Ok)
        {
            return new TakenIn(0, "", saved.Words);
        }

        if (!taken!.Again)
        {
            news.Tell(News.Keepsake, taken.Id);
            news.Tell(News.Commission, commissionId);
        }

        return taken;
    }

    private async Task<TakenIn> TryTakeInAsync(int commissionId, IntakeForm form, string by, bool owner, TimeZoneInfo zone)
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var transaction = await db.Database.BeginTransactionAsync();
        var before = await db.Set<Keepsake>().Where(k => k.SubmitKey == form.SubmitKey).Select(k => new { k.Id, k.EntryNumber }).SingleOrDefaultAsync();
        if (before is not null)
        {
            return new TakenIn(before.Id, before.EntryNumber, Again: true);
        }

        var customer = await db.Set<Commission>().Where(c => c.Id == commissionId).Select(c => c.Customer!.Name).SingleOrDefaultAsync();
        if (customer is null)
        {
            return new TakenIn(0, "", "The commission is not there any more. Nothing you typed is lost: open the commissions and find where this keepsake belongs.");
        }

        var year = Say.Local(db.Now, zone).Year;
        var number = EntryNumber.Create(year, await AllotAsync(db, year)).ToString();
        var keepsake = New(commissionId, form, number, db.Now);
        if (Overrule(keepsake, form, by, owner) is { } refused)
        {
            return new TakenIn(0, "", refused.Message);
        }

        db.Add(keepsake);
        await db.SaveChangesAsync();
        var received = Received(keepsake, customer, by);
        db.Add(received);
        CustodyLog.Follow(keepsake, [received]);
        await AttachAsync(db, keepsake.Id, form.PhotoIds);
        await db.SaveChangesAsync();
        await transaction.CommitAsync();
        return new TakenIn(keepsake.Id, number);
    }

    // raising the year's row locks it until the transaction ends, so that two takings-in cannot read the same number
    private static async Task<int> AllotAsync(StudioDb db, int year)
    {
        var counters = db.Set<EntryCounter>();
        if (await counters.Where(c => c.Id == year).ExecuteUpdateAsync(s => s.SetProperty(c => c.Last, c => c.Last + 1)) == 0)
        {
            counters.Add(new EntryCounter { Id = year, Last = 1 });
            await db.SaveChangesAsync();
            return 1;
        }

        return await counters.Where(c => c.Id == year).Select(c => c.Last).SingleAsync();
    }

    private static Keepsake New(int commissionId, IntakeForm form, string number, DateTime now)
    {
        var keepsake = new Keepsake { CommissionId = commissionId, EntryNumber = number, ReceivedAt = now, SubmitKey = form.SubmitKey, Place = form.Place.Trim(), Count = (int)(form.Count ?? 1), MassG = form.MassG };
        Fill(keepsake, form);
        return keepsake;
    }

    // all that a correction may change too; place and amounts follow from the log
    private static void Fill(Keepsake keepsake, IntakeForm form)
    {
        keepsake.Kind = form.Kind;
        keepsake.Description = form.Description.Trim();
        keepsake.ConditionWords = [.. form.AllConditionWords];
        keepsake.ConditionNote = form.ConditionNote.Trim();
        keepsake.Permits = form.Permits;
        keepsake.PartCount = form.MayCast == CastShare.Part ? (int?)form.PartCount : null;
        keepsake.PartG = form.MayCast == CastShare.Part ? form.PartG : null;
        keepsake.Method = form.Method;
        keepsake.Requirements = form.Requirements.Trim();
        keepsake.DepositorName = form.DepositorName.Trim();
        keepsake.DepositorAuthority = form.DepositorAuthority.Trim();
        keepsake.Packing = form.Packing.Trim();
        keepsake.ReturnBy = form.ReturnDay;
    }

    private static KeepsakeEvent Received(Keepsake keepsake, string owner, string by) => new()
    {
        KeepsakeId = keepsake.Id,
        At = keepsake.ReceivedAt,
        By = by,
        Kind = CustodyKind.Received,
        Place = keepsake.Place,
        Count = keepsake.Count,
        MassG = keepsake.MassG,
        Whom = keepsake.DepositorName.Length > 0 ? keepsake.DepositorName : owner,
        Words = keepsake.Method,
    };

    // 19: a constraint was broken (sqlite.org/rescode.html); 23505: unique violation (PostgreSQL, Appendix A)
    private static bool Taken(DbUpdateException e) => e.InnerException is Microsoft.Data.Sqlite.SqliteException { SqliteErrorCode: 19 } or Npgsql.PostgresException { SqlState: "23505" };
}
