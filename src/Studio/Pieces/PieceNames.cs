using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Keepsakes;

namespace Studio.Pieces;

/// <summary>Answers the keepsakes what the pieces that hold them are called now.</summary>
internal sealed class PieceNames : IPieceNames
{
    public async Task<IReadOnlyDictionary<int, string>> OfAsync(StudioDb db, IReadOnlyCollection<int> pieceIds) =>
        pieceIds.Count == 0 ? new Dictionary<int, string>() : await db.Set<Piece>().Where(p => pieceIds.Contains(p.Id)).ToDictionaryAsync(p => p.Id, p => p.Name);

    public async Task<IReadOnlySet<int>> StayingAsync(StudioDb db, int commissionId) =>
        (await Staying(db, commissionId).ToListAsync()).ToHashSet();

    /// <summary>Pieces of a commission that do not go to the family: they failed, were let go, or their commission was.</summary>
    internal static IQueryable<int> Staying(StudioDb db, int commissionId) =>
        db.Set<Piece>().Where(p => p.CommissionId == commissionId && (p.Stage == Making.Failed || p.Stage == Making.LetGo || p.Commission!.Stands == Standing.LetGo)).Select(p => p.Id);

    public async Task<IReadOnlyList<PieceHere>> HereAsync(StudioDb db, int commissionId) =>
        (await db.Set<Piece>().Where(p => p.CommissionId == commissionId && p.Commission!.Stands != Standing.LetGo && (p.Stage == Making.Casting || p.Stage == Making.Demoulded || p.Stage == Making.Finished))
            .OrderBy(p => p.Id).Select(p => new { p.Id, p.Name, p.Stage }).ToListAsync())
            .ConvertAll(p => new PieceHere(p.Id, p.Name, p.Stage == Making.Finished, Making.Label(p.Stage).ToLowerInvariant()));

    public async Task LeaveAsync(StudioDb db, IReadOnlyCollection<int> pieceIds)
    {
        foreach (var piece in pieceIds.Count == 0 ? [] : await db.Set<Piece>().Where(p => pieceIds.Contains(p.Id)).ToListAsync())
        {
            piece.Stage = Making.Home;
        }
    }

    public async Task<IReadOnlyList<PieceName>> OfCommissionAsync(StudioDb db, int commissionId) =>
        await db.Set<Piece>().Where(p => p.CommissionId == commissionId).OrderBy(p => p.Id)
            .Select(p => new PieceName(p.Id, p.Name, p.Stage == Making.Drawn || p.Stage == Making.Casting)).ToListAsync();
}
