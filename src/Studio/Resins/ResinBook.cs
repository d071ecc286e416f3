using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Cure;

namespace Studio.Resins;

/// <summary>One line of the resin ledger.</summary>
/// <param name="PartsBPer100A">Grams of B to 100 g of A; null where the sheet cannot say.</param>
/// <param name="Times">The printed row nearest to 23 °C.</param>
/// <param name="PricePerKg">By the best pack; null without one.</param>
/// <param name="Doubts">How many doubts its sheet raises.</param>
public sealed record ResinLine(
    int Id, string Name, string Class, double PartsA, double PartsB, string MixBy, double? PartsBPer100A, double? MaxPourMm,
    CureTimes? Times, bool Typical, decimal? PricePerKg, int Doubts, bool Retired);

/// <summary>What follows from a sheet: how to weigh it, and what it is short of.</summary>
public sealed record ResinGlance(double? DensityGPerMl, double? GramsAOf500, double? GramsBOf500, double? PartsBPer100A, decimal? PricePerKg, IReadOnlyList<Finding> Doubts);

/// <summary>Reads and writes resins.</summary>
public sealed class ResinBook(IDbContextFactory<StudioDb> factory, News news, IResinUse use)
{
    /// <summary>Every resin by name, retired ones too if asked for.</summary>
    public async Task<IReadOnlyList<ResinLine>> ListAsync(bool retired = false)
    {
        await using var db = await factory.CreateDbContextAsync();
        var all = await db.Set<Resin>().AsNoTracking().Where(r => retired || !r.Retired).ToListAsync();
        return [.. all.OrderBy(r => r.Name, StringComparer.OrdinalIgnoreCase).Select(Line)];
    }

    /// <summary>The form of one resin, or null when there is none of that number.</summary>
    public async Task<ResinForm?> FormAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Resin>().AsNoTracking().SingleOrDefaultAsync(r => r.Id == id) is { } resin ? ResinForm.Of(resin) : null;
    }

    /// <summary>In how many pieces it is poured or drawn.</summary>
    public async Task<int> UsesAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();

        return await use.PiecesAsync(db, id);
    }

    /// <summary>Keeps a form that the validator has passed.</summary>
    public Task<Saved> SaveAsync(ResinForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var resin = form.ToResin();
        if (await TakenAsync(db, resin))
        {
            return Saved.Refused($"There is a resin called “{resin.Name}” already. Give this one a name of its own, so that nobody pours the wrong one.");
        }

        var kept = resin.Id == 0 ? db.Add(resin).Entity : await db.OverwriteAsync(resin);
        await db.SaveChangesAsync();
        news.Tell(News.Stores, kept.Id);
        return Saved.Done(kept.Id);
    });

    /// <summary>Takes it out of the lists; pieces that use it keep it.</summary>
    public Task<Saved> RetireAsync(int id, string by) => SetRetiredAsync(id, retired: true, by);

    /// <summary>Puts it back into the lists.</summary>
    public Task<Saved> RestoreAsync(int id, string by) => SetRetiredAsync(id, retired: false, by);

    /// <summary>What the figures typed so far come to; parts that cannot be worked out yet are null.</summary>
    public static ResinGlance Glance(ResinForm form)
    {
        var resin = form.ToResin();
        var engine = Engine.Resins.MixedResin.Make(resin.Spec, "resin", new InputErrors());
        var split = engine?.Split(500);
        return new(engine?.DensityGPerMl, split?.AG, split?.BG, Per100(engine), PerKg(resin.Packs), ResinDoubts.Of(form));
    }

    private static ResinLine Line(Resin r) => new(
        r.Id, r.Name, r.Class, r.PartsA, r.PartsB, r.MixBy, Per100(Engine.Resins.MixedResin.Make(r.Spec, "resin", new InputErrors())), r.MaxPourMm,
        r.Times.MinBy(t => Math.Abs(t.AtCelsius - ResinTimesRow.UsualC)), r.Typical, PerKg(r.Packs), ResinDoubts.Of(ResinForm.Of(r)).Count(f => f.Severity != Severity.Note), r.Retired);

    private static double? Per100(Engine.Resins.MixedResin? resin) => resin?.Split(1) is { } share ? 100 * share.BG / share.AG : null;

    private static decimal? PerKg(IReadOnlyList<ResinPack> packs) => packs.Count == 0 ? null : packs.Min(p => p.Price * 1000 / (decimal)p.SizeG);

    private static async Task<bool> TakenAsync(StudioDb db, Resin resin) =>
        !resin.Retired && (await db.Set<Resin>().Where(r => !r.Retired && r.Id != resin.Id).Select(r => r.Name).ToListAsync()).Contains(resin.Name, StringComparer.OrdinalIgnoreCase);

    private Task<Saved> SetRetiredAsync(int id, bool retired, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Resin>().FindAsync(id) is not { } resin)
        {
            return Saved.Refused("This resin is no longer in the stores.");
        }

        resin.Retired = retired;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, id);
        return Saved.Done(id);
    });
}
