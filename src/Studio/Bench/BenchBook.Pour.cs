using System.Data;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Studio.Climate;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Engine;
using Studio.Heat;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Resins;
using Studio.Shell;

namespace Studio.Bench;

public sealed partial class BenchBook
{
    /// <summary>A pour is entered while it is fresh; older than this it is a slip of the date [days]; our rule.</summary>
    private const double OldestDays = 60;

    /// <summary>What speaks against the pour as it stands in the form, before it is sent.</summary>
    /// <param name="heat">What is foretold of its heat; null while it is not worked out.</param>
    public static IReadOnlyList<Finding> Findings(BenchView sheet, BenchLayer layer, PourForm form, DateTime startedAt, PourHeat? heat) =>
        [.. PourRules.Of(sheet, layer, form, startedAt, heat), .. DampRules.Of(sheet, layer, form)];

    /// <summary>True for a stop that no reason passes.</summary>
    public static bool Final(Finding stop) => PourRules.Final(stop);

    /// <summary>Keeps a pour: numbers planned and weighed, start, room, and the data sheet as it stands. A second send of the same form adds nothing.</summary>
    public async Task<PourSaved> PourAsync(PourForm form, string by)
    {
        IReadOnlyList<Finding> stops = [];
        List<string> notices = [];

        // worked out here and not taken from the page; before anything is locked, for it may take a second
        var heat = await heats.AskAsync(form.Asked(heats), CancellationToken.None);
        var saved = await Saved.TryAsync(async () =>
        {
            try
            {
                await using var db = await factory.CreateDbContextAsync();
                db.By = by;

                // serialisable: two tablets that pour the same layer at once must not both be kept
                await using var whole = await db.Database.BeginTransactionAsync(IsolationLevel.Serializable);
                var (outcome, found) = await KeepAsync(db, form, heat, notices, by);
                stops = found;
                if (outcome.Ok)
                {
                    await whole.CommitAsync();
                }

                return outcome;
            }
            catch (DbUpdateException e) when (e.InnerException is SqliteException { SqliteErrorCode: 19 } or Npgsql.PostgresException { SqlState: "23505" or "40001" })
            {
                return await FindAsync(form.SubmitKey);
            }
        });
        if (saved.Ok)
        {
            news.Tell(News.Pour, form.PieceId);
            news.Tell(News.Room);
            news.Tell(News.Keepsake);
        }

        return new(saved.Ok, saved.Words, stops, saved.Id) { Notices = notices };
    }

    private async Task<Saved> FindAsync(string submitKey)
    {
        await using var db = await factory.CreateDbContextAsync();
        var id = await db.Set<Pour>().Where(p => p.SubmitKey == submitKey).Select(p => p.Id).FirstOrDefaultAsync();
        return id > 0 ? Saved.Done(id) : Saved.Refused("This pour could not be kept: the piece was changed elsewhere in the same moment. Load the page again; what you weighed is still on this tablet.");
    }

    private async Task<(Saved Saved, IReadOnlyList<Finding> Stops)> KeepAsync(StudioDb db, PourForm form, PourHeat heat, List<string> notices, string by)
    {
        if (await db.Set<Pour>().Where(p => p.SubmitKey == form.SubmitKey).Select(p => p.Id).FirstOrDefaultAsync() is > 0 and var sent)
        {
            return (Saved.Done(sent), []);
        }

        var sheet = await ReadAsync(db, form.PieceId);
        var layer = sheet?.Layers.FirstOrDefault(l => l.LayerId == form.LayerId);
        var startedAt = form.StartedAt ?? Now;
        if (Refusal(sheet, layer, form, startedAt) is { } refusal)
        {
            return (Saved.Refused(refusal), []);
        }

        var stops = PourRules.Of(sheet!, layer!, form, startedAt, heat).Where(f => f.Severity == Severity.Stop).ToList();
        if (stops.Exists(PourRules.Final) || (stops.Count > 0 && form.Why.Trim().Length < 3))
        {
            return (Saved.Refused(string.Join(" ", stops.Select(s => s.Message)) + (stops.Exists(PourRules.Final) ? "" : " To pour all the same, say why; the reason is kept with the pour.")), stops);
        }

        var (wentIn, asked) = WentIn(layer!, form);
        if (asked.Length > 0)
        {
            return (Saved.Refused(asked, "keepsakes"), []);
        }

        await CopiedOnFilmAsync(db, layer!, wentIn, by);
        if (await KeepsakeBook.SetInRefusalsAsync(db, wentIn) is { Count: > 0 } refused)
        {
            return (Saved.Refused(string.Join(" ", refused.Values.Select(r => r.Message)), "keepsakes"), []);
        }

        var piece = await db.Set<Piece>().SingleAsync(p => p.Id == form.PieceId);
        var resin = await db.Set<Resins.Resin>().AsNoTracking().SingleAsync(r => r.Id == layer!.Resin.Id);
        var pour = Make(form, layer!, resin, startedAt, by);
        pour.Kinetics = (await KnownCures.AcceptedAsync(db, resin.Id, pour.ResinLot))?.State.Best().Kinetics;
        pour.Foretold = heat.Foretold;
        db.Add(pour);
        LogRoom(db, sheet!, form, startedAt, by);
        piece.Stage = Making.Casting;
        piece.ClockSaid = ""; // the clock has something new to say; this also stops a second tablet that read the piece before
        piece.ClockSaidAt = startedAt;
        db.Entry(piece).Property(p => p.Stage).IsModified = true;
        await CommissionBook.MoveIfAsync(db, piece.CommissionId, Standing.Agreed, Standing.Making, $"{piece.Name}: the first layer is poured.", by);
        await db.SaveChangesAsync(); // the pour has its number from here on
        CommissionBook.Append(db, piece.CommissionId, "piece", $"{piece.Name}: layer {layer!.Order + 1}, {layer.Name}, poured with {Grams(pour.ActualAG)} of A and {Grams(pour.ActualBG)} of B of {layer.Resin.Name}.", by, pour.About);
        foreach (var one in wentIn)
        {
            await KeepsakeBook.SetInAsync(db, one, piece.Id, layer.LayerId, pour.Id, by);
        }

        foreach (var stop in stops)
        {
            db.Add(new PourCorrection { PourId = pour.Id, At = Now, By = by, Field = stop.Code, Was = stop.Message, Why = form.Why.Trim(), Passed = true });
        }

        await db.SaveChangesAsync();
        return (Saved.Done(pour.Id), []);
    }

