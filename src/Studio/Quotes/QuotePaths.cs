using Studio.Shell;

namespace Studio.Quotes;

/// <summary>The family's paper.</summary>
internal sealed class QuotePaths : IPaths
{
    public void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/papers/quote/{id:int}.pdf", async (int id, HttpContext http, QuotePaperBook book) =>
        {
            if (await book.PaperAsync(id) is not { } paper)
            {
                return Results.NotFound();
            }

            http.Response.Headers.ContentDisposition = $"inline; filename=\"{paper.FileName}\"";
            http.Response.Headers.CacheControl = "private, no-store";
            return Results.Bytes(paper.Content, "application/pdf");
        });
}
