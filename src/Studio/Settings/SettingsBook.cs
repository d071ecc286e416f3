using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Settings;

/// <summary>Reads and writes the studio's settings.</summary>
public sealed class SettingsBook(IDbContextFactory<StudioDb> factory, News news)
{
    /// <summary>The settings; their defaults on a database that has none yet.</summary>
    public async Task<StudioSettings> ReadAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        return await db.Set<StudioSettings>().AsNoTracking().SingleOrDefaultAsync() ?? new StudioSettings();
    }

    /// <summary>Saves them; refused when somebody else saved since they were read.</summary>
    public Task<Saved> SaveAsync(StudioSettings settings, string by) => Saved.TryAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (new SettingsValidator().Validate(settings) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var stored = await db.Set<StudioSettings>().AnyAsync() ? await db.OverwriteAsync(settings) : db.Add(settings).Entity;
        await db.SaveChangesAsync();
        settings.Version = stored.Version;
        news.Tell(News.Settings);
        return Saved.Done(1);
    });

    /// <summary>The studio's time zone; UTC where the name is unknown to this machine.</summary>
    public async Task<TimeZoneInfo> ZoneAsync() =>
        TimeZoneInfo.TryFindSystemTimeZoneById((await ReadAsync()).TimeZone, out var zone) ? zone : TimeZoneInfo.Utc;
}
