using Studio.Papers;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Parts;

/// <summary>The papers and cutter's files of the parts to cut.</summary>
internal sealed class PartsPaths : IPaths
{
    public void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/papers/parts/{pieceId:int}.pdf", async (int pieceId, HttpContext http, PartsPaperBook book) => Answer(http, await book.PaperAsync(pieceId), "application/pdf", "inline"))
            .RequireAuthorization(Roles.Making);
        app.MapGet("/papers/parts/{pieceId:int}-{thickness:int}-{sheet:int}.svg", async (int pieceId, int thickness, int sheet, HttpContext http, PartsPaperBook book) =>
            Answer(http, await book.SvgAsync(pieceId, thickness, sheet), "image/svg+xml", "attachment")).RequireAuthorization(Roles.Making);
    }

    private static IResult Answer(HttpContext http, PartsFile? file, string type, string how) => PaperAnswer.Of(http, file?.Content, file?.FileName, type, how);
}
