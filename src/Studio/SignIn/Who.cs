using Microsoft.AspNetCore.Components.Authorization;

namespace Studio.SignIn;

/// <summary>The person at this browser, by the name they are known by in the studio.</summary>
public sealed class Who(AuthenticationStateProvider authentication)
{
    /// <summary>The display name; <c>studio</c> when nobody is signed in.</summary>
    public async Task<string> NameAsync()
    {
        var state = await authentication.GetAuthenticationStateAsync();
        return state.User.FindFirst("name")?.Value ?? state.User.Identity?.Name ?? "studio";
    }
}
