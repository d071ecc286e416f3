using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Moulds;
using Studio.Resins;
using Studio.Settings;

namespace Studio.Pieces;

/// <summary>Reads and writes pieces and their designs.</summary>
public sealed partial class PieceBook(IDbContextFactory<StudioDb> factory, TimeProvider clock, News news, IPouredLayers bench)
{
    /// <summary>Begins a piece in a mould, with the layers the maker chose to begin with.</summary>
    /// <param name="start">A key of <see cref="PieceStart.All"/>.</param>
    public Task<Saved> CreateAsync(int commissionId, string name, int mouldId, string start, string by) => Saved.TryAsync(async () =>
    {
        if (string.IsNullOrWhiteSpace(name))
        {
            return Saved.Refused("Give the piece a name, such as “Heather pyramid”.");
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Mould>().FindAsync(mouldId) is not { } mould || !await db.Set<Commission>().AnyAsync(c => c.Id == commissionId))
        {
            return Saved.Refused("The mould or the commission is no longer there. Load the page again and choose anew.");
        }

        var settings = await db.Set<StudioSettings>().AsNoTracking().SingleOrDefaultAsync() ?? new StudioSettings();
        var resins = await db.Set<Resin>().AsNoTracking().Where(r => !r.Retired).OrderBy(r => r.Id).ToListAsync();
        var piece = new Piece
        {
            CommissionId = commissionId,
            Name = name.Trim(),
            MouldId = mouldId,
            WastePercent = settings.WastePercent,
            WastePerBatchG = settings.WastePerBatchG,
            CreatedAt = clock.GetUtcNow().UtcDateTime,
            Layers = PieceStart.Layers(start, mould.Spec, resins),
        };
        db.Add(piece);
        CommissionBook.Append(db, commissionId, "piece", $"“{piece.Name}” was begun, in the mould {mould.Name}.", by);
        await db.SaveChangesAsync();
        return Told(piece.Id);
    });

    /// <summary>Draws the same piece once more. Keepsakes are not set in twice: those places stay empty.</summary>
    public Task<Saved> DuplicateAsync(int id, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var piece = await db.Set<Piece>().AsNoTracking().Include(p => p.Layers.OrderBy(l => l.Order)).SingleAsync(p => p.Id == id);
        var (name, left) = (piece.Name, piece.Layers.Sum(l => l.Placed.Count(p => p.KeepsakeId is not null)));
        piece = Again(piece, keepsakes: false, clock.GetUtcNow().UtcDateTime);
        db.Add(piece);
        CommissionBook.Append(db, piece.CommissionId, "piece", $"“{name}” was drawn once more{(left > 0 ? "; its keepsakes stay with the first" : "")}.", by);
        await db.SaveChangesAsync();
        return Told(piece.Id);
    });

    /// <summary>A new piece by the same design, not yet poured.</summary>
    /// <param name="piece">With its layers.</param>
    /// <param name="keepsakes">False: their places stay empty. True: it waits for those that are not here until somebody draws it without.</param>
    /// <param name="now">When it is drawn [UTC].</param>
    public static Piece Again(Piece piece, bool keepsakes, DateTime now)
    {
        ArgumentNullException.ThrowIfNull(piece);
        return new()
        {
            CommissionId = piece.CommissionId,
            Name = piece.Name + ", again",
            MouldId = piece.MouldId,
            Former = piece.Former,
            Fittings = [.. piece.Fittings],
            Tasks = [.. piece.Tasks],
            Sheets = [.. piece.Sheets],
            Parts = piece.Parts,
            RoomPlan = piece.RoomPlan,
            StandsIn = piece.StandsIn,
            PotId = piece.PotId,
            WastePercent = piece.WastePercent,
            WastePerBatchG = piece.WastePerBatchG,
            Notes = piece.Notes,
            CreatedAt = now,
            Layers =
            [
                .. piece.Layers.OrderBy(l => l.Order).Select(l => new PieceLayer
                {
                    Order = l.Order,
                    Name = l.Name,
                    ResinId = l.ResinId,
                    ToMm = l.ToMm,
                    ThicknessMm = l.ThicknessMm,
                    ResinMl = l.ResinMl,
                    WaitHours = l.WaitHours,
                    Colour = l.Colour,
                    Additions = [.. l.Additions],
                    Scatter = [.. l.Scatter],
                    Placed = [.. l.Placed.Where(p => keepsakes || p.KeepsakeId is null)],
                }),
            ],
        };
    }

    /// <summary>Lets a piece go: it will not be made. It can be taken up again.</summary>
    public Task<Saved> LetGoAsync(int id, string by) => StageAsync(id, Making.LetGo, by);

    /// <summary>Takes a piece up again that was let go.</summary>
    public async Task<Saved> TakeUpAsync(int id, string by)
    {
        await using var db = await factory.CreateDbContextAsync();
        var poured = await bench.OfAsync(db, id);
        var stage = (await db.Set<Piece>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == id))?.StageByRecord(poured.Count > 0) ?? Making.Drawn;
        return await StageAsync(id, stage, by);
    }

    private Task<Saved> StageAsync(int id, string stage, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        if (await db.Set<Piece>().FindAsync(id) is not { } piece)
        {
            return Saved.Refused("This piece is no longer there.");
        }

        if (piece.Stage is Making.Demoulded or Making.Finished or Making.Home && stage == Making.LetGo)
        {
            return Saved.Refused("This piece is out of its mould already, so there is nothing to let go.");
        }

        if (piece.Stage != stage)
        {
            piece.Stage = stage;
            CommissionBook.Append(db, piece.CommissionId, "piece", stage == Making.LetGo ? $"“{piece.Name}” was let go: it will not be made." : $"“{piece.Name}” was taken up again.", by);
            await db.SaveChangesAsync();
        }

        return Told(id);
    });

    private Saved Told(int id)
    {
        news.Tell(News.Piece, id);
        return Saved.Done(id);
    }

    private static async Task<KeepsakeShelf> ShelfAsync(StudioDb db, Piece piece)
    {
        var all = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == piece.CommissionId).OrderBy(k => k.EntryNumber).ToListAsync();
        var others = await db.Set<Piece>().AsNoTracking().Include(p => p.Layers).Where(p => p.CommissionId == piece.CommissionId && p.Id != piece.Id && p.Stage != Making.LetGo && p.Stage != Making.Failed).ToListAsync();
        var elsewhere = others.SelectMany(p => p.Layers.SelectMany(l => l.Placed).Select(x => (x.KeepsakeId, p.Name))).Where(x => x.KeepsakeId is not null)
            .GroupBy(x => x.KeepsakeId!.Value).ToDictionary(g => g.Key, g => g.First().Name);
        return new KeepsakeShelf(all, elsewhere);
    }
}
