using Studio.Shell;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>The paper of a layer to be poured.</summary>
internal sealed class BenchPaths : IPaths
{
    public void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/papers/pour/{pieceId:int}/{layer:int}.pdf", async (int pieceId, int layer, HttpContext http, PourPaperBook book) =>
        {
            if (await book.SheetAsync(pieceId, layer) is not { } paper)
            {
                return Results.NotFound();
            }

            http.Response.Headers.ContentDisposition = $"inline; filename=\"{paper.FileName}\"";
            http.Response.Headers.CacheControl = "private, no-store";
            return Results.Bytes(paper.Content, "application/pdf");
        }).RequireAuthorization(Roles.Making);
}
