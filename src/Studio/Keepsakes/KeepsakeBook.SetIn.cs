using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>What went into a layer of one keepsake.</summary>
/// <param name="KeepsakeId">The keepsake.</param>
/// <param name="Copy">A copy of it, and nothing of the thing itself.</param>
/// <param name="Count">[pieces]; 0 for a part of one.</param>
/// <param name="MassG">[g]; null where it was not weighed.</param>
/// <param name="RestPlace">Where the rest lies; empty where nothing is left.</param>
public sealed record SetInto(int KeepsakeId, bool Copy, int Count, double? MassG, string RestPlace);

/// <content>What the bench writes into a keepsake's log, inside its own save.</content>
public sealed partial class KeepsakeBook
{
    /// <summary>Why so much cannot go in, for each that cannot, by the keepsake's id. Nothing is written.</summary>
    public static async Task<IReadOnlyDictionary<int, InputError>> SetInRefusalsAsync(StudioDb db, IReadOnlyList<SetInto> all)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(all);
        var refused = new Dictionary<int, InputError>();
        foreach (var one in all)
        {
            if (await db.Set<Keepsake>().AsNoTracking().SingleOrDefaultAsync(k => k.Id == one.KeepsakeId) is not { } keepsake)
            {
                refused[one.KeepsakeId] = new("", "A keepsake of this layer is not in the ledger any more. Take it out of the design first.", "gone");
                continue;
            }

            var now = CustodyLog.Read(await LogAsync(db, one.KeepsakeId));
            var after = now.Balance.Held.Count - one.Count > 0 || (now.Balance.Held.MassG is { } g && g - (one.MassG ?? g) > CustodyLedger.ScaleSlackG) || (one.Count == 0 && now.Balance.Held.Count > 0);
            if ((CustodyRules.Refusal(Act(one), keepsake.Subject, now) ?? (!one.Copy && after && one.RestPlace.Trim().Length == 0
                ? new InputError("restPlace", "Say where the rest of it lies.", "rest-place-missing") : null)) is { } why)
            {
                refused[one.KeepsakeId] = why with { Message = $"{keepsake.EntryNumber}, {keepsake.Description}: {why.Message}" };
            }
        }

