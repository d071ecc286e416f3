using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Heat;
using Studio.Heat;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Calibration;

/// <summary>A piece as it was really poured, made ready for a refit.</summary>
/// <param name="Input">Null with a reason.</param>
/// <param name="Layer">The observed layer, from 0.</param>
/// <param name="SameLot">Layers of its lot, itself among them.</param>
/// <param name="Why">A whole sentence where it cannot be.</param>
/// <param name="RestsOn">Whole sentences: the room, the wall.</param>
internal sealed record PouredPiece(HeatInput? Input, int Layer, IReadOnlyList<int> SameLot, string Why, IReadOnlyList<string> RestsOn)
{
    private const double Touching = 0.05;
    private const double AfterHours = 24 * 14;

    /// <summary>The pours up to this one and the next upon it, at their real times and depths, in the room as it was read.</summary>
    /// <param name="before">What was known of the observed lot before its log.</param>
    public static async Task<PouredPiece> OfAsync(StudioDb db, Pour pour, FitState before)
    {
        var piece = await db.Set<Piece>().AsNoTracking().Include(p => p.Mould).SingleAsync(p => p.Id == pour.PieceId);
        if (HeatPlan.NoRefit(piece.Mould!) is { } none)
        {
            return Refused(none);
        }

        var pours = await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == pour.PieceId && !p.Withdrawn).OrderBy(p => p.LayerOrder).ThenBy(p => p.Id).ToListAsync();
        var at = pours.FindIndex(p => p.Id == pour.Id);
        if (Wrong(pours, at) is { } wrong)
        {
            return Refused(wrong);
        }

        pours = [.. pours.Take(at + 2)];
        var start = pours[0].StartedAt;
        var (room, words) = await RoomAsync(db, piece, pours, start);
        List<HeatPlanLayer> layers = [];
        foreach (var (i, p) in pours.Index())
        {
            var known = SameLotAs(p, pour) ? new CureKnowledge(null, before, "") : await KnownAsync(db, p);
            var resin = await db.Set<Resin>().AsNoTracking().SingleAsync(r => r.Id == p.ResinId);
            var hours = (p.StartedAt - start).TotalHours;
            layers.Add(new()
            {
                Name = p.LayerName,
                FromMm = i == 0 ? 0 : pours[i - 1].ToMm,
                ToMm = p.ToMm,
                Resin = resin,
                Known = known,
                PouredAtHours = hours,
                PouredC = p.RoomC ?? (room.LastOrDefault(r => r.Hours <= hours) ?? room[0]).Celsius,
                Limits = [],
                Poured = true,
            });
        }

        var plan = HeatPlan.Of(piece.Mould!, piece.Former, layers, room);
        var wall = piece.Mould!.Wall is null ? "The mould’s wall is not in the stores; a usual wall of silicone is assumed. Enter it with the mould: the refit leans on it." : "";
        return new(
            plan.Input with { PictureHours = [] }, at, [.. pours.Index().Where(p => SameLotAs(p.Item, pour)).Select(p => p.Index)], "",
            [.. new[] { words, wall }.Where(w => w.Length > 0)]);
    }

    private static PouredPiece Refused(string why) => new(null, 0, [], why, []);

    private static bool SameLotAs(Pour a, Pour b) => a.ResinId == b.ResinId && string.Equals(a.ResinLot.Trim(), b.ResinLot.Trim(), StringComparison.Ordinal);

    private static string? Wrong(List<Pour> pours, int at) =>
        at < 0 ? "This pour was taken back, so there is nothing to learn from it."
        : pours[0].FromMm > Touching ? "The lowest layer of this piece was never entered at the bench, so what lies under the thermometer is not known."
        : pours.Zip(pours.Skip(1)).Any(p => Math.Abs(p.Second.FromMm - p.First.ToMm) > 1 + Touching) ? "Between the layers that were entered one is missing, so what lies under the thermometer is not known."
        : pours.Zip(pours.Skip(1)).Any(p => p.Second.StartedAt <= p.First.StartedAt) ? "The layers were entered as poured in another order than they lie. Set the times right at the bench first."
        : null;

    private static async Task<CureKnowledge> KnownAsync(StudioDb db, Pour p)
    {
        var known = await KnownCures.OfAsync(db, p.ResinId, p.ResinLot);
        return known.State is not null ? known : new(null, (await KnownCures.FitAsync(new DataSheet { Class = await db.Set<Resin>().Where(r => r.Id == p.ResinId).Select(r => r.Class).SingleAsync() })).Value.State, "");
    }

    private static async Task<(IReadOnlyList<RoomReading> Room, string Words)> RoomAsync(StudioDb db, Piece piece, List<Pour> pours, DateTime start)
    {
        var found = await RoomReadings.OfAsync(db, piece.StandsIn, start);
        var until = pours[^1].StartedAt.AddHours(AfterHours);
        List<RoomReading> read = [.. found.Readings.Where(r => r.At <= until).Select(r => new RoomReading((r.At - start).TotalHours, r.Celsius))];
        if (read.Count > 0 && read[0].Hours < 200 && read[^1].Hours > -24)
        {
            return (read, read.Count == 1 ? "The room was read once in that time. A sensor beside the mould would make this surer." : $"The room: {read.Count} readings{(found.Place.Length > 0 ? " of " + found.Place : "")}.");
        }

        List<RoomReading> noted = [.. pours.Where(p => p.RoomC is not null).Select(p => new RoomReading((p.StartedAt - start).TotalHours, p.RoomC!.Value))];
        return noted.Count > 0 ? (noted, "The room is taken as it was noted at each pour; nobody read it in between.")
            : ([new(0, HeatRoom.AssumedC)], FormattableString.Invariant($"Nobody read the room; {HeatRoom.AssumedC:0} °C are assumed. A room five degrees warmer can mean a peak more than twenty degrees higher, so this refit teaches little."));
    }
}
