using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Bubbles;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Stores;

/// <summary>A pot with what may be planned in it today.</summary>
/// <param name="Plan">At its working pressure.</param>
public sealed record PotLine(Pot Pot, PotPlan Plan);

/// <summary>Reads and writes pressure pots.</summary>
public sealed class PotBook(IDbContextFactory<StudioDb> factory, News news, TimeProvider clock, SettingsBook settings)
{
    /// <summary>Every pot by name, retired ones too if asked for.</summary>
    public async Task<IReadOnlyList<PotLine>> ListAsync(bool retired = false)
    {
        var today = await TodayAsync();
        await using var db = await factory.CreateDbContextAsync();
        var all = await db.Set<Pot>().AsNoTracking().Where(p => retired || !p.Retired).ToListAsync();
        return [.. all.OrderBy(p => p.Name, StringComparer.OrdinalIgnoreCase).Select(p => new PotLine(p, Plan(p, today)))];
    }

    /// <summary>The form of one pot, or null when there is none of that number.</summary>
    public async Task<PotForm?> FormAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Pot>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == id) is { } pot ? PotForm.Of(pot) : null;
    }

    /// <summary>The studio's day: tests fall due by it.</summary>
    public async Task<DateOnly> TodayAsync() => DateOnly.FromDateTime(Say.Local(clock.GetUtcNow().UtcDateTime, await settings.ZoneAsync()));

    /// <summary>What may be planned in a pot on a day.</summary>
    public static PotPlan Plan(Pot pot, DateOnly today) => PotPlan.Of(new PressurePot(pot.RatedBar, pot.TestedOn, pot.TestDueOn, Litres(pot)), pot.WorkingBar ?? 0, today);

    /// <summary>Keeps a form that the validator has passed.</summary>
    public Task<Saved> SaveAsync(PotForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var pot = form.ToPot();
        if (!pot.Retired && (await db.Set<Pot>().Where(p => !p.Retired && p.Id != pot.Id).Select(p => p.Name).ToListAsync()).Contains(pot.Name, StringComparer.OrdinalIgnoreCase))
        {
            return Saved.Refused($"There is a pot called “{pot.Name}” already. Give this one a name of its own, so that nobody takes the wrong rating.");
        }

        var kept = pot.Id == 0 ? db.Add(pot).Entity : await db.OverwriteAsync(pot);
        await db.SaveChangesAsync();
        news.Tell(News.Stores, kept.Id);
        return Saved.Done(kept.Id);
    });

    /// <summary>Takes it out of the lists, or puts it back.</summary>
    public Task<Saved> RetireAsync(int id, bool retired, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Pot>().FindAsync(id) is not { } pot)
        {
            return Saved.Refused("This pot is no longer in the stores.");
        }

        pot.Retired = retired;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, id);
        return Saved.Done(id);
    });

    private static double? Litres(Pot pot) => pot is { InnerDiameterMm: { } d, InnerHeightMm: { } h } ? Math.PI * d * d / 4 * h / 1e6 : null;
}
