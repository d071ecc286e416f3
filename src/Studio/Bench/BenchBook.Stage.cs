using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Commissions;
using Studio.Data;
using Studio.Pieces;
using Studio.Shell;
using Studio.Steps;

namespace Studio.Bench;

public sealed partial class BenchBook
{
    /// <summary>Out of the mould. Before the clock allows it only with a reason, which is kept.</summary>
    public Task<Saved> DemouldAsync(int pieceId, string why, string by) => StageAsync(pieceId, by, (piece, sheet) =>
    {
        if (piece.Stage == Making.Demoulded)
        {
            return new(Saved.Done(pieceId), "");
        }

        if (piece.Stage != Making.Casting || sheet.ToPour is not null)
        {
            return new(Saved.Refused(sheet.ToPour is { } layer ? $"Layer {layer.Order + 1}, {layer.Name}, is not poured yet. A piece leaves its mould when every layer is in; take the layer out of the design if it is not wanted." : "This piece is not in its mould."), "");
        }

        var early = sheet.Times.Next.Kind != ActKind.Demould;
        if (early && why.Trim().Length < 3)
        {
            return new(Saved.Refused($"{sheet.Times.Next.Words} To take it out now all the same, say why; the reason is kept."), "");
        }

        (piece.Stage, piece.DemouldedAt) = (Making.Demoulded, Now);
        return new(Saved.Done(pieceId), early ? $"{piece.Name} was taken out of its mould before its time. {sheet.Times.Next.Words} Reason: {why.Trim()}" : $"{piece.Name} was taken out of its mould.");
    });

    /// <summary>Sanded, polished, done. Before full cure, or where nobody knows when that is, only with a reason, which is kept; the commission is ready when all its pieces are finished and cured.</summary>
    public Task<Saved> FinishAsync(int pieceId, string why, string by) => StageAsync(pieceId, by, (piece, sheet) =>
    {
        if (piece.Stage == Making.Finished)
        {
            return new(Saved.Done(pieceId), "");
        }

        if (piece.Stage != Making.Demoulded)
        {
            return new(Saved.Refused("A piece is finished after it has left its mould."), "");
        }

        var cure = sheet.Times.FullCure;
        var early = !cure.Reached(Now);
        var open = cure.At is { } at ? $"It is fully cured {Say.When(at, sheet.Zone, Now)}, not before." : $"When it is fully cured is not known. {cure.RestsOn}";
        if (early && why.Trim().Length < StepBook.LeastWhy)
        {
            return new(Saved.Refused($"{open} To call it finished all the same, say why; the reason is kept.", StepBook.DisagreesCode), "");
        }

        (piece.Stage, piece.FinishedAt) = (Making.Finished, Now);
        return new(Saved.Done(pieceId), early ? $"{piece.Name} was called finished before its time. {open} Reason: {Say.Sentence(why)}" : $"{piece.Name} is finished.");
    });

    /// <summary>Undoes the last of demoulding, finishing and failing.</summary>
    /// <param name="from">Where the page showed it; refused when it stands elsewhere by now, so that nobody undoes twice.</param>
    public Task<Saved> StepBackAsync(int pieceId, string from, string by) => StageAsync(pieceId, by, (piece, sheet) =>
    {
        if (piece.Stage != from)
        {
            return new(Saved.Refused($"It was changed meanwhile: it is “{Making.Label(piece.Stage)}” now. Look again, then decide.", Saved.StaleCode), "");
        }

        switch (piece.Stage)
        {
            case Making.Finished:
                (piece.Stage, piece.FinishedAt) = (Making.Demoulded, null);
                return new(Saved.Done(pieceId), $"{piece.Name} was marked finished by mistake; that is undone.");
            case Making.Failed:
                piece.Stage = sheet.Stands == Standing.Home ? Making.Home : piece.StageByRecord(poured: true); // nothing fails before its first pour
                (piece.FailedAs, piece.FailedWords, piece.FailedCost, piece.FailedAt) = ("", "", null, null);
                return new(Saved.Done(pieceId), $"{piece.Name} was marked as failed by mistake; that is undone.");
            case Making.Demoulded:
                (piece.Stage, piece.DemouldedAt) = (Making.Casting, null);
                return new(Saved.Done(pieceId), $"{piece.Name} was marked as out of its mould by mistake; that is undone.");
            default:
                return new(Saved.Refused("There is nothing to undo."), "");
        }
    }, back: true);

    private Task<Saved> StageAsync(int pieceId, string by, Func<Piece, BenchView, (Saved Saved, string Story)> act, bool back = false) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var whole = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable);
        if (await ReadAsync(db, pieceId) is not { } sheet)
        {
            return Saved.Refused("This piece is not here any more.");
        }

        var piece = await db.Set<Piece>().SingleAsync(p => p.Id == pieceId);
        if (back && piece.Stage == Making.Failed && await SuccessorAsync(db, pieceId) is { Length: > 0 } stands)
        {
            return Saved.Refused(stands, "successor-poured");
        }

        var (saved, story) = act(piece, sheet);
        if (!saved.Ok || story.Length == 0)
        {
            return saved;
        }

        (piece.ClockSaid, piece.ClockSaidAt) = ("", Now);
        CommissionBook.Append(db, piece.CommissionId, "piece", story, by);
        await db.SaveChangesAsync(); // the steps read what is written down
        await StepBook.SettleAsync(db, piece.CommissionId, Now, back, by);
        await whole.CommitAsync();
        news.Tell(News.Piece, pieceId);
        news.Tell(News.Commission, piece.CommissionId);
        return saved;
    });

    // the piece that was drawn in a failed one's place is let go with the failure; one that is poured stands
    private static async Task<string> SuccessorAsync(StudioDb db, int pieceId)
    {
        if (await db.Set<Piece>().FirstOrDefaultAsync(p => p.InPlaceOf == pieceId && p.Stage != Making.LetGo) is not { } successor)
        {
            return "";
        }

        if (successor.Stage != Making.Drawn)
        {
            return $"“{successor.Name}”, made in its place, is poured already, so the failure stands.";
        }

        successor.Stage = Making.LetGo;
        return "";
    }
}
