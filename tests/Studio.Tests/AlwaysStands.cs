using System.Security.Claims;
using Studio.SignIn;

namespace Studio.Tests;

/// <summary>For a page that is tested alone: whoever the test signs in stays signed in.</summary>
public sealed class AlwaysStands : IStanding
{
    public Task<bool> StandsAsync(ClaimsPrincipal person, bool afresh = false) => Task.FromResult(true);
}
