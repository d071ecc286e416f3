using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Moulds;
using Studio.Resins;
using Studio.Stores;

namespace Studio.Pieces;

/// <summary>What the pages read.</summary>
public sealed partial class PieceBook
{
    /// <summary>A piece with everything its design page offers; null when it is not there.</summary>
    public async Task<PieceDesk?> DeskAsync(int id)
    {
        await using var db = await factory.CreateDbContextAsync();
        var piece = await db.Set<Piece>().AsNoTracking()
            .Include(p => p.Mould).Include(p => p.Layers.OrderBy(l => l.Order)).ThenInclude(l => l.Resin)
            .SingleOrDefaultAsync(p => p.Id == id);
        if (piece is null)
        {
            return null;
        }

        var used = piece.Layers.Select(l => l.ResinId).ToList();
        var commission = await db.Set<Commission>().AsNoTracking().SingleAsync(c => c.Id == piece.CommissionId);
        return new PieceDesk
        {
            Piece = piece,
            ReadAs = DesignText.Write(piece),
            CommissionNumber = commission.Number,
            CommissionTitle = commission.Title,
            Remembers = commission.Remembers,
            Moulds = await db.Set<Mould>().AsNoTracking().Where(m => !m.Retired || m.Id == piece.MouldId).OrderBy(m => m.Name).ToListAsync(),
            Resins = await db.Set<Resin>().AsNoTracking().Where(r => !r.Retired || used.Contains(r.Id)).OrderBy(r => r.Name).ToListAsync(),
            Materials = await db.Set<Material>().AsNoTracking().Where(m => !m.Retired).OrderBy(m => m.Name).ToListAsync(),
            Keepsakes = await ShelfAsync(db, piece),
            Poured = await bench.OfAsync(db, id),
        };
    }

    /// <summary>What a new piece can be made in; null when the commission is not there.</summary>
    public async Task<PieceChoices?> ChoicesAsync(int commissionId)
    {
        await using var db = await factory.CreateDbContextAsync();
        var commission = await db.Set<Commission>().AsNoTracking().SingleOrDefaultAsync(c => c.Id == commissionId);
        return commission is null ? null : new PieceChoices
        {
            CommissionId = commission.Id,
            CommissionNumber = commission.Number,
            CommissionTitle = commission.Title,
            Remembers = commission.Remembers,
            Moulds = await db.Set<Mould>().AsNoTracking().Where(m => !m.Retired).OrderBy(m => m.Name).ToListAsync(),
            Resins = await db.Set<Resin>().AsNoTracking().Where(r => !r.Retired).OrderBy(r => r.Id).ToListAsync(),
            Siblings = await db.Set<Piece>().AsNoTracking().Where(p => p.CommissionId == commissionId).OrderBy(p => p.Id).Select(p => p.Name).ToListAsync(),
        };
    }
}
