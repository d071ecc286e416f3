using System.Net;
using System.Security.Claims;

namespace Studio.SignIn;

/// <summary>Somebody at the door, as far as a request tells.</summary>
/// <param name="Address">Where from; null where the host cannot see it.</param>
/// <param name="Agent">What the browser says of itself.</param>
/// <param name="Before">The session this browser was signed in with; empty for none.</param>
public sealed record Visitor(IPAddress? Address, string Agent, string Before)
{
    private const int LongestAgent = 400;

    public static Visitor Of(HttpContext http) => new(
        http.Connection.RemoteIpAddress,
        http.Request.Headers.UserAgent.ToString() is { Length: > LongestAgent } agent ? agent[..LongestAgent] : http.Request.Headers.UserAgent.ToString(),
        http.User.FindFirstValue(Sessions.Claim) ?? "");
}
