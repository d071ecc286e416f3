using Microsoft.AspNetCore.Antiforgery;
using Studio.Data;
using Studio.Data.Files;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Keepsakes;

/// <summary>Photographs in and out: sent while the person still types, served to signed-in people only.</summary>
internal sealed class PhotoPaths : IPaths
{
    private const string SignedOut = "You are signed out, so the photograph was not kept. Sign in again, then send it again; what you typed is kept on this device.";
    private const string TooLarge = "The file is larger than 40 MB. Save the picture smaller, or as a JPEG, and choose it again.";

    /// <summary>What the browser's script reads.</summary>
    private sealed record Answer(int Id, string Hash, int WidthPx, int HeightPx);

    private sealed record Refusal(string Words);

    public void Map(IEndpointRouteBuilder app)
    {
        app.MapPost("/photos", ReceiveAsync);
        app.MapGet("/photos/{hash}/{size}", Serve);
        app.MapGet("/k/{entry}", (string entry) => Results.LocalRedirect("/keepsakes/" + Uri.EscapeDataString(entry)));
    }

    private static async Task<IResult> ReceiveAsync(HttpContext http, IAntiforgery antiforgery, PhotoStore store, KeepsakeBook book, Who who)
    {
        try
        {
            await antiforgery.ValidateRequestAsync(http);
            return await TakeAsync(http, store, book, await who.NameAsync());
        }
        catch (AntiforgeryValidationException)
        {
            return Refuse(SignedOut, StatusCodes.Status400BadRequest);
        }
        catch (SignedOutException)
        {
            return Refuse(SignedOut, StatusCodes.Status401Unauthorized);
        }
    }

    private static async Task<IResult> TakeAsync(HttpContext http, PhotoStore store, KeepsakeBook book, string by)
    {
        if (http.Request.ContentLength > PhotoStore.LargestBytes)
        {
            return Refuse(TooLarge, StatusCodes.Status413PayloadTooLarge);
        }

        var outcome = await store.AddAsync(http.Request.Body, Uri.UnescapeDataString(http.Request.Headers["X-File-Name"].ToString()), http.RequestAborted);
        if (outcome.Photo is not { } photo)
        {
            return Refuse(outcome.Refusal!, StatusCodes.Status422UnprocessableEntity);
        }

        var saved = await book.ReceivePhotoAsync(photo, by);
        return saved.Ok
            ? Results.Json(new Answer(saved.Id, photo.Hash, photo.WidthPx, photo.HeightPx))
            : Refuse(saved.Words, StatusCodes.Status503ServiceUnavailable);
    }

    private static IResult Refuse(string words, int status) => Results.Json(new Refusal(words), statusCode: status);

    private static IResult Serve(string hash, string size, HttpContext http, PhotoStore store)
    {
        if (!Enum.TryParse<PhotoSize>(size, ignoreCase: true, out var wanted) || store.Open(hash, wanted) is not { } file)
        {
            return Results.NotFound();
        }

        // named by its content, so it never changes; private, so that no shared cache keeps a family's photograph
        http.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        http.Response.Headers.XContentTypeOptions = "nosniff";
        return Results.Stream(file.Content, file.ContentType);
    }
}
