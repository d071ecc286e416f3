using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Pieces;

/// <summary>
/// Until 0.4 a work by hand was the pouring when its name said so. The names are read here once; from then on it is a tick of the maker's.
/// </summary>
internal sealed class PouringTaskUpgrade : IUpgrade
{
    public async Task UpgradeAsync(StudioDb db)
    {
        // at every start: only the work by hand is read of all pieces, and more of those alone that nobody was asked about
        var ids = (await db.Set<Piece>().AsNoTracking().Select(p => new { p.Id, p.Tasks }).ToListAsync()).Where(p => p.Tasks.Exists(t => t.Pours is null)).Select(p => p.Id).ToList();
        var old = await db.Set<Piece>().Where(p => ids.Contains(p.Id)).ToListAsync();
        foreach (var piece in old)
        {
            piece.Tasks = [.. piece.Tasks.Select(t => t with { Pours = t.Pours ?? t.Name.Contains("pour", StringComparison.OrdinalIgnoreCase) })];
        }

        if (old.Count > 0)
        {
            await db.SaveChangesAsync();
        }
    }
}
