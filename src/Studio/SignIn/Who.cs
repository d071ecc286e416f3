using System.Security.Claims;
using Microsoft.AspNetCore.Components.Authorization;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>Who is at work in this page, request or job.</summary>
/// <param name="UserId">Empty for work that no signed-in person began.</param>
/// <param name="Name">As it stands in the history.</param>
/// <param name="SessionId">The sign-in it goes by; empty as above.</param>
/// <param name="Role">One of <see cref="Roles"/>.</param>
public sealed record Present(string UserId, string Name, string SessionId, string Role);

/// <summary>Whether a sign-in still stands.</summary>
public interface IStanding
{
    /// <summary>True when the person's sign-in stands; known for three seconds unless asked <paramref name="afresh"/>.</summary>
    Task<bool> StandsAsync(ClaimsPrincipal person, bool afresh = false);
}

/// <summary>
/// The person at this browser, by the name they are known by in the studio. One for each open page, request or job; it is asked again at
/// every act, because a page stays open for hours and its person may have been signed out meanwhile.
/// </summary>
public sealed class Who(AuthenticationStateProvider authentication, IStanding standing) : IWriter
{
    private ClaimsPrincipal? requested;
    private Present? own;

    /// <summary>Told when somebody is asked for and nobody may be here any more.</summary>
    public event Action? Ended;

    /// <summary>The name of whoever may write here.</summary>
    /// <exception cref="SignedOutException">Nobody is signed in here, or their sign-in has ended.</exception>
    public async Task<string> NameAsync() => (await HereAsync()).Name;

    /// <summary>The name of the person behind a request that was let in just now.</summary>
    /// <exception cref="SignedOutException">Nobody is signed in.</exception>
    public static string Name(ClaimsPrincipal user) => user.FindFirstValue("name") ?? user.Identity?.Name ?? throw new SignedOutException();

    /// <summary>True when whoever is here is an owner.</summary>
    /// <exception cref="SignedOutException">As <see cref="NameAsync"/>.</exception>
    public async Task<bool> IsOwnerAsync() => (await HereAsync()).Role is Roles.Owner;

    /// <summary>Whoever is here and may still be.</summary>
    /// <exception cref="SignedOutException">As <see cref="NameAsync"/>.</exception>
    public async Task<Present> HereAsync()
    {
        if (own is not null)
        {
            return own;
        }

        var person = requested ?? await AtPageAsync();
        if (person is not { Identity.IsAuthenticated: true } || !await standing.StandsAsync(person))
        {
            Ended?.Invoke();
            throw new SignedOutException();
        }

        return Of(person);
    }

    /// <summary>Lets what no signed-in person began work under a name of its own. A page never calls it; a test lists who does.</summary>
    public void ActAs(string name) => own = new("", name, "", Roles.Owner);

    /// <summary>Told once for each request who brought it.</summary>
    internal void Hear(ClaimsPrincipal person) => requested = person;

    /// <summary>Lets a piece of work in a scope of its own go on in the name of whoever began it and was asked already.</summary>
    internal void GoOnAs(Present present) => own = present;

    private static Present Of(ClaimsPrincipal person) => new(
        person.FindFirstValue(ClaimTypes.NameIdentifier) ?? "",
        Name(person),
        person.FindFirstValue(Sessions.Claim) ?? "",
        Roles.All.Select(r => r.Key).FirstOrDefault(person.IsInRole) ?? "");

    private async Task<ClaimsPrincipal?> AtPageAsync()
    {
        try
        {
            return (await authentication.GetAuthenticationStateAsync()).User;
        }
        catch (InvalidOperationException)
        {
            // so the library answers where there is neither a request nor an open page
            return null;
        }
    }
}
