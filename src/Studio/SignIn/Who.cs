using Microsoft.AspNetCore.Components.Authorization;

namespace Studio.SignIn;

/// <summary>The person at this browser, by the name they are known by in the studio.</summary>
public sealed class Who(AuthenticationStateProvider authentication)
{
    /// <summary>The display name of the person behind a request.</summary>
    /// <exception cref="InvalidOperationException">Nobody is signed in.</exception>
    public static string Name(System.Security.Claims.ClaimsPrincipal user)
    {
        ArgumentNullException.ThrowIfNull(user);
        return user.FindFirst("name")?.Value ?? user.Identity?.Name ?? throw new InvalidOperationException("Nobody is signed in, so nothing is written.");
    }

    /// <summary>True for the studio's owner.</summary>
    public async Task<bool> IsOwnerAsync() => (await authentication.GetAuthenticationStateAsync()).User.IsInRole(Roles.Owner);

    /// <summary>The display name; <c>studio</c> when nobody is signed in.</summary>
    public async Task<string> NameAsync()
    {
        var state = await authentication.GetAuthenticationStateAsync();
        return state.User.FindFirst("name")?.Value ?? state.User.Identity?.Name ?? "studio";
    }
}
