using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Data.Files;
using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <content>Photographs: received at once, attached when their keepsake is saved.</content>
public sealed partial class KeepsakeBook
{
    /// <summary>Writes down a photograph that lies in the store and belongs to no keepsake yet.</summary>
    public Task<Saved> ReceivePhotoAsync(StoredPhoto photo, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var row = Photo.Of(photo, db.Now, by);
        db.Add(row);
        await db.SaveChangesAsync();
        return Saved.Done(row.Id);
    });

    /// <summary>Adds photographs to a keepsake that is here already, with a link in its chain.</summary>
    public Task<Saved> AddPhotosAsync(int id, IReadOnlyList<int> photoIds, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var attached = await AttachAsync(db, id, photoIds);
        if (attached == 0)
        {
            return Saved.Done(id);
        }

        db.Add(new KeepsakeEvent { KeepsakeId = id, At = db.Now, By = by, Kind = CustodyKind.Photographed, Count = attached });
        await db.SaveChangesAsync();
        news.Tell(News.Keepsake, id);
        return Saved.Done(id);
    });

    // a photograph that belongs somewhere already stays there, whatever a form says
    private static async Task<int> AttachAsync(StudioDb db, int keepsakeId, IReadOnlyList<int> photoIds)
    {
        var photos = await db.Set<Photo>().Where(p => photoIds.Contains(p.Id) && p.KeepsakeId == null && p.CommissionId == null).ToListAsync();
        photos.ForEach(p => p.KeepsakeId = keepsakeId);
        return photos.Count;
    }
}
