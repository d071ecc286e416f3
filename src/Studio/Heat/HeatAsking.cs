using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Engine.Layers;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Pieces;
using Studio.Resins;
using Studio.Shell;

namespace Studio.Heat;

/// <summary>Makes the question about one pour's heat from what the database holds.</summary>
internal sealed class HeatAsking(StudioDb db, HeatAsk ask)
{
    private const double ThinnedHours = 0.25;
    private DateTime zero;

    /// <summary>The question, or a whole sentence: why there is none.</summary>
    internal async Task<(HeatQuestion? Question, string Why)> QuestionAsync()
    {
        var piece = await db.Set<Piece>().AsNoTrackingWithIdentityResolution().AsSplitQuery()
            .Include(p => p.Mould).Include(p => p.Layers).ThenInclude(l => l.Resin).SingleOrDefaultAsync(p => p.Id == ask.PieceId);
        if (piece?.Layers.Find(l => l.Id == ask.LayerId) is not { } layer)
        {
            return (null, "This layer is not in the design any more.");
        }

        var plan = LayersCalculation.Run(PieceBook.Design(piece));
        var pours = await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == piece.Id && !p.Withdrawn).OrderBy(p => p.LayerOrder).ToListAsync();
        if ((plan.Ok ? HeatPlan.NoGrid(piece.Mould!) : "The design has errors, so its heat is not worked out.") is { } refused)
        {
            return (null, refused);
        }

        return WrongOrder(layer, pours) is { } wrong ? (null, wrong) : await AskAsync(piece, layer, plan.Value, pours);
    }

    private async Task<(HeatQuestion? Question, string Why)> AskAsync(Piece piece, PieceLayer layer, LayersResult result, List<Pour> pours)
    {
        // by the pages' ten minutes a start may come before the layer under it
        var start = pours.Count > 0 && pours[^1].StartedAt.AddMinutes(1) is var after && after > ask.StartedAt ? after : ask.StartedAt;
        zero = pours.Count > 0 ? pours[0].StartedAt : start;
        var room = await RoomAsync(piece, start);
        if (room.Count == 0)
        {
            return (null, "The room's temperature is not known. Log it, and the heat is worked out.");
        }

        var layers = new List<HeatPlanLayer>();
        foreach (var pour in pours)
        {
            if (await PouredAsync(pour, room) is not { Known.State: not null } poured)
            {
                return (null, $"{pour.LayerName} under it warms it too. {(await KnownCures.OfAsync(db, pour.ResinId, pour.ResinLot)).RestsOn}");
            }

            layers.Add(poured);
        }

        var known = await KnownCures.OfAsync(db, layer.ResinId, ask.Lot);
        if (known.State is null)
        {
            return (null, known.RestsOn);
        }

        var (level, roomC) = (result.Layers[layer.Order], At(room, Hours(start)));
        layers.Add(new()
        {
            Name = layer.Name,
            FromMm = pours.Count > 0 ? pours[^1].ToMm : level.FromMm,
            ToMm = level.ToMm,
            Resin = layer.Resin!,
            Known = known,
            PouredAtHours = Hours(start),
            PouredC = piece.RoomPlan?.PouredC ?? roomC,
            Limits = HeatLimits.Of(piece.Mould!, layer, HeatLimits.FilmIn(piece, result, level), await KeepsakesAsync(layer), await MaterialsAsync(layer)),
        });
        var wall = piece.Mould!.Wall is null ? $" The mould's wall is not in the stores: {WallMaterials.UsualMm:0} mm of silicone are assumed." : "";
        var ready = HeatPlan.Of(piece.Mould, piece.Former, layers, room);
        return (new(ready, start, roomC, $"{string.Concat(ready.Taken.Select(t => t + " "))}{known.RestsOn}{wall} It holds if the room stays at {Say.Celsius(roomC)}."), "");
    }

    private async Task<HeatPlanLayer> PouredAsync(Pour pour, List<RoomReading> room) => new()
    {
        Name = pour.LayerName,
        FromMm = pour.FromMm,
        ToMm = pour.ToMm,
        Resin = await db.Set<Resin>().AsNoTracking().SingleAsync(r => r.Id == pour.ResinId),
        Known = await KnownCures.OfAsync(db, pour.ResinId, pour.ResinLot),
        PouredAtHours = Hours(pour.StartedAt),
        PouredC = pour.RoomC ?? At(room, Hours(pour.StartedAt)),
        Limits = [],
        Poured = true,
    };

    private static string? WrongOrder(PieceLayer layer, List<Pour> pours) => pours switch
    {
        _ when pours.Exists(p => p.LayerOrder >= layer.Order) => "This layer is poured already.",
        _ when pours.Count < layer.Order => "The layer under it is not poured yet, so its heat is not worked out.",
        _ when pours.Zip(pours.Skip(1)).Any(p => p.First.StartedAt >= p.Second.StartedAt) => "A layer is entered as poured before the one under it. Correct one of the two times, and the heat is worked out.",
        _ => null,
    };

    // what counts for its place, up to the pour; what the maker notes at the pour is the newest of them and holds from then on
    private async Task<List<RoomReading>> RoomAsync(Piece piece, DateTime start)
    {
        var found = await RoomReadings.OfAsync(db, piece.StandsIn, zero);
        var known = found.Readings.Where(r => r.At <= start && RoomBook.Wrong(r.Celsius) is null).Select(r => new RoomReading(Hours(r.At), r.Celsius)).ToList();
        if (ask.RoomC is { } c && RoomBook.Wrong(c) is null)
        {
            known.Add(new(Hours(start), c));
        }

        return Thinned(known);
    }

    // the warmest of each quarter of an hour, at its own time: a sensor that sends every second tells the heat nothing more, and no warm spell is lost
    private static List<RoomReading> Thinned(List<RoomReading> readings) =>
        [.. readings.SkipLast(1).GroupBy(r => Math.Floor(r.Hours / ThinnedHours)).Select(g => g.MaxBy(r => r.Celsius)!), .. readings.TakeLast(1)];

    private static double At(List<RoomReading> room, double hours) => (room.FindLast(r => r.Hours <= hours) ?? room[0]).Celsius;

    private Task<List<Keepsake>> KeepsakesAsync(PieceLayer layer)
    {
        var ids = layer.Placed.Select(p => p.KeepsakeId).OfType<int>().Distinct().ToList();
        return db.Set<Keepsake>().AsNoTracking().Where(k => ids.Contains(k.Id)).ToListAsync();
    }

    private Task<List<Stores.Material>> MaterialsAsync(PieceLayer layer)
    {
        var ids = HeatLimits.MaterialsOf(layer).Distinct().ToList();
        return db.Set<Stores.Material>().AsNoTracking().Where(m => ids.Contains(m.Id)).ToListAsync();
    }

    private double Hours(DateTime at) => (at - zero).TotalHours;
}
