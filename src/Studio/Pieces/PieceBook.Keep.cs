using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;

namespace Studio.Pieces;

/// <summary>Keeping a design over the stored one.</summary>
public sealed partial class PieceBook
{
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
            return Saved.Stale();
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
        (stored.Sheets, stored.Parts) = ([.. edited.Sheets], edited.Parts);
        (stored.RoomPlan, stored.StandsIn, stored.PotId) = (edited.RoomPlan, edited.StandsIn.Trim(), edited.PotId);
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
            (row.ToMm, row.ThicknessMm, row.ResinMl, row.WaitHours) = (layer.ToMm, layer.ThicknessMm, layer.ResinMl, layer.WaitHours);
            (row.Additions, row.Scatter, row.Placed) = ([.. layer.Additions], [.. layer.Scatter], [.. layer.Placed]);
        }
    }
}
