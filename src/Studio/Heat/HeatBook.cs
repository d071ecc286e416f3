using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Engine.Forecast;
using Studio.Engine.Heat;
using Studio.Engine.Layers;
using Studio.Pieces;
using Studio.Resins;

namespace Studio.Heat;

/// <summary>A design made ready for the heat, or why it cannot be.</summary>
/// <param name="Plan">Null with a reason.</param>
/// <param name="Why">A whole sentence.</param>
/// <param name="RestsOn">Whole sentences: the room, the mould's wall, each resin.</param>
public sealed record HeatReady(HeatPlan? Plan, string Why, IReadOnlyList<string> RestsOn);

/// <summary>Makes designs ready for the heat equation.</summary>
public sealed class HeatBook(IDbContextFactory<StudioDb> factory)
{
    private const double UnknownWaitHours = 24;

    /// <summary>A design as it stands on its page, poured as planned.</summary>
    /// <param name="piece">With mould and resins.</param>
    /// <param name="result">Its levels.</param>
    /// <param name="desk">What lies in the stores and came from the family.</param>
    public async Task<HeatReady> ReadyAsync(Piece piece, LayersResult result, PieceDesk desk)
    {
        if (piece.Mould is not { } mould || HeatPlan.NoGrid(mould) is not null)
        {
            return new(null, piece.Mould is null ? "There is no mould yet." : HeatPlan.NoGrid(piece.Mould)!, []);
        }

        await using var db = await factory.CreateDbContextAsync();
        var known = await KnownAsync(db, piece.Layers.Select(l => l.ResinId));
        if (piece.Layers.Select(l => known[l.ResinId]).FirstOrDefault(k => k.State is null) is { } missing)
        {
            return new(null, missing.RestsOn, []);
        }

        var (dayC, nightC, room) = await RoomAsync(db, piece);
        var layers = Layers(piece, result, desk, known, dayC, nightC);
        var others = await OthersAsync(db, desk.Resins, piece);
        var plan = HeatPlan.Of(mould, piece.Former, layers, HeatRoom.Readings(dayC, nightC, layers[^1].PouredAtHours + 100), others);
        return new(plan, "",
        [
            .. plan.Taken,
            room,
            mould.Wall is { } wall ? $"The mould's wall: {wall.ThicknessMm:0.#} mm of {Moulds.WallMaterials.Of(wall.Material).Label.ToLowerInvariant()}." : $"The mould's wall is not in the stores: {Moulds.WallMaterials.UsualMm:0} mm of silicone are assumed.",
            .. layers.Select(l => l.Known.RestsOn).Distinct(StringComparer.Ordinal),
        ]);
    }

    /// <summary>The most probable course on a coarse grid, at once.</summary>
    public static async Task<ForecastOutcome> FirstLookAsync(HeatPlan plan, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var first = await Task.Run(() => HeatRun.Run(plan.Input with { PictureHours = [] }, plan.Advice.Mould, preview: true, stop: stop), stop);
        return new([.. first.Layers.Select(l => new ForecastLayer { Best = l })], first, "A first look; the interval follows.");
    }

    /// <summary>The same in three dimensions, with its interval.</summary>
    public static Task<ForecastOutcome> WholeAsync(HeatPlan plan, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Task.Run(() => HeatForecast.Run(plan.Input, plan.Advice.Mould, plan.Advice.Resins, preview: false, stop), stop);
    }

    /// <summary>What would help, each change tried on the model.</summary>
    public static Task<AdviceOutcome> AdviseAsync(HeatPlan plan, ForecastOutcome whole, IProgress<double> progress, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(plan);
        return Task.Run(() => HeatAdvice.Of(plan.Advice with { Told = whole }, progress, stop), stop);
    }

    private static async Task<Dictionary<int, CureKnowledge>> KnownAsync(StudioDb db, IEnumerable<int> resins)
    {
        var known = new Dictionary<int, CureKnowledge>();
        foreach (var id in resins.Distinct())
        {
            known[id] = await KnownCures.OfAsync(db, id, "");
        }

        return known;
    }

