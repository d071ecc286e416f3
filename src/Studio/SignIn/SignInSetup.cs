using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Options;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>ASP.NET Core Identity with cookies that name a sign-in, and roles; nothing is reachable unsigned unless it says so.</summary>
public static class SignInSetup
{
    /// <summary>The sign-in cookie; over https it carries the prefix that <c>Shell.HostCookies</c> gives.</summary>
    public const string Cookie = "studio";

    public static IServiceCollection AddSignIn(this IServiceCollection services)
    {
        services.AddCascadingAuthenticationState();
        services.AddScoped<AuthenticationStateProvider, StillAllowed>();
        services.AddSingleton<Sessions>().AddSingleton<IStanding>(s => s.GetRequiredService<Sessions>());
        services.AddScoped<Who>().AddScoped<IWriter>(s => s.GetRequiredService<Who>());
        services.AddSingleton<FirstStart>().AddSingleton<Tries>().AddSingleton<AccessLog>();
        // one for the whole studio: nobody's password made anew for each request would tell who has a sign-in here
        services.AddSingleton(s => new PasswordCost(new PasswordHasher<StudioUser>(s.GetRequiredService<IOptions<PasswordHasherOptions>>()), s.GetRequiredService<IOptions<PasswordHasherOptions>>()));
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddIdentityCore<StudioUser>(o =>
            {
                o.User.RequireUniqueEmail = true;
                // a lockout would let any stranger shut the maker out; see Tries
                o.Lockout.AllowedForNewUsers = false;
            })
            .AddRoles<IdentityRole>()
            .AddEntityFrameworkStores<StudioDb>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<NamedPrincipal>()
            .AddErrorDescriber<PlainIdentityWords>()
            .AddDefaultTokenProviders();
        services.RemoveAll<IPasswordValidator<StudioUser>>().AddScoped<IPasswordValidator<StudioUser>, StudioPasswords>();
        services.Configure<PasswordHasherOptions>(o => o.IterationCount = PasswordCost.Rounds);
        services.ConfigureApplicationCookie(SetCookie);
        services.AddAuthorizationBuilder()
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build())
            .AddPolicy(Roles.Owner, p => p.RequireRole(Roles.Owner))
            .AddPolicy(Roles.Making, p => p.RequireRole(Roles.Owner, Roles.Maker));
        return services;
    }

    private static void SetCookie(CookieAuthenticationOptions o)
    {
        o.LoginPath = "/sign-in";
        o.AccessDeniedPath = "/not-yours";
        o.Cookie.Name = Cookie;
        o.Cookie.HttpOnly = true;
        o.Cookie.SameSite = SameSiteMode.Lax;
        // plain http on loopback must work; behind TLS the cookie is marked secure
        o.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        // what a cookie is worth stands in the database; it need only live as long as the longest sign-in
        o.ExpireTimeSpan = TimeSpan.FromDays(Sessions.LongestDays);
        o.SlidingExpiration = false;
        o.Events.OnValidatePrincipal = LookAsync;
        var toldNotYours = o.Events.OnRedirectToAccessDenied;
        o.Events.OnRedirectToAccessDenied = async context =>
        {
            var route = (context.HttpContext.GetEndpoint() as RouteEndpoint)?.RoutePattern.RawText ?? "a page";
            await context.HttpContext.RequestServices.GetRequiredService<AccessBook>()
                .RefusedAsync(context.HttpContext.User.FindFirstValue(ClaimTypes.NameIdentifier) ?? "", route, Network.Shortened(context.HttpContext.Connection.RemoteIpAddress));
            await toldNotYours(context);
        };
    }

    // at every request: an ended sign-in is over also for whoever copied its cookie
    private static async Task LookAsync(CookieValidatePrincipalContext context)
    {
        var services = context.HttpContext.RequestServices;
        var sessions = services.GetRequiredService<Sessions>();
        if (context.Principal is { } person && await sessions.StandsAsync(person))
        {
            await sessions.SeeAsync(person);
            return;
        }

        if (context.Principal is { } gone && sessions.IsFirstRefusal(gone))
        {
            await services.GetRequiredService<AccessBook>().StaleAsync(gone.FindFirstValue(ClaimTypes.NameIdentifier) ?? "", Network.Shortened(context.HttpContext.Connection.RemoteIpAddress));
        }

        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(IdentityConstants.ApplicationScheme);
    }

    /// <summary>Puts the name a person is known by into the cookie, so that no page asks the database for it.</summary>
    private sealed class NamedPrincipal(UserManager<StudioUser> users, RoleManager<IdentityRole> roles, IOptions<IdentityOptions> options)
        : UserClaimsPrincipalFactory<StudioUser, IdentityRole>(users, roles, options)
    {
        protected override async Task<ClaimsIdentity> GenerateClaimsAsync(StudioUser user)
        {
            var identity = await base.GenerateClaimsAsync(user);
            identity.AddClaim(new Claim("name", user.DisplayName));
            return identity;
        }
    }
}
