using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Climate;

/// <summary>A sensor as it is being typed.</summary>
public sealed class SensorForm
{
    public int Id { get; set; }

    public int Version { get; set; }

    public string Name { get; set; } = "";

    /// <summary>Empty for a probe that is put into layers.</summary>
    public string Place { get; set; } = RoomBook.CastingRoom;

    /// <summary><c>post</c> or <c>mqtt</c>.</summary>
    public string Way { get; set; } = "post";

    public string Topic { get; set; } = "";

    public string CelsiusField { get; set; } = "";

    public string HumidityField { get; set; } = "";

    /// <summary><c>C</c> or <c>F</c>; for <c>mqtt</c>.</summary>
    public string Unit { get; set; } = "C";

    public double? CorrectionK { get; set; }

    public double? EveryMinutes { get; set; } = 10;
}

/// <summary>A sensor as a page shows it.</summary>
/// <param name="Last">Its newest reading that counts.</param>
/// <param name="Dead">True when it has not been heard for three times as long as it should take.</param>
public sealed record SensorNow(Sensor Sensor, RoomNow? Last, bool Dead);

/// <summary>How making a sensor ended; the token is shown once and not kept.</summary>
public sealed record SensorMade(Saved Saved, string? Token);

/// <summary>Reads and writes sensors.</summary>
public sealed class SensorBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news)
{
    /// <summary>Those in use, by name.</summary>
    public async Task<IReadOnlyList<SensorNow>> ListAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        var sensors = await db.Set<Sensor>().AsNoTracking().Where(s => s.RemovedAt == null).OrderBy(s => s.Name).ToListAsync();
        var now = clock.GetUtcNow().UtcDateTime;
        List<SensorNow> all = [];
        foreach (var sensor in sensors)
        {
            var last = await RoomReadings.Counted(db).Where(r => r.SensorId == sensor.Id).OrderByDescending(r => r.At)
                .Select(r => new RoomNow(r.Id, r.At, r.Celsius, r.HumidityPercent, r.Place, r.By)).FirstOrDefaultAsync();
            all.Add(new(sensor, last, IsDead(sensor, now)));
        }

        return all;
    }

    /// <summary>True when a sensor has not been heard for three times as long as it should take, and at least a quarter of an hour.</summary>
    public static bool IsDead(Sensor sensor, DateTime now) => (now - (sensor.HeardAt ?? sensor.MadeAt)).TotalMinutes > Math.Max(15, 3 * sensor.EveryMinutes);

    /// <summary>Keeps a form that the validator has passed; a new one that posts gets its token.</summary>
    public async Task<SensorMade> SaveAsync(SensorForm form, string by)
    {
        string? token = null;
        var saved = await Saved.TryAsync(async () =>
        {
            await using var db = await factory.CreateDbContextAsync();
            db.By = by;
            if (form.Id != 0 && await db.Set<Sensor>().SingleOrDefaultAsync(s => s.Id == form.Id && s.RemovedAt == null) is null)
            {
                return Saved.Refused("This sensor was removed meanwhile. Make it again.");
            }

            var sensor = form.Id == 0 ? db.Add(new Sensor { MadeAt = clock.GetUtcNow().UtcDateTime }).Entity : await db.Set<Sensor>().SingleAsync(s => s.Id == form.Id);
            (sensor.Name, sensor.Place, sensor.Way) = (form.Name.Trim(), form.Place.Trim(), form.Way);
            (sensor.Topic, sensor.CelsiusField, sensor.HumidityField) = (form.Topic.Trim(), form.CelsiusField.Trim(), form.HumidityField.Trim());
            (sensor.Unit, sensor.CorrectionK, sensor.EveryMinutes) = (form.Unit, form.CorrectionK ?? 0, form.EveryMinutes ?? 10);
            if (sensor is { Way: "post", TokenHash: null })
            {
                token = SensorToken.Make();
                sensor.TokenHash = SensorToken.Hash(token);
            }

            await db.SaveChangesAsync();
            news.Tell(News.Room);
            return Saved.Done(sensor.Id);
        });
        return new(saved, saved.Ok ? token : null);
    }

    /// <summary>A new token in place of the old, which no longer counts.</summary>
    public async Task<SensorMade> NewTokenAsync(int id, string by)
    {
        var token = SensorToken.Make();
        var saved = await ChangeAsync(id, by, s => s.TokenHash = SensorToken.Hash(token));
        return new(saved, saved.Ok ? token : null);
    }

    /// <summary>Its token no longer counts; its readings stay.</summary>
    public Task<Saved> RemoveAsync(int id, string by) => ChangeAsync(id, by, s => s.RemovedAt = clock.GetUtcNow().UtcDateTime);

    /// <summary>Takes a removed one up again, with the token it had.</summary>
    public Task<Saved> RestoreAsync(int id, string by) => ChangeAsync(id, by, s => s.RemovedAt = null);

    private Task<Saved> ChangeAsync(int id, string by, Action<Sensor> change) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Sensor>().SingleOrDefaultAsync(s => s.Id == id) is not { } sensor)
        {
            return Saved.Refused("There is no such sensor any more. Load the page again.");
        }

        change(sensor);
        await db.SaveChangesAsync();
        news.Tell(News.Room);
        return Saved.Done(id);
    });
}
