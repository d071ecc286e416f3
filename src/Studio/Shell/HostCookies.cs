using Microsoft.Extensions.Primitives;
using Microsoft.Net.Http.Headers;

namespace Studio.Shell;

/// <summary>
/// Over https the studio's cookies are called <c>__Host-…</c>: a browser keeps such a one only from this very host, secure, for every path, so
/// that neither a neighbouring name nor an unprotected address can plant one (RFC 6265bis, 4.1.3.2). Plain http on this machine cannot have
/// that and keeps the plain name; which of the two a request gets is decided here alone, for every cookie of ours.
/// </summary>
internal static class HostCookies
{
    /// <summary>The antiforgery cookie.</summary>
    public const string Form = "studio-form";

    /// <summary>What browsers tie to the host.</summary>
    public const string Prefix = "__Host-";

    private const string Ours = "studio";

    /// <summary>Renames on the way in and on the way out; it comes before whatever reads or sets a cookie.</summary>
    public static void UseHostCookies(this IApplicationBuilder app) => app.Use((http, next) =>
    {
        if (http.Request.IsHttps)
        {
            http.Request.Headers.Cookie = In(http.Request.Headers.Cookie);
            http.Response.OnStarting(() =>
            {
                http.Response.Headers.SetCookie = new StringValues([.. http.Response.Headers.SetCookie.Select(Out)]);
                return Task.CompletedTask;
            });
        }

        return next(http);
    });

    // a plain name over https was planted, or is left over from before: it counts for nothing
    private static StringValues In(StringValues header) =>
        string.Join("; ", header.SelectMany(h => (h ?? "").Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            .Where(c => !IsOurs(c)).Select(c => c.StartsWith(Prefix, StringComparison.Ordinal) && IsOurs(c[Prefix.Length..]) ? c[Prefix.Length..] : c)) is { Length: > 0 } kept ? kept : StringValues.Empty;

    private static string? Out(string? cookie)
    {
        if (cookie is null || !IsOurs(cookie) || !SetCookieHeaderValue.TryParse(cookie, out var set))
        {
            return cookie;
        }

        (set.Name, set.Secure, set.Path, set.Domain) = (Prefix + set.Name, true, "/", default);
        return set.ToString();
    }

    private static bool IsOurs(string cookie) => cookie.StartsWith(Ours, StringComparison.Ordinal);
}
