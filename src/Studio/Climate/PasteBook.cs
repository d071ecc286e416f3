using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Settings;

namespace Studio.Climate;

/// <summary>What became of a pasted table.</summary>
/// <param name="Ids">The readings that were kept, for taking them back.</param>
/// <param name="There">Were there already: same place, same time, same figure.</param>
public sealed record Pasted(Saved Saved, IReadOnlyList<int> Ids, int There, IReadOnlyList<PastedError> Errors);

/// <summary>Keeps readings that were pasted as a table.</summary>
public sealed class PasteBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, SettingsBook settings)
{
    /// <summary>Keeps the good lines; the others are told by their number.</summary>
    public async Task<Pasted> KeepAsync(string text, string place, string by)
    {
        var now = clock.GetUtcNow().UtcDateTime;
        var (readings, errors) = ReadingText.Read(text, now, await settings.ZoneAsync());
        if (readings.Count == 0)
        {
            return new(Saved.Refused("Nothing was kept. See the lines below."), [], 0, errors);
        }

        place = string.IsNullOrWhiteSpace(place) ? RoomBook.CastingRoom : place.Trim();
        List<Reading> kept = [];
        var saved = await Saved.TryAsync(async () =>
        {
            await using var db = await factory.CreateDbContextAsync();
            var (from, to) = (readings.Min(r => r.At), readings.Max(r => r.At));
            var there = (await db.Set<Reading>().Where(r => r.Place == place && !r.Withdrawn && r.At >= from && r.At <= to).Select(r => new { r.At, r.Celsius }).ToListAsync())
                .Select(r => (r.At, r.Celsius)).ToHashSet();
            kept.AddRange(readings.Where(r => there.Add((r.At, r.Celsius))).Select(r => new Reading { At = r.At, Place = place, Celsius = r.Celsius, HumidityPercent = r.HumidityPercent, By = by, ReceivedAt = now }));
            db.AddRange(kept);
            await db.SaveChangesAsync();
            news.Tell(News.Room);
            return Saved.Done();
        });
        return new(saved, [.. kept.Select(r => r.Id)], readings.Count - kept.Count, errors);
    }

    /// <summary>Takes a paste back as a slip; its readings stay, not counted.</summary>
    public Task<Saved> TakeBackAsync(IReadOnlyList<int> ids) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        foreach (var some in ids.Chunk(500))
        {
            await db.Set<Reading>().Where(r => some.Contains(r.Id)).ExecuteUpdateAsync(s => s.SetProperty(r => r.Withdrawn, true));
        }

        news.Tell(News.Room);
        return Saved.Done();
    });
}
