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
        var old = (await db.Set<Piece>().ToListAsync()).Where(p => p.Tasks.Exists(t => t.Pours is null)).ToList();
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
