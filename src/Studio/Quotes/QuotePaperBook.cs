using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Papers;
using Studio.Pieces;
using Studio.Settings;

namespace Studio.Quotes;

/// <summary>The family's paper: a draft as it would be now; what was sent as it was sent, marked as a copy.</summary>
public sealed class QuotePaperBook(QuoteBook quotes, IDbContextFactory<StudioDb> factory, SettingsBook settingsBook, IssuedBook issued)
{
    /// <summary>The paper with what has become of it in its head; null when there is no such quote or it has no total yet.</summary>
    public async Task<PaperFile?> PaperAsync(int id)
    {
        if (await quotes.ViewAsync(id) is not { Quote.Result: not null } view)
        {
            return null;
        }

        var settings = await settingsBook.ReadAsync();
        var format = PaperHouse.Of(settings, view.Quote.Currency).Format;
        var today = QuoteToday.Words(view, format);
        if (view.Paper is { } kept && await issued.CopyAsync(kept.Id, today) is { } copy)
        {
            return copy;
        }

        await using var db = await factory.CreateDbContextAsync();
        var sheet = new QuoteOnPaper(view.Quote, view.Piece, settings, view.Replaces, view.Now);
        return await QuoteWriting.WriteAsync(db, sheet, today, view.NeverSent ? null : DrawnAgain(format.Day(view.Now)));
    }

    /// <summary>The paper as it left, byte for byte; null where none was kept.</summary>
    public async Task<PaperFile?> AsSentAsync(int id) => await issued.LastAsync(PaperKinds.Quote, id) is { } paper ? await issued.AsItLeftAsync(paper.Id) : null;

    /// <summary>What a paper says that is not the one that was sent.</summary>
    public static string DrawnAgain(string day) => $"Drawn again on {day}: the paper that was sent was not kept.";

    /// <summary>The drawing of a design on its paper; null where it cannot be worked out.</summary>
    public static PaperDrawing? Drawn(Piece piece) => QuoteWriting.Drawn(piece, new QuoteForm());
}
