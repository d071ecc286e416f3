using Studio.Papers;
using Studio.Shell;

namespace Studio.Quotes;

/// <summary>The family's paper.</summary>
internal sealed class QuotePaths : IPaths
{
    public void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/papers/quote/{id:int}.pdf", async (int id, HttpContext http, QuotePaperBook book) => Answer(http, await book.PaperAsync(id)));
        app.MapGet("/papers/quote/{id:int}/as-sent.pdf", async (int id, HttpContext http, QuotePaperBook book) => Answer(http, await book.AsSentAsync(id)));
    }

    private static IResult Answer(HttpContext http, PaperFile? paper)
    {
        if (paper is null)
        {
            return Results.NotFound();
        }

        http.Response.Headers.ContentDisposition = $"inline; filename=\"{paper.FileName}\"";
        http.Response.Headers.CacheControl = "private, no-store";
        return Results.Bytes(paper.Content, "application/pdf");
    }
}
