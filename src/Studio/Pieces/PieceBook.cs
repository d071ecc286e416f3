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

    /// <summary>Keeps a design. Refused when somebody else kept another since it was read, or when a poured layer would change.</summary>
    /// <param name="edited">The design, with mould and resins as the page shows it.</param>
    /// <param name="readAs">What <see cref="PieceDesk.ReadAs"/> said when it was read.</param>
    public Task<Saved> KeepAsync(Piece edited, string readAs, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var stored = await db.Set<Piece>().Include(p => p.Layers.OrderBy(l => l.Order)).SingleOrDefaultAsync(p => p.Id == edited.Id);
        if (stored is null || DesignText.Write(stored) != readAs)
        {
            return Saved.Refused(Saved.SomeoneElse);
        }

        var figures = Figures(edited, await ShelfAsync(db, stored));
        if ((figures.Keepable ? null : Again(figures)) is { } again)
        {
            return Saved.Refused(again);
        }

        if (PouredRules.Refusal(stored, edited, await bench.OfAsync(db, stored.Id)) is { } refusal)
        {
            return Saved.Refused(refusal);
        }

        Write(db, stored, edited);
        CommissionBook.Append(db, stored.CommissionId, "piece", Told(stored.Name, figures), by);
        await db.SaveChangesAsync();
        return Told(stored.Id);
    });

    /// <summary>Draws the same piece once more. Keepsakes are not set in twice: those places stay empty.</summary>
    public Task<Saved> DuplicateAsync(int id, string by) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var piece = await db.Set<Piece>().AsNoTracking().Include(p => p.Layers.OrderBy(l => l.Order)).SingleAsync(p => p.Id == id);
        var (name, left) = (piece.Name, piece.Layers.Sum(l => l.Placed.Count(p => p.KeepsakeId is not null)));
        foreach (var layer in piece.Layers)
        {
            (layer.Id, layer.PieceId) = (0, 0);
            layer.Placed = [.. layer.Placed.Where(p => p.KeepsakeId is null)];
        }

        (piece.Id, piece.Version, piece.Name, piece.CreatedAt) = (0, 0, name + ", again", clock.GetUtcNow().UtcDateTime);
        (piece.Stage, piece.ClockSaid, piece.ClockSaidAt, piece.DemouldedAt, piece.FinishedAt) = (Making.Drawn, "", null, null, null);
        db.Add(piece);
        CommissionBook.Append(db, piece.CommissionId, "piece", $"“{name}” was drawn once more{(left > 0 ? "; its keepsakes stay with the first" : "")}.", by);
        await db.SaveChangesAsync();
        return Told(piece.Id);
    });

    /// <summary>Lets a piece go: it will not be made. It can be taken up again.</summary>
    public Task<Saved> LetGoAsync(int id, string by) => StageAsync(id, Making.LetGo, by);

    /// <summary>Takes a piece up again that was let go.</summary>
    public async Task<Saved> TakeUpAsync(int id, string by)
    {
        await using var db = await factory.CreateDbContextAsync();
        var poured = await bench.OfAsync(db, id);
        return await StageAsync(id, poured.Count > 0 ? Making.Casting : Making.Drawn, by);
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

    private static string Again(PieceFigures figures)
    {
        var stops = figures.Findings.Where(f => f.Severity == Engine.Severity.Stop).Select(f => f.Message);
        var fields = figures.Errors.Count switch { 0 => "", 1 => "One field needs another look first: " + figures.Errors[0].Message, var n => $"{n} fields need another look first; each says what." };
        return string.Join(" ", stops.Prepend(fields).Where(s => s.Length > 0));
    }

    private static string Told(string name, PieceFigures figures) => figures.Result is { } r
        ? FormattableString.Invariant($"The design of “{name}” was kept: {r.Layers.Count} {(r.Layers.Count == 1 ? "layer" : "layers")}, about {r.FinishedMassG:0} g finished.")
        : $"The design of “{name}” was kept; it has no layers yet.";

    private static void Write(StudioDb db, Piece stored, Piece edited)
    {
        (stored.Name, stored.MouldId, stored.Former) = (edited.Name.Trim(), edited.MouldId, edited.Former);
        (stored.Fittings, stored.Tasks, stored.Notes) = ([.. edited.Fittings], [.. edited.Tasks], edited.Notes);
        (stored.WastePercent, stored.WastePerBatchG) = (edited.WastePercent, edited.WastePerBatchG);
        db.Entry(stored).Property(p => p.Version).IsModified = true; // layers alone must raise the piece's version as well

        foreach (var gone in stored.Layers.Where(l => edited.Layers.All(e => e.Id != l.Id)).ToList())
        {
            stored.Layers.Remove(gone);
            db.Remove(gone);
        }

        foreach (var layer in edited.Layers)
        {
            var row = stored.Layers.FirstOrDefault(l => l.Id == layer.Id && layer.Id > 0);
            if (row is null)
            {
                row = new PieceLayer();
                stored.Layers.Add(row);
            }

            (row.Order, row.Name, row.ResinId, row.Colour) = (layer.Order, layer.Name.Trim(), layer.ResinId, layer.Colour);
            (row.ToMm, row.ThicknessMm, row.ResinMl) = (layer.ToMm, layer.ThicknessMm, layer.ResinMl);
            (row.Additions, row.Scatter, row.Placed) = ([.. layer.Additions], [.. layer.Scatter], [.. layer.Placed]);
        }
    }

    private static async Task<KeepsakeShelf> ShelfAsync(StudioDb db, Piece piece)
    {
        var all = await db.Set<Keepsake>().AsNoTracking().Where(k => k.CommissionId == piece.CommissionId).OrderBy(k => k.EntryNumber).ToListAsync();
        var others = await db.Set<Piece>().AsNoTracking().Include(p => p.Layers).Where(p => p.CommissionId == piece.CommissionId && p.Id != piece.Id && p.Stage != Making.LetGo).ToListAsync();
        var elsewhere = others.SelectMany(p => p.Layers.SelectMany(l => l.Placed).Select(x => (x.KeepsakeId, p.Name))).Where(x => x.KeepsakeId is not null)
            .GroupBy(x => x.KeepsakeId!.Value).ToDictionary(g => g.Key, g => g.First().Name);
        return new KeepsakeShelf(all, elsewhere);
    }
}
