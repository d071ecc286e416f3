using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Moulds;
using Studio.Resins;

namespace Studio.Pieces;

/// <summary>Answers the stores where their moulds and resins are used.</summary>
internal sealed class PieceUses : IResinUse, IMouldUse
{
    Task<int> IResinUse.PiecesAsync(StudioDb db, int resinId) => db.Set<PieceLayer>().Where(l => l.ResinId == resinId).Select(l => l.PieceId).Distinct().CountAsync();

    Task<int> IMouldUse.PiecesAsync(StudioDb db, int mouldId) => db.Set<Piece>().CountAsync(p => p.MouldId == mouldId);
}
