using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Money;
using Studio.Pieces;

namespace Studio.Shelf;

/// <summary>Reads the shelf: seven narrow queries, however many pieces the studio ever made.</summary>
public sealed class ShelfBook(IDbContextFactory<StudioDb> factory, TimeProvider clock)
{
    /// <summary>More pieces than this at once are not one maker's shelf.</summary>
    public const int MostPieces = 240;

    /// <summary>The shelf as it stands this moment.</summary>
    public async Task<ShelfView> ReadAsync(TimeZoneInfo zone) => Arrange(await RowsAsync(), zone);

    /// <summary>The same rows as they read at this moment; no database is asked.</summary>
    public ShelfView Arrange(ShelfRows rows, TimeZoneInfo zone) => ShelfView.Of(rows, clock.GetUtcNow().UtcDateTime, zone);

    /// <summary>What the database holds for the shelf.</summary>
    public async Task<ShelfRows> RowsAsync()
    {
        await using var db = await factory.CreateDbContextAsync();
        db.ChangeTracker.QueryTrackingBehavior = QueryTrackingBehavior.NoTracking;
        var pieces = await PiecesAsync(db);
        var ids = pieces.ConvertAll(p => p.Id);

        // where a price is agreed all of its deposit has to be in; where none is, that one came
        var drawn = pieces.Where(p => p.Stage == Making.Drawn).Select(p => p.CommissionId).ToHashSet();
        var money = await MoneyBook.OfAsync(db, drawn, "");
        pieces = pieces.ConvertAll(p => money.GetValueOrDefault(p.CommissionId) is { Agreed: not null } m && p.Stage == Making.Drawn ? p with { Deposit = m.Paid >= m.Deposit } : p);
        var layers = ids.Count == 0 ? [] : await db.Set<PieceLayer>().Where(l => ids.Contains(l.PieceId)).OrderBy(l => l.PieceId).ThenBy(l => l.Order)
            .Select(l => new ShelfLayer(l.PieceId, l.Order, l.Name, l.Colour, l.ToMm, l.ThicknessMm)).ToListAsync();
        var pours = ids.Count == 0 ? [] : await db.Set<Pour>().Where(p => ids.Contains(p.PieceId) && !p.Withdrawn)
            .Select(p => new ShelfPour(p.Id, p.PieceId, p.LayerOrder, p.LayerName, p.Colour, p.FromMm, p.ToMm, p.StartedAt, p.Sheet, p.Kinetics) { ResinId = p.ResinId, Lot = p.ResinLot, Foretold = p.Foretold }).ToListAsync();
        return new()
        {
            Pieces = pieces.Count > MostPieces ? pieces[..MostPieces] : pieces,
            Layers = layers.ToLookup(l => l.PieceId),
            Pours = pours.ToLookup(p => p.PieceId),
            Cures = await LotCures.OfAsync(db, pours.Select(p => (p.ResinId, p.Lot))),
            Wants = await LayerWants.OfAsync(db, db.Set<Piece>().Where(p => ids.Contains(p.Id))),
            Rooms = pours.Count == 0 ? new Dictionary<string, ClockRoom>(StringComparer.Ordinal) : await ClockBook.RoomsAsync(db, pieces.Select(p => p.StandsIn), pours.Min(p => p.StartedAt)),
            Cut = pieces.Count > MostPieces,
        };
    }

    // what is finished stands there until it goes home; ordered as the stage's index is: in the mould, out of it, then drawn
    private static Task<List<ShelfPiece>> PiecesAsync(StudioDb db) =>
        db.Set<Piece>()
            .Where(p => ((p.Stage == Making.Casting || p.Stage == Making.Demoulded || p.Stage == Making.Finished) && !Standing.Ended.Contains(p.Commission!.Stands))
                || (p.Stage == Making.Drawn && (p.Commission!.Stands == Standing.Agreed || p.Commission.Stands == Standing.Making || p.Commission.Stands == Standing.Quoted)))
            .OrderBy(p => p.Stage).ThenBy(p => p.Id).Take(MostPieces + 1)
            .Select(p => new ShelfPiece
            {
                Id = p.Id,
                Name = p.Name,
                Stage = p.Stage,
                StandsIn = p.StandsIn,
                DemouldedAt = p.DemouldedAt,
                Former = p.Former,
                Tasks = p.Tasks,
                Mould = p.Mould!,
                CommissionId = p.CommissionId,
                Number = p.Commission!.Number,
                Remembers = p.Commission.Remembers,
                Stands = p.Commission.Stands,
                NeededBy = p.Commission.NeededBy,
                Keepsakes = p.Stage == Making.Drawn ? db.Set<Keepsake>().Count(k => k.CommissionId == p.CommissionId && k.Custody != CustodyWhereabouts.Withdrawn) : 0,
                Deposit = p.Stage != Making.Drawn || db.Set<Payment>().Any(m => m.CommissionId == p.CommissionId && !m.Withdrawn && m.Kind == "deposit"),
            }).ToListAsync();
}
