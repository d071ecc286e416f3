using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Components.Server;

namespace Studio.SignIn;

/// <summary>
/// Looks every half minute whether the person at an open page may still be there: a page without a new request would otherwise
/// go on showing for hours after its person signed out elsewhere, was retired or was given another role. Writing is asked at each act.
/// </summary>
internal sealed class StillAllowed(ILoggerFactory logs, Sessions sessions, IConfiguration configuration) : RevalidatingServerAuthenticationStateProvider(logs)
{
    /// <summary>How often it looks unless <c>SignIn:LookEverySeconds</c> says otherwise [s].</summary>
    internal const int EverySeconds = 30;

    private const int LongestSeconds = 60;

    // a longer one would break the promise that a page stops within a minute
    protected override TimeSpan RevalidationInterval => TimeSpan.FromSeconds(Math.Clamp(configuration.GetValue("SignIn:LookEverySeconds", EverySeconds), 1, LongestSeconds));

    /// <summary>What the look asks.</summary>
    internal Task<bool> LookAsync(AuthenticationState state) => ValidateAuthenticationStateAsync(state, CancellationToken.None);

    protected override async Task<bool> ValidateAuthenticationStateAsync(AuthenticationState authenticationState, CancellationToken cancellationToken)
    {
        try
        {
            if (!await sessions.StandsAsync(authenticationState.User, afresh: true))
            {
                return false;
            }

            await sessions.SeeAsync(authenticationState.User);
            return true;
        }
        catch (ObjectDisposedException)
        {
            // the host stops while a page is still open: nothing can be read or written any more, and a page drawn anew for
            // somebody signed out would ask a studio that is gone for its parts
            return true;
        }
    }
}
