using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Data;
using Studio.Papers;
using Studio.Quotes;
using Studio.Settings;

namespace Studio.Demo;

/// <summary>Keeps the paper of every price that the demo's story says was sent, with the day that the studio promises.</summary>
internal sealed class DemoPapers(StudioDb db, IssuedBook issued, PieceTimeBook times, StudioSettings settings, string by)
{
    public async Task KeepAsync()
    {
        foreach (var quote in await db.Set<Quote>().Where(q => q.SentAt != null).OrderBy(q => q.Id).ToListAsync())
        {
            quote.Form.PromiseOn = (await times.OfPieceAsync(quote.PieceId))?.PromiseOn;
            var sheet = new QuoteOnPaper(quote, await QuoteBook.PieceAsync(db, quote.PieceId), settings, null, db.Now);
            var paper = await QuoteWriting.WriteAsync(db, sheet, "");
            var kept = await issued.KeepAsync(db, new IssuedPaper { Kind = PaperKinds.Quote, Number = QuoteWriting.Number(sheet), CommissionId = quote.CommissionId, RefId = quote.Id, FileName = paper.FileName, By = by, State = QuoteState.Sent }, paper.Content);
            kept.At = quote.SentAt!.Value;
        }

        await db.SaveChangesAsync();
    }
}
