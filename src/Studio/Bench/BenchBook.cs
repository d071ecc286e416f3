using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Engine.Forecast;
using Studio.Engine.Layers;
using Studio.Engine.Moulds;
using Studio.Heat;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Bench;

/// <summary>Reads and writes what happens at the bench: pours, their corrections, demoulding and finishing.</summary>
public sealed partial class BenchBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, SettingsBook settings, PourHeatBook heats)
{
    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    /// <summary>Everything the bench shows of a piece; null when there is no such piece.</summary>
    public async Task<BenchView?> ReadAsync(int pieceId)
    {
        await using var db = await factory.CreateDbContextAsync();
        return await ReadAsync(db, pieceId);
    }

    /// <summary>The same sheet as it reads at this moment; no database is asked.</summary>
    public BenchView Look(BenchView sheet) => sheet with { Now = Now, Times = PieceClock.Of(sheet.Clock, Now, sheet.Zone) };

    private async Task<BenchView?> ReadAsync(StudioDb db, int pieceId)
    {
        var piece = await db.Set<Piece>().AsNoTrackingWithIdentityResolution().AsSplitQuery()
            .Include(p => p.Commission).Include(p => p.Mould).Include(p => p.Layers).ThenInclude(l => l.Resin)
            .SingleOrDefaultAsync(p => p.Id == pieceId);
        if (piece is null)
        {
            return null;
        }

        var pours = await PoursAsync(db, pieceId);
        var room = await ClockBook.RoomAsync(db, piece.StandsIn, pours.Where(p => !p.Withdrawn).Select(p => (DateTime?)p.StartedAt).Min());
        var lots = pours.Where(p => p.ResinLot.Length > 0).GroupBy(p => p.ResinId).ToDictionary(g => g.Key, g => g.Last().ResinLot);
        var cures = await LotCures.OfAsync(db, pours.Where(p => !p.Withdrawn).Select(p => (p.ResinId, p.ResinLot)).Concat(piece.Layers.Where(l => l.Resin is not null).Select(l => (l.Resin!.Id, lots.GetValueOrDefault(l.Resin.Id, "")))));
        var input = Clock(piece, pours, cures, room, await LayerWants.OfAsync(db, db.Set<Piece>().Where(p => p.Id == pieceId)));
        var zone = await settings.ZoneAsync();
        var times = PieceClock.Of(input, Now, zone);
        var pot = await BenchPot.OfAsync(db, piece.PotId, DateOnly.FromDateTime(Say.Local(Now, zone)));
        var house = await settings.ReadAsync();
        var units = house.Units;
        var plan = LayersCalculation.Run(PieceBook.Design(piece));
        var spec = piece.Mould!.Spec;
        var mould = MouldShapes.Make(spec) is { Ok: true } made ? made.Value : null;
        var films = FilmRules.Of(piece, plan.Ok ? plan.Value : null);
        var pictured = await PicturedAsync(db, films);
        var keepsakes = await KeepsakesAsync(db, piece, pictured.Values);
        var limits = await LimitsAsync(db, piece, plan.Ok ? plan.Value : null, keepsakes);
        return new()
        {
            PieceId = piece.Id,
            PieceName = piece.Name,
            CommissionId = piece.CommissionId,
            CommissionNumber = piece.Commission!.Number,
            Remembers = piece.Commission.Remembers,
            Stage = piece.Stage,
            Stands = piece.Commission.Stands,
            Mould = spec,
            MouldName = piece.Mould.Name,
            Former = piece.Former,
            Pot = pot,
            Photographs = PieceBook.Drawn(films),
            Layers = [.. piece.Layers.OrderBy(l => l.Order).Select(l => Layer(new LayerAsk(piece, l, plan.Ok ? plan.Value : null, films, keepsakes, units), pictured, pours, lots)).Select(l => l with { Tilt = BenchTilt.Of(mould, l.Plan), Limit = limits.GetValueOrDefault(l.Order), Cautions = [.. Wanting(input, l.Order), .. Cautions(l, pot, times, zone)] })],
            Pours = await TraceAsync(db, pours),
            Clock = input,
            Times = times,
            IfPoured = IfPoured(piece, pours, cures, lots),
            Room = await RoomBook.NowAsync(db, piece.StandsIn),
            Damp = await RoomBook.DampAsync(db, piece.StandsIn, Now),
            Zone = zone,
            Units = units,
            Currency = house.Currency,
            Inside = await KeepsakeBook.InPieceAsync(db, pieceId),
            Failed = piece.Stage == Making.Failed ? $"It failed {(piece.FailedAt is { } at ? Say.When(at, zone, Now) : "at a time that is not noted")}: {Failing.Label(piece.FailedAs).ToLower(CultureInfo.InvariantCulture)}. {Say.Sentence(piece.FailedWords)}".TrimEnd() : "",
            Now = Now,
            PlanErrors = plan.Errors,
        };
    }

