using Microsoft.AspNetCore.Identity;
using Studio.Data;
using Studio.Shell;

namespace Studio.Office;

/// <summary>Signing out, and sending a first visitor to the first start.</summary>
internal sealed class SignInPaths : IPaths
{
    public void Map(IEndpointRouteBuilder app) =>
        app.MapPost("/sign-out", async (SignInManager<StudioUser> signIns, HttpContext http, Microsoft.AspNetCore.Antiforgery.IAntiforgery antiforgery) =>
        {
            await antiforgery.ValidateRequestAsync(http);
            await signIns.SignOutAsync();
            return Results.LocalRedirect("/sign-in");
        });
}
