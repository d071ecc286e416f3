using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Pieces;

namespace Studio.Bench;

/// <summary>Reads from the pours which layers are in the mould.</summary>
internal sealed class PouredLayers : IPouredLayers
{
    public async Task<IReadOnlyList<PouredLayer>> OfAsync(StudioDb db, int pieceId) =>
        await db.Set<Pour>().AsNoTracking()
            .Where(p => p.PieceId == pieceId && !p.Withdrawn)
            .OrderBy(p => p.LayerOrder)
            .Select(p => new PouredLayer(p.LayerId, p.ToMm))
            .ToListAsync();
}
