using System.Security.Claims;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.Components.Authorization;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>ASP.NET Core Identity with cookies, lockout and roles; nothing is reachable unsigned unless it says so.</summary>
public static class SignInSetup
{
    public static IServiceCollection AddSignIn(this IServiceCollection services)
    {
        services.AddCascadingAuthenticationState();
        services.AddScoped<AuthenticationStateProvider, StillAllowed>();
        services.AddScoped<Who>();
        services.AddSingleton<FirstStart>();
        services.AddAuthentication(IdentityConstants.ApplicationScheme).AddIdentityCookies();
        services.AddIdentityCore<StudioUser>(o =>
            {
                o.User.RequireUniqueEmail = true;
                o.Password.RequiredLength = 10;
                o.Password.RequireNonAlphanumeric = false;
                o.Password.RequireUppercase = false;
                o.Password.RequireDigit = false;
                o.Lockout.MaxFailedAccessAttempts = 5;
                o.Lockout.DefaultLockoutTimeSpan = TimeSpan.FromMinutes(10);
            })
            .AddRoles<IdentityRole>()
            .AddEntityFrameworkStores<StudioDb>()
            .AddSignInManager()
            .AddClaimsPrincipalFactory<NamedPrincipal>()
            .AddErrorDescriber<PlainIdentityWords>()
            .AddDefaultTokenProviders();
        services.ConfigureApplicationCookie(o =>
        {
            o.LoginPath = "/sign-in";
            o.AccessDeniedPath = "/not-yours";
            o.Cookie.Name = "studio";
            o.Cookie.HttpOnly = true;
            o.Cookie.SameSite = SameSiteMode.Lax;
            // plain http on loopback must work; behind TLS the cookie is marked secure
            o.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
            o.ExpireTimeSpan = TimeSpan.FromDays(14);
            o.SlidingExpiration = true;
        });
        services.AddAuthorizationBuilder()
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAuthenticatedUser().Build())
            .AddPolicy(Roles.Owner, p => p.RequireRole(Roles.Owner))
            .AddPolicy("making", p => p.RequireRole(Roles.Owner, Roles.Maker));
        services.Configure<SecurityStampValidatorOptions>(o => o.ValidationInterval = TimeSpan.FromMinutes(1));
        return services;
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