    private static async Task<(double DayC, double? NightC, string Words)> RoomAsync(StudioDb db, Piece piece)
    {
        if (piece.RoomPlan is { DayC: { } day } plan)
        {
            return (day, plan.NightC, plan.NightC is { } night ? $"Planned for a room of {day:0.#} °C by day and {night:0.#} °C by night." : $"Planned for a room of {day:0.#} °C.");
        }

        return await RoomBook.NowAsync(db, piece.StandsIn) is { } now
            ? (now.Celsius, null, $"The room is taken as it was last read, {now.Celsius:0.#} °C.")
            : (HeatRoom.AssumedC, null, $"No room was ever read: {HeatRoom.AssumedC:0} °C are assumed.");
    }

    private static List<HeatPlanLayer> Layers(Piece piece, LayersResult result, PieceDesk desk, Dictionary<int, CureKnowledge> known, double dayC, double? nightC)
    {
        var sheets = FilmRules.Of(piece, result).Where(s => s.Fit is { Stands: true }).Select(s => s.Fit!.InMould.SelectMany(r => r).ToList()).Where(p => p.Count > 0)
            .Select(p => (From: p.Min(q => q.Z), To: p.Max(q => q.Z))).ToList();
        var layers = new List<HeatPlanLayer>();
        var settled = piece.Layers.FindLastIndex(l => desk.Poured.Any(p => p.LayerId == l.Id)) + 1;
        for (var i = 0; i < piece.Layers.Count; i++)
        {
            var (layer, level) = (piece.Layers[i], result.Layers[i]);
            var at = i == 0 ? 0 : layers[^1].PouredAtHours + Math.Max(layer.WaitHours ?? 0, Opens(layers[^1], dayC, nightC) ?? layer.WaitHours ?? UnknownWaitHours);
            layers.Add(new()
            {
                Name = $"Layer {i + 1}, {layer.Name}",
                FromMm = level.FromMm,
                ToMm = level.ToMm,
                Resin = layer.Resin!,
                Known = known[layer.ResinId],
                PouredAtHours = at,
                PouredC = piece.RoomPlan?.PouredC ?? dayC,
                Limits = HeatLimits.Of(piece.Mould!, layer, sheets.Exists(s => s.From < level.ToMm && s.To > level.FromMm), desk.Keepsakes.All, desk.Materials),
                Poured = i < settled,
            });
        }

        return layers;
    }

    /// <summary>How long after a layer's pour its next-pour window opens in the planned room [h]; null where the sheet and the fit do not say.</summary>
    private static double? Opens(HeatPlanLayer layer, double dayC, double? nightC)
    {
        var poured = new Engine.Cure.PouredLayer(layer.Name, layer.Resin.Sheet, layer.PouredAtHours) { Kinetics = layer.Known.State!.Best().Kinetics, Likely = KnownCures.Likely(layer.Known) };
        var cure = CureClock.Run([poured], HeatRoom.Readings(dayC, nightC, layer.PouredAtHours + 1000), double.PositiveInfinity);
        return cure.Layers[0].NextPourFrom.AtHours - layer.PouredAtHours;
    }

    // slower ones are looked for among all that are in use and known without another fit of a minute
    private static async Task<IReadOnlyList<OtherResin>> OthersAsync(StudioDb db, IReadOnlyList<Resin> resins, Piece piece)
    {
        var used = piece.Layers.Select(l => l.ResinId).ToHashSet();
        List<OtherResin> others = [];
        foreach (var resin in resins.Where(r => !r.Retired && r.Class == "deepPour" && !used.Contains(r.Id)).Take(2))
        {
            if ((await KnownCures.OfAsync(db, resin.Id, "")).State is { } state)
            {
                others.Add(new(resin.Name, HeatPlan.Forecast(resin, state)));
            }
        }

        return others;
    }
}
