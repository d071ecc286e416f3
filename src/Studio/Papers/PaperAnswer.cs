namespace Studio.Papers;

/// <summary>How papers and the files beside them are served: kept in no cache.</summary>
internal static class PaperAnswer
{
    private const string Pdf = "application/pdf";

    /// <summary>The paper, opened in the browser; or that there is none.</summary>
    public static IResult Of(HttpContext http, PaperFile? paper) => Of(http, paper?.Content, paper?.FileName, Pdf, "inline");

    /// <summary>A file, or that there is none.</summary>
    /// <param name="how"><c>inline</c> opens it, <c>attachment</c> saves it.</param>
    public static IResult Of(HttpContext http, byte[]? content, string? fileName, string type = Pdf, string how = "inline")
    {
        if (content is null)
        {
            return Results.NotFound();
        }

        http.Response.Headers.ContentDisposition = $"{how}; filename=\"{fileName}\"";
        http.Response.Headers.CacheControl = "private, no-store";
        return Results.Bytes(content, type);
    }
}
