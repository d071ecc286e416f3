using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Papers;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>What happens to a quote once it is worked out.</summary>
public sealed partial class QuoteBook
{
    /// <summary>It goes to the family: its paper is kept as it leaves, its numbers are fixed from now on, and earlier versions are replaced.</summary>
    /// <param name="id">The quote.</param>
    /// <param name="version">As the page read it.</param>
    /// <param name="by">Who sends it.</param>
    /// <param name="reason">Why it is sent with points still open; stays in the history with them.</param>
    public Task<Saved> SendAsync(int id, int version, string by, string reason = "") => ActAsync(id, version, by, async (db, quote) =>
    {
        if (quote.State != QuoteState.Draft)
        {
            return quote.State == QuoteState.Sent ? "" : $"This quote is {QuoteState.Label(quote.State)} already.";
        }

        if (quote.Result is null || quote.Form.Missing.Any())
        {
            return "This quote is incomplete: a line has no price. Enter it, then send.";
        }

        var (points, sheet) = await LookAsync(db, quote);
        if (Held(points, reason) is { } held)
        {
            return held;
        }

        quote.State = QuoteState.Sent;
        quote.SentAt = db.Now;
        var paper = await QuoteWriting.WriteAsync(db, sheet, "");
        await issued.KeepAsync(db, new IssuedPaper { Kind = PaperKinds.Quote, Number = QuoteWriting.Number(sheet), CommissionId = quote.CommissionId, RefId = id, FileName = paper.FileName, By = by, State = QuoteState.Sent }, paper.Content);
        foreach (var older in await db.Set<Quote>().Where(q => q.PieceId == quote.PieceId && q.Id != quote.Id && (q.State == QuoteState.Sent || q.State == QuoteState.Draft)).ToListAsync())
        {
            older.State = QuoteState.Superseded;
        }

        CommissionBook.Append(db, quote.CommissionId, "quote", $"The price was sent: {Total(quote)}, version {quote.VersionNo}.{AllTheSame(points, reason)}", by);
        await CommissionBook.MoveIfAsync(db, quote.CommissionId, Standing.Asked, Standing.Quoted, "A price has been sent.", by);
        return null;
    });

    /// <summary>They said yes: who, and how. A second yes adds nothing.</summary>
    public Task<Saved> AcceptAsync(int id, int version, string who, string how, string by) => ActAsync(id, version, by, async (db, quote) =>
    {
        if (string.IsNullOrWhiteSpace(who))
        {
            return "Write down who said yes.";
        }

        if (quote.State != QuoteState.Sent)
        {
            return quote.State == QuoteState.Accepted ? "" : "Only a price that was sent can be agreed. Mark it as sent first.";
        }

        // the newest yes is the one that counts
        foreach (var older in await db.Set<Quote>().Where(q => q.PieceId == quote.PieceId && q.Id != quote.Id && q.State == QuoteState.Accepted).ToListAsync())
        {
            older.State = QuoteState.Superseded;
        }

        quote.State = QuoteState.Accepted;
        quote.AcceptedAt = db.Now;
        quote.AcceptedBy = who.Trim();
        quote.AcceptedHow = how;
        CommissionBook.Append(db, quote.CommissionId, "quote", $"{who.Trim()} said yes to {Total(quote)} {how}.", by);
        await CommissionBook.MoveIfAsync(db, quote.CommissionId, Standing.Quoted, Standing.Agreed, $"{who.Trim()} said yes {how}.", by);
        return null;
    });

    /// <summary>They said no; the quote stays as it was, for the story.</summary>
    public Task<Saved> DeclineAsync(int id, int version, string by) => ActAsync(id, version, by, (db, quote) =>
    {
        if (quote.State is not QuoteState.Sent)
        {
            return Task.FromResult<string?>(quote.State == QuoteState.Declined ? "" : "Only a price that was sent can be declined.");
        }

        quote.State = QuoteState.Declined;
        CommissionBook.Append(db, quote.CommissionId, "quote", $"They said no to {Total(quote)}.", by);
        return Task.FromResult<string?>(null);
    });

    // everything that is looked at before it leaves, and what its paper is written from
    private async Task<(IReadOnlyList<SendPoint> Points, QuoteOnPaper Sheet)> LookAsync(StudioDb db, Quote quote)
    {
        var (piece, settings) = (await PieceAsync(db, quote.PieceId), await settingsBook.ReadAsync());
        var today = DateOnly.FromDateTime(Say.Local(db.Now, await settingsBook.ZoneAsync()));
        var replaces = await db.Set<Quote>().Where(q => q.PieceId == quote.PieceId && q.VersionNo < quote.VersionNo && q.SentAt != null).MaxAsync(q => (int?)q.VersionNo);
        var points = await PointsAsync(db, quote, piece, await times.OfPieceAsync(piece.Id), await DiffersAsync(db, quote, piece), today);
        return (points, new QuoteOnPaper(quote, piece, settings, replaces, db.Now));
    }

    // what would be untrue on paper is never sent; what is only open asks for a reason
    private static string? Held(IReadOnlyList<SendPoint> points, string reason)
    {
        var untrue = points.Where(p => p.Refuses).ToList();
        return untrue.Count > 0 ? $"It can't be sent like this. {string.Join(" ", untrue.Select(p => p.Words))}"
            : points.Count > 0 && string.IsNullOrWhiteSpace(reason) ? $"Not everything is settled yet. {string.Join(" ", points.Select(p => p.Words))} Or say why it is sent all the same."
            : null;
    }

    private static string AllTheSame(IReadOnlyList<SendPoint> points, string reason) =>
        points.Count == 0 ? "" : $" Open when it was sent: {string.Join(" ", points.Select(p => p.Words))} Sent all the same: {Say.Sentence(reason)}";

    // an act answers null when it changed something, "" when it had been done before, else why not
    private Task<Saved> ActAsync(int id, int version, string by, Func<StudioDb, Quote, Task<string?>> act) => Saved.TryAsync(async () =>
    {
        await using var db = await factory.CreateDbContextAsync();
        db.By = by;
        var quote = await db.Set<Quote>().SingleAsync(q => q.Id == id);
        var words = await act(db, quote);
        if (words is not null)
        {
            return words.Length == 0 ? Saved.Done(id) : Saved.Refused(words);
        }

        db.Entry(quote).Property(q => q.Version).OriginalValue = version;
        await db.SaveChangesAsync();
        Told(quote);
        return Saved.Done(id);
    });

    private void Told(Quote quote)
    {
        news.Tell(News.Quote, quote.Id);
        news.Tell(News.Commission, quote.CommissionId);
    }

    private static string Total(Quote quote) => Say.Money(quote.Result?.Total ?? 0, quote.Currency);
}
