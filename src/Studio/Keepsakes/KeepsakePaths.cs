using System.Globalization;
using Microsoft.AspNetCore.Antiforgery;
using Studio.Papers;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Keepsakes;

/// <summary>The papers of a commission's keepsakes.</summary>
internal sealed class KeepsakePaths : IPaths
{
    public void Map(IEndpointRouteBuilder app)
    {
        app.MapGet("/papers/receipt/{commissionId:int}.pdf", async (int commissionId, string? only, HttpContext http, KeepsakePaperBook book) =>
            PaperAnswer.Of(http, await book.ReceiptAsync(commissionId, Ids(only))));
        app.MapPost("/papers/receipt/{commissionId:int}", async (int commissionId, HttpContext http, KeepsakePaperBook book, IAntiforgery antiforgery) =>
        {
            await antiforgery.ValidateRequestAsync(http);
            return PaperAnswer.Of(http, await book.GiveReceiptAsync(commissionId, Ids(http.Request.Form["only"]), Who.Name(http.User)));
        });
        app.MapGet("/papers/issued/{id:int}.pdf", async (int id, HttpContext http, IssuedBook book) => PaperAnswer.Of(http, await book.CopyAsync(id)));
        app.MapGet("/papers/issued/{id:int}/as-it-left.pdf", async (int id, HttpContext http, IssuedBook book) => PaperAnswer.Of(http, await book.AsItLeftAsync(id)));
        app.MapGet("/papers/labels/{commissionId:int}.pdf", async (int commissionId, string? only, int? from, HttpContext http, KeepsakePaperBook book) =>
            PaperAnswer.Of(http, await book.LabelsAsync(commissionId, Ids(only), from ?? 1, $"{http.Request.Scheme}://{http.Request.Host}")));
    }

    // anything that is no number is left out: an address with a slip prints fewer, never somebody else's
    private static HashSet<int> Ids(string? only) =>
        [.. (only ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries).Select(t => int.TryParse(t, NumberStyles.None, CultureInfo.InvariantCulture, out var id) ? id : 0)];
}
