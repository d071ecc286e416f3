using Studio.Papers;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>The family's paper.</summary>
internal sealed class QuotePaths : IPaths
{
    public void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/papers/quote/{id:int}.pdf", async (int id, HttpContext http, QuotePaperBook book) => PaperAnswer.Of(http, await book.PaperAsync(id)));
        app.MapGet("/papers/quote/{id:int}/as-sent.pdf", async (int id, HttpContext http, QuotePaperBook book) => PaperAnswer.Of(http, await book.AsSentAsync(id)));
    }
}
