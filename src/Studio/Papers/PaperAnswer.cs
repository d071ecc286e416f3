namespace Studio.Papers;

/// <summary>How a paper is served: opened in the browser, and kept in no cache.</summary>
internal static class PaperAnswer
{
    /// <summary>The paper, or that there is none.</summary>
    public static IResult Of(HttpContext http, PaperFile? paper)
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
