namespace Studio.Shell;

/// <summary>Serves the papers' own fonts to the browser, so that screen and paper speak with one face and nothing is fetched from elsewhere.</summary>
internal sealed class FontPaths : IPaths
{
    public void Map(IEndpointRouteBuilder app) =>
        app.MapGet("/fonts/{name}.ttf", (string name, HttpContext http) =>
        {
            var stream = typeof(FontPaths).Assembly.GetManifestResourceStream(name + ".ttf");
            if (stream is null)
            {
                return Results.NotFound();
            }

            http.Response.Headers.CacheControl = "public, max-age=31536000, immutable";
            return Results.Stream(stream, "font/ttf");
        }).AllowAnonymous();
}