    // each keepsake of the layer is answered for: what went in, or that nothing did
    private static (IReadOnlyList<SetInto> WentIn, string Asked) WentIn(BenchLayer layer, PourForm form)
    {
        var rows = form.Set ?? [];
        var open = layer.Keepsakes.Where(k => !rows.Exists(r => r.KeepsakeId == k.KeepsakeId && r.Copy == k.Copy)).Select(k => k.Title).ToList();
        if (open.Count > 0)
        {
            return ([], $"Say what really went in of {string.Join("; ", open)}, or that nothing of it did.");
        }

        return ([.. layer.Keepsakes.Select(k => rows.Find(r => r.KeepsakeId == k.KeepsakeId && r.Copy == k.Copy)!).Where(r => !r.NotIn)
            .Select(r => new SetInto(r.KeepsakeId, r.Copy, r.Copy ? 0 : (int)(r.Count ?? 0), r.Copy ? null : r.MassG, r.Copy ? "" : r.RestPlace))], "");
    }

    // a photograph on film is a copy of the keepsake that it shows: the log says so before the copy goes in
    private static async Task CopiedOnFilmAsync(StudioDb db, BenchLayer layer, IReadOnlyList<SetInto> wentIn, string by)
    {
        foreach (var one in wentIn.Where(o => o.Copy && layer.Things.All(t => t.KeepsakeId != o.KeepsakeId)))
        {
            await KeepsakeBook.CopiedOnFilmAsync(db, one.KeepsakeId, by);
        }
    }

    private string? Refusal(BenchView? sheet, BenchLayer? layer, PourForm form, DateTime startedAt) => this switch
    {
        _ when sheet is null => "This piece is not here any more.",
        _ when layer is null => "The design changed while you weighed: this layer is not in it any more. Load the page again; what you weighed is still on this tablet.",
        _ when layer.Plan is null => "The design has errors, so its grams are not known. Set it right on the piece's page first.",
        _ when sheet.Stage is not (Making.Drawn or Making.Casting) => $"This piece is {Making.Label(sheet.Stage).ToLowerInvariant()}: nothing more is poured into it.",
        _ when layer.Poured => $"Layer {layer.Order + 1}, {layer.Name}, is poured already. If that entry is wrong, take it back first, with a reason.",
        _ when sheet.Layers.Any(l => l.Poured && l.Order > layer.Order) => $"A layer above {layer.Name} is poured already, so this one cannot go under it. If that entry is wrong, take it back first.",
        _ when form.ActualAG <= 0 || form.ActualBG <= 0 => "Type what the scale showed for both parts first: grams of A and grams of B.",
        _ when startedAt > Now.AddMinutes(1) => "The start lies in the future. A pour is entered when it is done.",
        _ when startedAt < Now.AddDays(-OldestDays) => "The start lies more than 60 days back. Look at the date.",
        _ when sheet.Times.Layers is [.., var below] && startedAt < below.StartedAt => $"The start lies before {below.Name} was poured, {Say.When(below.StartedAt, sheet.Zone, Now)}. Correct one of the two times.",
        _ when form.RoomC is { } c && RoomBook.Wrong(c) is { } wrong => wrong,
        _ => null,
    };

    private static Pour Make(PourForm form, BenchLayer layer, Resins.Resin resin, DateTime startedAt, string by) => new()
    {
        PieceId = form.PieceId,
        LayerId = layer.LayerId,
        LayerOrder = layer.Order,
        LayerName = layer.Name,
        ResinId = resin.Id,
        ResinName = resin.Name,
        ResinLot = form.Lot.Trim(),
        Colour = layer.Colour,
        FromMm = layer.Plan!.FromMm,
        ToMm = layer.Plan.ToMm,
        PlannedAG = layer.Plan.PartAG,
        PlannedBG = layer.Plan.PartBG,
        ActualAG = form.ActualAG,
        ActualBG = form.ActualBG,
        Batches = Math.Max(1, layer.Plan.Batches.Count),
        Tally = [.. form.Tally],
        RoomC = form.RoomC,
        StartedAt = startedAt,
        By = by,
        Sheet = resin.Sheet,
        SubmitKey = form.SubmitKey,
    };

    // the clock goes by readings, so what was noted at the pour becomes one, unless the same was just logged
    private static void LogRoom(StudioDb db, BenchView sheet, PourForm form, DateTime startedAt, string by)
    {
        if (form.RoomC is not { } celsius || (sheet.Room is { } room && room.Celsius.Equals(celsius) && (startedAt - room.At).Duration() < TimeSpan.FromMinutes(30)))
        {
            return;
        }

        db.Add(new Reading { At = startedAt, Celsius = celsius, Place = sheet.Room?.Place is { Length: > 0 } place ? place : RoomBook.CastingRoom, By = by });
    }
}
