using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Keepsakes;
using Studio.Pieces;
using Studio.Settings;
using Studio.Shell;
using Studio.Steps;

namespace Studio.Bench;

/// <content>A piece that failed: why, what it cost, and the one that is made in its place.</content>
public sealed partial class BenchBook
{
    /// <summary>Notes that a piece failed. What was set into it stays in it by the log; a new one is drawn with what is still here, where that is wanted.</summary>
    /// <returns>Done with the new piece's id, or the failed one's where none was drawn.</returns>
    public Task<Saved> FailAsync(int pieceId, FailForm form, string by) => Saved.TryAsync(async () =>
    {
        ArgumentNullException.ThrowIfNull(form);
        if (new FailValidator().Validate(form) is { IsValid: false } check)
        {
            return Saved.Refused(string.Join(" ", check.Errors.Select(e => e.ErrorMessage)));
        }

        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        await using var whole = await db.Database.BeginTransactionAsync(System.Data.IsolationLevel.Serializable);
        if (await db.Set<Piece>().Include(p => p.Layers.OrderBy(l => l.Order)).SingleOrDefaultAsync(p => p.Id == pieceId) is not { } piece)
        {
            return Saved.Refused("This piece is not here any more.");
        }

        if (piece.Stage == Making.Failed)
        {
            return Saved.Done(pieceId);
        }

        if (piece.Stage is Making.Drawn or Making.LetGo)
        {
            return Saved.Refused("Nothing of this piece is poured, so nothing of it can have failed. Change its design, or let it go.");
        }

        (piece.Stage, piece.FailedAs, piece.FailedWords, piece.FailedCost, piece.FailedAt) = (Making.Failed, form.Reason, form.Words.Trim(), form.Cost, Now);
        (piece.ClockSaid, piece.ClockSaidAt) = ("", Now);
        var anew = form.Anew ? PieceBook.Again(piece, keepsakes: true, Now) : null;
        if (anew is not null)
        {
            anew.InPlaceOf = pieceId;
            db.Add(anew);
        }

        CommissionBook.Append(db, piece.CommissionId, "piece", await ToldAsync(db, piece, anew), by);
        await db.SaveChangesAsync();
        await StepBook.SettleAsync(db, piece.CommissionId, Now, wentBack: true, by);
        await whole.CommitAsync();
        news.Tell(News.Piece, pieceId);
        news.Tell(News.Commission, piece.CommissionId);
        return Saved.Done(anew?.Id ?? pieceId);
    });

    private static async Task<string> ToldAsync(StudioDb db, Piece piece, Piece? anew)
    {
        var inside = await KeepsakeBook.InPieceAsync(db, piece.Id);
        var currency = await db.Set<StudioSettings>().Select(s => s.Currency).SingleOrDefaultAsync() ?? new StudioSettings().Currency;
        List<string> said =
        [
            $"{piece.Name} failed: {Failing.Label(piece.FailedAs).ToLower(CultureInfo.InvariantCulture)}.",
            .. piece.FailedWords.Length > 0 ? [Say.Sentence(piece.FailedWords)] : Array.Empty<string>(),
            .. piece.FailedCost is { } cost ? [$"It cost {Say.Money(cost, currency)}."] : Array.Empty<string>(),
            .. inside.Count > 0 ? [$"In it stay: {string.Join("; ", inside)}."] : Array.Empty<string>(),
            .. anew is not null ? [$"“{anew.Name}” is drawn in its place."] : Array.Empty<string>(),
        ];
        return string.Join(" ", said);
    }
}
