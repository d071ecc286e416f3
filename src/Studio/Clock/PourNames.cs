using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>Answers the keepsakes which layers the pours that hold them are.</summary>
internal sealed class PourNames : IPourNames
{
    public async Task<IReadOnlyList<(int PourId, int LayerId)>> HoldingAsync(StudioDb db, int pieceId, int keepsakeId)
    {
        var layers = (await db.Set<PieceLayer>().AsNoTracking().Where(l => l.PieceId == pieceId).ToListAsync()).Where(l => l.Placed.Exists(p => p.KeepsakeId == keepsakeId || p.CopyOf == keepsakeId)).Select(l => l.Id).ToList();
        return [.. (await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == pieceId && !p.Withdrawn && layers.Contains(p.LayerId)).OrderBy(p => p.Id).Select(p => new { p.Id, p.LayerId }).ToListAsync()).Select(p => (p.Id, p.LayerId))];
    }

    public async Task<IReadOnlyDictionary<int, PourName>> OfAsync(StudioDb db, IReadOnlyCollection<int> pourIds) =>
        pourIds.Count == 0 ? new Dictionary<int, PourName>()
            : await db.Set<Pour>().Where(p => pourIds.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => new PourName(p.PieceId, p.LayerOrder + 1, p.LayerName, p.Withdrawn));
}
