using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Tips;

/// <summary>One tip as it is listed.</summary>
/// <param name="Own">True for one that the maker wrote.</param>
public sealed record TipLine(int Id, string Place, string Text, string Source, bool Own, bool Retired);

/// <summary>Reads and writes tips of the trade.</summary>
public sealed class TipBook(IDbContextFactory<StudioDb> factory, News news)
{
    /// <summary>Every tip by place, retired ones too if asked for.</summary>
    public async Task<IReadOnlyList<TipLine>> ListAsync(bool retired = false)
    {
        await using var db = await factory.CreateDbContextAsync();
        var all = await db.Set<Tip>().AsNoTracking().Where(t => retired || !t.Retired).OrderBy(t => t.Place).ThenBy(t => t.Id).ToListAsync();
        return [.. all.Select(Line)];
    }

    /// <summary>The tips beside one choice, the maker's own first.</summary>
    public async Task<IReadOnlyList<TipLine>> AtAsync(string place)
    {
        await using var db = await factory.CreateDbContextAsync();
        var all = await db.Set<Tip>().AsNoTracking().Where(t => !t.Retired && t.Place == place).OrderBy(t => t.Id).ToListAsync();
        return [.. all.Select(Line).OrderByDescending(t => t.Own)];
    }

    /// <summary>The form of one tip, or null when there is none of that number.</summary>
    public async Task<TipForm?> FormAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<Tip>().AsNoTracking().SingleOrDefaultAsync(t => t.Id == id) is { } tip ? TipForm.Of(tip) : null;
    }

    /// <summary>Keeps a form that the validator has passed.</summary>
    public Task<Saved> SaveAsync(TipForm form, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var tip = form.ToTip();
        var kept = tip.Id == 0 ? db.Add(tip).Entity : await db.OverwriteAsync(tip);
        await db.SaveChangesAsync();
        news.Tell(News.Stores, kept.Id);
        return Saved.Done(kept.Id);
    });

    /// <summary>Puts a tip away for everybody, or brings it back.</summary>
    public Task<Saved> TurnAsync(int id, bool retired, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Tip>().FindAsync(id) is not { } tip)
        {
            return Saved.Refused("This tip is no longer in the stores.");
        }

        tip.Retired = retired;
        await db.SaveChangesAsync();
        news.Tell(News.Stores, id);
        return Saved.Done(id);
    });

    private static TipLine Line(Tip t) => new(t.Id, t.Place, t.Text, t.Source, t.Seed.Length == 0, t.Retired);
}
