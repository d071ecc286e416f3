using Studio.Shell;
using Studio.SignIn;

namespace Studio.Office;

/// <summary>Signing out: the sign-in ends, wherever its cookie or its pages are open.</summary>
internal sealed class SignInPaths : IPaths
{
    public void Map(IEndpointRouteBuilder app) =>
        app.MapPost("/sign-out", async (DoorBook door, HttpContext http, Microsoft.AspNetCore.Antiforgery.IAntiforgery antiforgery) =>
        {
            await antiforgery.ValidateRequestAsync(http);
            await door.LeaveAsync(http);
            return Results.LocalRedirect("/sign-in");
        });
}
