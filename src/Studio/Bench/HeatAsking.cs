using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Engine.Fit;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Resins;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>Makes the question about one pour's heat from what the database holds.</summary>
internal sealed class HeatAsking(StudioDb db, HeatAsk ask)
{
    // the peak of the slowest resins comes within this [h]
    private const double WatchedHours = 96;
    private const double ThinnedHours = 0.25;
    private readonly List<string> restsOn = [];
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

        var spec = piece.Mould!.Spec;
        var plan = LayersCalculation.Run(PieceBook.Design(piece));
        if (!plan.Ok || MouldShapes.Make(spec) is not { Ok: true, Value: { } mould })
        {
            return (null, "The design has errors, so its heat is not worked out.");
        }

        if (!HeatCalculation.Shapes.Contains(spec.Shape, StringComparer.Ordinal))
        {
            return (null, "For this mould's shape the heat cannot be worked out.");
        }

        var pours = await db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == piece.Id && !p.Withdrawn).OrderBy(p => p.LayerOrder).ToListAsync();
        if (WrongOrder(layer, pours) is { } wrong)
        {
            return (null, wrong);
        }

        var start = pours.Count > 0 && pours[^1].StartedAt.AddMinutes(1) is var after && after > ask.StartedAt ? after : ask.StartedAt;
        zero = pours.Count > 0 ? pours[0].StartedAt : start;
        var room = await RoomAsync(piece, start);
        return room.Count == 0
            ? (null, "The room's temperature is not known. Log it, and the heat is worked out.")
            : await AskAsync(new(piece, layer, plan.Value.Layers[layer.Order], mould, spec), pours, start, room);
    }

    /// <summary>A resin as the forecast takes it.</summary>
    internal static ForecastResin Forecast(Resins.Resin resin, FitState state) => new(state, resin.MaxPourMm)
    {
        NextPourFromHours = resin.Times.Count > 0 ? resin.Times[0].NextPourFromHours : null,
        NextPourUntilHours = resin.Times.Count > 0 ? resin.Times[0].NextPourUntilHours : null,
        MinRoomC = resin.MinC,
    };

    private async Task<(HeatQuestion? Question, string Why)> AskAsync(Drawn drawn, List<Pour> pours, DateTime start, List<RoomReading> room)
    {
        var (layers, resins) = (new List<HeatLayer>(), new List<ForecastResin>());
        foreach (var pour in pours)
        {
            var known = await KnownCures.OfAsync(db, pour.ResinId, pour.ResinLot);
            if (known.State is not { } state)
            {
                return (null, $"The layers under it warm it too. {known.RestsOn}");
            }

            var sheet = await db.Set<Resins.Resin>().AsNoTracking().SingleAsync(r => r.Id == pour.ResinId);
            layers.Add(Layer(state, pour.FromMm, pour.ToMm, Hours(pour.StartedAt), pour.RoomC ?? At(room, Hours(pour.StartedAt))));
            resins.Add(Forecast(sheet, state));
        }

        var cure = await KnownCures.OfAsync(db, drawn.Layer.ResinId, ask.Lot);
        if (cure.State is not { } own)
        {
            return (null, cure.RestsOn);
        }

        var (from, roomC) = (pours.Count > 0 ? pours[^1].ToMm : drawn.Plan.FromMm, At(room, Hours(start)));
        layers.Add(Layer(own, from, drawn.Plan.ToMm, Hours(start), drawn.Piece.RoomPlan?.PouredC ?? roomC));
        resins.Add(Forecast(drawn.Layer.Resin!, own));
        var wall = HeatWall.Of(drawn.Piece.Mould!.Wall, At(room, Hours(zero)));
        restsOn.InsertRange(0, new[] { cure.RestsOn, wall.Assumed }.Where(w => w.Length > 0));
        return (new HeatQuestion
        {
            Input = new HeatInput
            {
                Mould = drawn.Spec,
                Wall = wall.Wall,
                Former = drawn.Piece.Former,
                Fill = drawn.Piece.Former is { } former ? new FillSpec(former.Solid, new BoundarySpec().VoidWPerM2K) : null,
                Boundary = new(),
                Room = room,
                Layers = layers,
                UntilHours = Hours(start) + WatchedHours,
            },
            Mould = drawn.Mould,
            Resins = resins,
            Limits = (await LimitsAsync(drawn.Layer)).Of(drawn.Piece, drawn.Layer, from, drawn.Plan.ToMm, wall.Limit),
            ResinId = drawn.Layer.ResinId,
            Name = drawn.Layer.Name,
            StartedAt = start,
            RoomC = roomC,
            KnownCureId = cure.Row?.Id ?? 0,
            RestsOn = string.Join(" ", restsOn),
        }, "");
    }

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

        if (known.Count > 0)
        {
            restsOn.Add($"It holds if the room stays at {Say.Celsius(known[^1].Celsius)}.");
        }

        return Thinned(known);
    }

    // the warmest of each quarter of an hour, at its own time: a sensor that sends every second tells the heat nothing more, and no warm spell is lost
    private static List<RoomReading> Thinned(List<RoomReading> readings) =>
        [.. readings.SkipLast(1).GroupBy(r => Math.Floor(r.Hours / ThinnedHours)).Select(g => g.MaxBy(r => r.Celsius)!), .. readings.TakeLast(1)];

    private static double At(List<RoomReading> room, double hours) => (room.FindLast(r => r.Hours <= hours) ?? room[0]).Celsius;

    private static HeatLayer Layer(FitState state, double fromMm, double toMm, double atHours, double celsius)
    {
        var best = state.Best();
        return new(best.Kinetics, best.DensityKgPerM3, best.HeatCapacityJPerKgK, best.ConductivityWPerMK, fromMm, toMm, atHours, celsius);
    }

    private async Task<HeatLimits> LimitsAsync(PieceLayer layer)
    {
        var materials = layer.Scatter.Select(s => s.MaterialId).OfType<int>().Distinct().ToList();
        var keepsakes = layer.Placed.Select(p => p.KeepsakeId).OfType<int>().Distinct().ToList();
        return new(
            await db.Set<Stores.Material>().AsNoTracking().Where(m => materials.Contains(m.Id)).ToDictionaryAsync(m => m.Id),
            await db.Set<Keepsake>().AsNoTracking().Where(k => keepsakes.Contains(k.Id)).ToDictionaryAsync(k => k.Id, k => k.Kind));
    }

    private double Hours(DateTime at) => (at - zero).TotalHours;

    private sealed record Drawn(Piece Piece, PieceLayer Layer, LayerResult Plan, Mould Mould, MouldSpec Spec);
}
