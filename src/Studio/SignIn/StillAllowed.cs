using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>
/// Looks every minute whether the person at an open page may still be there: a page without a new request would otherwise
/// go on working for hours after its person was retired or given another role.
/// </summary>
internal sealed class StillAllowed(ILoggerFactory logs, IServiceScopeFactory scopes, IOptions<IdentityOptions> options) : RevalidatingServerAuthenticationStateProvider(logs)
{
    protected override TimeSpan RevalidationInterval => TimeSpan.FromMinutes(1);

    protected override async Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken)
    {
        try
        {
            return await MayStayAsync(authenticationState);
        }
        catch (ObjectDisposedException)
        {
            // the host stops while a page is still open: nobody is there to be shown anything
            return false;
        }
    }

    private async Task<bool> MayStayAsync(AuthenticationState authenticationState)
    {
        await using var scope = scopes.CreateAsyncScope();
        var users = scope.ServiceProvider.GetRequiredService<UserManager<StudioUser>>();
        var user = await users.GetUserAsync(authenticationState.User);
        return user is { Retired: false }
            && string.Equals(authenticationState.User.FindFirstValue(options.Value.ClaimsIdentity.SecurityStampClaimType), await users.GetSecurityStampAsync(user), StringComparison.Ordinal);
    }
}