    // the loudest of what is to be laid ready: it is not here, or not dry
    private static IEnumerable<Finding> Wanting(ClockInput input, int order) =>
        input.Layers.Where(l => l.Order == order).SelectMany(l => l.Wants).Select(w => new Finding("layer-wants", Severity.Warn, "", w, "our rule"));

    private IReadOnlyList<Finding> Cautions(BenchLayer layer, BenchPot? pot, PieceTimes times, TimeZoneInfo zone) =>
        pot is null ? layer.Cautions : [pot.Of(times.Layers.FirstOrDefault(t => t.Order == layer.Order), zone, Now), .. layer.Cautions];

    private static Task<List<Pour>> PoursAsync(StudioDb db, int pieceId) =>
        db.Set<Pour>().AsNoTracking().Where(p => p.PieceId == pieceId).OrderBy(p => p.LayerOrder).ThenBy(p => p.Id).ToListAsync();

    private static ClockInput Clock(Piece piece, List<Pour> pours, LotCures cures, ClockRoom room, ILookup<(int PieceId, int Order), string> wants) => new()
    {
        Stage = piece.Stage,
        Layers = [.. piece.Layers.OrderBy(l => l.Order).Select(l => new ClockLayer(l.Order, l.Name) { Wants = [.. wants[(piece.Id, l.Order)]] })],
        Pours = [.. pours.Where(p => !p.Withdrawn).Select(p => cures.Told(new(p.Id, p.LayerOrder, p.LayerName, p.StartedAt, p.Sheet) { Kinetics = p.Kinetics }, p.ResinId, p.ResinLot, p.Foretold))],
        Room = room,
        DemouldedAt = piece.DemouldedAt,
        FinishMinutes = piece.Tasks.Sum(t => t.Minutes),
    };

    // by its sheet, or by what is known of its lot where that is later: as a film, for its own heat is foretold when it is poured
    private Dictionary<int, ClockPour> IfPoured(Piece piece, List<Pour> pours, LotCures cures, Dictionary<int, string> lots) =>
        piece.Layers.Where(l => l.Resin is not null && !pours.Exists(p => !p.Withdrawn && p.LayerOrder == l.Order)).ToDictionary(
            l => l.Order,
            l => cures.Told(new(0, l.Order, l.Name, Now, l.Resin!.Sheet), l.Resin.Id, lots.GetValueOrDefault(l.Resin.Id, ""), null));

    private static BenchLayer Layer(LayerAsk ask, Dictionary<string, int> pictured, List<Pour> pours, Dictionary<int, string> lots)
    {
        var (l, plan, things) = (ask.Layer, ask.Level, BenchThings.Of(ask));
        var r = l.Resin!;
        var resin = new BenchResin(r.Id, r.Name, r.Typical, Mix(r), r.PotLifeMinutes, r.PotLifeMassG, r.MinC, r.MaxC, r.MaxHumidityPercent, r.SheetNote, lots.GetValueOrDefault(r.Id, ""), r.Times.Count > 0 ? r.Times[0] : null);
        return new()
        {
            LayerId = l.Id,
            Order = l.Order,
            Name = l.Name,
            Colour = l.Colour,
            Resin = resin,
            Plan = plan,
            Poured = pours.Exists(p => !p.Withdrawn && p.LayerOrder == l.Order),
            Things = things,
            Keepsakes = BenchKeepsakes.Of(ask, things, pictured),
            Cautions = BenchCautions.Of(plan, resin),
            HasScatter = l.Scatter.Count > 0,
        };
    }

    private static string Mix(Resins.Resin r) =>
        string.Create(CultureInfo.InvariantCulture, $"{r.PartsA:0.##} : {r.PartsB:0.##} by {(r.MixBy == "volume" ? "volume, weighed here" : "weight")}");

