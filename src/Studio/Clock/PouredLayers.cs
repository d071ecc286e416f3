using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Pieces;

namespace Studio.Clock;

/// <summary>Reads from the pours which layers are in the mould, and asks the clock which of them still cure.</summary>
internal sealed class PouredLayers(TimeProvider clock) : IPouredLayers
{
    public async Task<IReadOnlyList<MouldLayer>> OfAsync(StudioDb db, int pieceId)
    {
        var pours = await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == pieceId && !p.Withdrawn).OrderBy(p => p.LayerOrder)
            .Select(p => new { p.Id, p.LayerId, p.LayerOrder, p.LayerName, p.ToMm, p.StartedAt, p.Sheet, p.Kinetics, p.ResinId, p.ResinLot, p.Foretold }).ToListAsync();
        if (pours.Count == 0)
        {
            return [];
        }

        var cures = await LotCures.OfAsync(db, pours.Select(p => (p.ResinId, p.ResinLot)));
        var times = PieceClock.Of(
            new ClockInput
            {
                Stage = Making.Casting,
                Layers = [.. pours.Select(p => new ClockLayer(p.LayerOrder, p.LayerName))],
                Pours = [.. pours.Select(p => cures.Told(new(p.Id, p.LayerOrder, p.LayerName, p.StartedAt, p.Sheet) { Kinetics = p.Kinetics }, p.ResinId, p.ResinLot, p.Foretold))],
                Room = await ClockBook.RoomAsync(db, await db.Set<Piece>().Where(p => p.Id == pieceId).Select(p => p.StandsIn).SingleAsync(), pours.Min(p => p.StartedAt)),
            },
            clock.GetUtcNow().UtcDateTime,
            TimeZoneInfo.Utc);
        return pours.ConvertAll(p => new MouldLayer(p.LayerId, p.ToMm, times.Layers.Any(t => t.PourId == p.Id && t.Curing)));
    }
}