        return refused;
    }

    /// <summary>Appends that a keepsake went in with a pour. Nothing is saved here; the caller's save keeps it together with the pour, after <see cref="SetInRefusalsAsync"/>.</summary>
    public static async Task SetInAsync(StudioDb db, SetInto one, int pieceId, int layerId, int pourId, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        ArgumentNullException.ThrowIfNull(one);
        var keepsake = await db.Set<Keepsake>().SingleAsync(k => k.Id == one.KeepsakeId);
        Append(db, keepsake, await LogAsync(db, keepsake.Id), new KeepsakeEvent
        {
            KeepsakeId = keepsake.Id,
            At = db.Now,
            By = by,
            Kind = Act(one).Kind,
            Count = one.Copy ? null : one.Count,
            MassG = one.Copy ? null : one.MassG,
            Place = one.RestPlace.Trim(),
            PieceId = pieceId,
            LayerId = layerId,
            PourId = pourId,
        });
    }

    /// <summary>Appends that a keepsake's photograph was printed on film, where no copy of it is noted yet. The caller saves.</summary>
    public static async Task CopiedOnFilmAsync(StudioDb db, int keepsakeId, string by)
    {
        ArgumentNullException.ThrowIfNull(db);
        var keepsake = await db.Set<Keepsake>().SingleAsync(k => k.Id == keepsakeId);
        var log = await LogAsync(db, keepsakeId);
        if (CustodyLog.Read(log) is { Copied: false } now && CustodyRules.Refusal(CustodyKind.Copied, keepsake.Subject, now) is null)
        {
            Append(db, keepsake, log, new KeepsakeEvent { KeepsakeId = keepsakeId, At = db.Now, By = by, Kind = CustodyKind.Copied, Words = "its photograph, printed on film" });
        }
    }

    /// <summary>What a pour holds, by the log: the entry, its keepsake and how much.</summary>
    public static async Task<IReadOnlyList<(Keepsake Keepsake, CustodySet Set)>> HeldByPourAsync(StudioDb db, int pourId)
    {
        ArgumentNullException.ThrowIfNull(db);
        var ids = await db.Set<KeepsakeEvent>().Where(e => e.PourId == pourId).Select(e => e.KeepsakeId).Distinct().ToListAsync();
        var held = new List<(Keepsake, CustodySet)>();
        foreach (var keepsake in await db.Set<Keepsake>().Where(k => ids.Contains(k.Id)).OrderBy(k => k.Id).ToListAsync())
        {
            held.AddRange(CustodyLog.Read(await LogAsync(db, keepsake.Id)).SetIn.Where(s => s.PourId == pourId).Select(s => (keepsake, s)));
        }

        return held;
    }

    /// <summary>What lies in a piece of the family's things, by the log: number, what it is and how much, a line each.</summary>
    public static async Task<IReadOnlyList<string>> InPieceAsync(StudioDb db, int pieceId, bool copies = true)
    {
        ArgumentNullException.ThrowIfNull(db);
        var ids = await db.Set<KeepsakeEvent>().Where(e => e.PieceId == pieceId).Select(e => e.KeepsakeId).Distinct().ToListAsync();
        var lines = new List<string>();
        foreach (var keepsake in await db.Set<Keepsake>().Where(k => ids.Contains(k.Id)).OrderBy(k => k.Id).ToListAsync())
        {
            lines.AddRange(CustodyLog.Read(await LogAsync(db, keepsake.Id)).SetIn.Where(s => s.PieceId == pieceId && (copies || !s.Copy))
                .Select(s => $"{keepsake.EntryNumber}, {keepsake.Description}: {(s.Copy ? "a copy" : CustodyWords.Amount(s.Amount.Count, s.Amount.MassG))}"));
        }

        return lines;
    }

    /// <summary>What of a commission's things lies in pieces that do not go to the family: number, what it is and how much, a line each.</summary>
    public static async Task<IReadOnlyList<string>> StayingAsync(StudioDb db, IReadOnlySet<int> pieceIds)
    {
        ArgumentNullException.ThrowIfNull(pieceIds);
        var lines = new List<string>();
        foreach (var piece in pieceIds.Order())
        {
            lines.AddRange(await InPieceAsync(db, piece, copies: false));
        }

        return lines;
    }

    /// <summary>Appends that everything a pour held is out again, whatever was done with it since. The caller saves.</summary>
    /// <param name="place">Where it lies now.</param>
    public static async Task TakeOutAsync(StudioDb db, int pourId, string place, string by)
    {
        foreach (var (keepsake, set) in await HeldByPourAsync(db, pourId))
        {
            var log = await LogAsync(db, keepsake.Id);
            Append(db, keepsake, log, new KeepsakeEvent
            {
                KeepsakeId = keepsake.Id,
                At = db.Now,
                By = by,
                Kind = CustodyKind.TakenOut,
                RefId = set.EntryId,
                PieceId = set.PieceId,
                LayerId = set.LayerId,
                PourId = set.PourId,
                Place = set.Copy ? "" : place.Trim(),
            });
        }
    }

    private static CustodyAct Act(SetInto one) =>
        one.Copy ? new(CustodyKind.CopySetIn) : new(CustodyKind.SetIn) { Count = one.Count, MassG = one.MassG, Unweighed = one is { Count: 0, MassG: null } };

    private static async Task<List<KeepsakeEvent>> LogAsync(StudioDb db, int id)
    {
        var saved = await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => e.KeepsakeId == id).OrderBy(e => e.Id).ToListAsync();
        return [.. saved, .. db.ChangeTracker.Entries<KeepsakeEvent>().Where(e => e.State == EntityState.Added && e.Entity.KeepsakeId == id).Select(e => e.Entity)];
    }

    private static void Append(StudioDb db, Keepsake keepsake, List<KeepsakeEvent> log, KeepsakeEvent entry)
    {
        db.Add(entry);
        CustodyLog.Follow(keepsake, [.. log, entry]);
        db.Entry(keepsake).State = EntityState.Modified; // even a note raises the version: two people never append unseen
    }
}
