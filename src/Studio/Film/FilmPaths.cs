using Studio.Data.Files;
using Studio.Papers;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Film;

/// <summary>A piece's photographs as papers, and pictures made ready by their recipe for the page. All of it is the makers', as the page it hangs on.</summary>
internal sealed class FilmPaths : IPaths
{
    private const int LargestPreviewPx = 1280;

    public void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/papers/photographs/{pieceId:int}.pdf", async (int pieceId, int? only, string? paper, bool? outline, HttpContext http, FilmBook book) =>
            Answer(http, await book.PaperAsync(pieceId, new(only, paper, outline ?? false)), "inline")).RequireAuthorization(Roles.Making);
        app.MapGet("/papers/photographs/{pieceId:int}/{index:int}.svg", async (int pieceId, int index, HttpContext http, FilmBook book) =>
            Answer(http, await book.SvgAsync(pieceId, index), "attachment")).RequireAuthorization(Roles.Making);
        app.MapGet("/sheets/{hash}/{recipe}.jpg", PreviewAsync).RequireAuthorization(Roles.Making);
    }

    private static IResult Answer(HttpContext http, FilmFile? file, string how) => PaperAnswer.Of(http, file?.Content, file?.FileName, file?.ContentType ?? "", how);

    private static async Task<IResult> PreviewAsync(string hash, string recipe, int? px, HttpContext http, PhotoStore store)
    {
        if (RecipeText.Read(recipe) is not { } wish || await store.PrepareAsync(hash, wish, Math.Clamp(px ?? 640, 16, LargestPreviewPx), http.RequestAborted) is not { } jpeg)
        {
            return Results.NotFound();
        }

        // the same picture and recipe give the same outcome for ever; private, so that no shared cache keeps a family's photograph
        http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Bytes(jpeg, "image/jpeg");
    }
}
