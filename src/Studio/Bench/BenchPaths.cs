using Studio.Papers;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>The paper of a layer to be poured.</summary>
internal sealed class BenchPaths : IPaths
{
    public void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/papers/pour/{pieceId:int}/{layer:int}.pdf", async (int pieceId, int layer, HttpContext http, PourPaperBook book) =>
        {
            var paper = await book.SheetAsync(pieceId, layer);
            return PaperAnswer.Of(http, paper?.Content, paper?.FileName);
        }).RequireAuthorization(Roles.Making);
}
