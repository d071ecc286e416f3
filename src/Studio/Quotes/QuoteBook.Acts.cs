using Microsoft.EntityFrameworkCore;
using Studio.Commissions;
using Studio.Data;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>What happens to a quote once it is worked out.</summary>
public sealed partial class QuoteBook
{
    /// <summary>It went to the family: its numbers are fixed from now on, and earlier versions are replaced.</summary>
    public Task<Saved> SendAsync(int id, int version, string by) => ActAsync(id, version, by, async (db, quote) =>
    {
        if (quote.State != QuoteState.Draft)
        {
            return quote.State == QuoteState.Sent ? "" : $"This quote is {QuoteState.Label(quote.State)} already.";
        }

        if (quote.Result is null || quote.Form.Missing.Any())
        {
            return "This quote is incomplete: a line has no price. Enter it, then send.";
        }

        quote.State = QuoteState.Sent;
        quote.SentAt = db.Now;
        foreach (var older in await db.Set<Quote>().Where(q => q.PieceId == quote.PieceId && q.Id != quote.Id && (q.State == QuoteState.Sent || q.State == QuoteState.Draft)).ToListAsync())
        {
            older.State = QuoteState.Superseded;
        }

        CommissionBook.Append(db, quote.CommissionId, "quote", $"The price was sent: {Total(quote)}, version {quote.VersionNo}.", by);
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