    // a picture on film comes from a keepsake's photograph where one of them has it: then a copy of that keepsake goes in
    private static async Task<Dictionary<string, int>> PicturedAsync(StudioDb db, IReadOnlyList<FilmFigures> films)
    {
        var hashes = films.Select(f => f.Sheet.Picture?.Hash).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        return hashes.Count == 0 ? [] : (await db.Set<Photo>().AsNoTracking().Where(p => hashes.Contains(p.Hash) && p.KeepsakeId != null).OrderBy(p => p.Id).Select(p => new { p.Hash, Id = p.KeepsakeId!.Value }).ToListAsync())
            .GroupBy(p => p.Hash, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Id, StringComparer.Ordinal);
    }

    private static async Task<Dictionary<int, (Keepsake Keepsake, CustodyState Now)>> KeepsakesAsync(StudioDb db, Piece piece, IEnumerable<int> pictured)
    {
        var ids = piece.Layers.SelectMany(l => l.Placed).Select(p => p.KeepsakeId ?? p.CopyOf).OfType<int>().Concat(pictured).Distinct().ToList();
        if (ids.Count == 0)
        {
            return [];
        }

        var logs = (await db.Set<KeepsakeEvent>().AsNoTracking().Where(e => ids.Contains(e.KeepsakeId)).ToListAsync()).ToLookup(e => e.KeepsakeId);
        return (await db.Set<Keepsake>().AsNoTracking().Where(k => ids.Contains(k.Id)).ToListAsync()).ToDictionary(k => k.Id, k => (k, CustodyLog.Read(logs[k.Id])));
    }

    // what the forecast is held against, so that the caution never names a higher figure than the stop beside it
    private static async Task<Dictionary<int, HeatLimit>> LimitsAsync(StudioDb db, Piece piece, LayersResult? plan, Dictionary<int, (Keepsake Keepsake, CustodyState Now)> keepsakes)
    {
        var ids = piece.Layers.SelectMany(HeatLimits.MaterialsOf).Distinct().ToList();
        var materials = ids.Count == 0 ? [] : await db.Set<Stores.Material>().AsNoTracking().Where(m => ids.Contains(m.Id)).ToListAsync();
        var things = keepsakes.Values.Select(k => k.Keepsake).ToList();
        return piece.Layers.ToDictionary(l => l.Order, l => HeatLimits
            .Of(piece.Mould!, l, plan?.Layers.ElementAtOrDefault(l.Order) is { } level && HeatLimits.FilmIn(piece, plan, level), things, materials)
            .Where(limit => !limit.AtMouldFace).MinBy(limit => limit.Celsius)!);
    }

    private static async Task<List<BenchPour>> TraceAsync(StudioDb db, List<Pour> pours)
    {
        var ids = pours.ConvertAll(p => p.Id);
        var changes = ids.Count == 0 ? [] : await db.Set<PourCorrection>().AsNoTracking().Where(c => ids.Contains(c.PourId)).OrderBy(c => c.Id).ToListAsync();
        var byPour = changes.ToLookup(c => c.PourId, c => new PourChange(c.At, c.By, c.Field, c.Was, c.Now, c.Why, c.Passed));
        return pours.ConvertAll(p => new BenchPour
        {
            Id = p.Id,
            Version = p.Version,
            LayerId = p.LayerId,
            LayerOrder = p.LayerOrder,
            LayerName = p.LayerName,
            Colour = p.Colour,
            ResinName = p.ResinName,
            Lot = p.ResinLot,
            FromMm = p.FromMm,
            ToMm = p.ToMm,
            PlannedAG = p.PlannedAG,
            PlannedBG = p.PlannedBG,
            ActualAG = p.ActualAG,
            ActualBG = p.ActualBG,
            RoomC = p.RoomC,
            StartedAt = p.StartedAt,
            By = p.By,
            Withdrawn = p.Withdrawn,
            Foretold = p.Foretold,
            Changes = [.. byPour[p.Id]],
        });
    }

    private static PourCorrection Trace(Pour pour, DateTime at, string by, string field, string was, string now, string why) =>
        new() { PourId = pour.Id, At = at, By = by, Field = field, Was = was, Now = now, Why = why.Trim() };

    private static string Grams(double grams) => Say.Grams(grams);
}
