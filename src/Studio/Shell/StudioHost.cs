using System.Reflection;
using FluentValidation;
using Hangfire;
using Hangfire.AspNetCore;
using Hangfire.InMemory;
using Hangfire.PostgreSql;
using Hangfire.PostgreSql.Factories;
using Hangfire.Storage.SQLite;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.AspNetCore.DataProtection;
using MudBlazor;
using MudBlazor.Services;
using Studio.Data;
using Studio.Data.Files;
using Studio.SignIn;

namespace Studio.Shell;

/// <summary>The web host: services and the order of the middle pieces.</summary>
internal static class StudioHost
{
    private const string ContentSecurity =
        "default-src 'self'; script-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data: blob:; font-src 'self'; connect-src 'self'; " +
        "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public static void AddStudio(this WebApplicationBuilder builder)
    {
        builder.WebHost.UseStaticWebAssets();
        builder.WebHost.ConfigureKestrel(k => k.Limits.MaxRequestBodySize = 64L * 1024 * 1024);
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning).AddFilter("Hangfire", LogLevel.Warning).AddFilter("System.Net", LogLevel.Warning).AddFilter("Microsoft.AspNetCore.DataProtection", LogLevel.Error);
        var silence = new OpenPages.Silence();
        builder.Logging.AddFilter(OpenPages.Silence.Category, level => level >= LogLevel.Warning && !silence.Fallen);
        var services = builder.Services;
        services.AddSingleton(TimeProvider.System);
        services.AddStudioData(builder.Configuration);
        services.AddSingleton(_ => new PaperFolder(Path.Combine(DataSetup.Folder(builder.Configuration), "papers")));
        services.AddSingleton(_ => new PhotoStore(Path.Combine(DataSetup.Folder(builder.Configuration), "photos")));
        services.AddSignIn();
        services.AddKnownProxies(builder.Configuration);
        services.AddAntiforgery(o =>
        {
            o.Cookie.Name = HostCookies.Form;
            o.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        });
        services.AddHsts(o => o.MaxAge = TimeSpan.FromDays(365));
        services.AddDataProtection()
            .SetApplicationName("studio")
            .PersistKeysToFileSystem(Directory.CreateDirectory(Path.Combine(DataSetup.Folder(builder.Configuration), "keys")));
        services.AddScoped<IErrorBoundaryLogger, StumbleLog>();
        services.AddSingleton(silence).AddSingleton<OpenPages>().AddHostedService(p => p.GetRequiredService<OpenPages>()).AddScoped<CircuitHandler, OpenPages.Page>();
        services.AddRazorComponents().AddInteractiveServerComponents(o => o.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(10));
        services.AddSignalR(o => o.MaximumReceiveMessageSize = 1024 * 1024);
        services.AddMudServices(o =>
        {
            o.SnackbarConfiguration.PositionClass = Defaults.Classes.Position.BottomCenter;
            o.SnackbarConfiguration.VisibleStateDuration = 8000;
        });
        services.AddValidatorsFromAssemblyContaining<Program>(includeInternalTypes: true);
        services.AddHttpContextAccessor();
        services.AddResponseCompression(o => o.MimeTypes = ["text/css", "text/javascript", "application/javascript", "font/ttf", "image/svg+xml"]);
        AddByName(services);
        AddJobs(services, builder.Configuration);
    }

    public static void UseStudio(this WebApplication app)
    {
        // where from, over TLS or not, under which name: decided before anything else looks
        app.UseForwardedHeaders();
        app.UseKnownHosts();
        app.UseHsts();
        app.UseHostCookies();
        app.UseResponseCompression();
        app.UseExceptionHandler("/trouble", createScopeForErrors: true);
        app.UseStatusCodePagesWithReExecute("/not-found");
        app.Use((http, next) =>
        {
            var h = http.Response.Headers;
            h.ContentSecurityPolicy = ContentSecurity;
            h.XContentTypeOptions = "nosniff";
            h["Referrer-Policy"] = "same-origin";
            h["Permissions-Policy"] = "camera=(self), geolocation=(), microphone=()";
            return next();
        });
        app.UseAuthentication();
        app.UseAuthorization();
        app.Use((http, next) =>
        {
            // an endpoint writes in the name of whoever sent the request
            http.RequestServices.GetRequiredService<Who>().Hear(http.User);
            return next(http);
        });
        app.UseAntiforgery();
        app.MapStaticAssets().AllowAnonymous();
        foreach (var paths in app.Services.GetServices<IPaths>())
        {
            paths.Map(app);
        }

        app.MapRazorComponents<App>().AddInteractiveServerRenderMode();
        app.MapHangfireDashboard("/jobs", new DashboardOptions { Authorization = [], DashboardTitle = "The clock", AppPath = "/" }).RequireAuthorization(Roles.Owner);
        foreach (var job in app.Services.GetServices<IRecurring>())
        {
            job.Schedule(app.Services.GetRequiredService<IRecurringJobManager>());
        }
    }

    // every book, path group, seed and recurring job is found by what it is: a new feature edits no list
    internal static void AddByName(IServiceCollection services)
    {
        foreach (var type in Assembly.GetExecutingAssembly().GetTypes().Where(t => t is { IsClass: true, IsAbstract: false }))
        {
            if (type.Name.EndsWith("Book", StringComparison.Ordinal))
            {
                services.AddScoped(type);
            }

            if (type.IsAssignableTo(typeof(ILasting)))
            {
                services.AddSingleton(type);
            }

            // a job that runs for as long as the studio does
            if (type.IsAssignableTo(typeof(BackgroundService)))
            {
                services.AddSingleton(typeof(IHostedService), type);
            }

            foreach (var role in type.GetInterfaces().Where(i => i == typeof(IPaths) || i == typeof(ISeed) || i == typeof(IUpgrade) || i == typeof(IDemo) || i == typeof(IRecurring) || (i != typeof(IAsked) && i.IsAssignableTo(typeof(IAsked)))))
            {
                services.AddSingleton(role, type);
            }
        }
    }

    private static void AddJobs(IServiceCollection services, IConfiguration configuration)
    {
        // each studio keeps its own: Hangfire's are one to a process, and a studio that ended would take them from one beside it
        services.AddSingleton(s =>
        {
            s.GetRequiredService<IGlobalConfiguration>(); // says where its words go, and a storage asks for that as it is made
            return JobsIn(configuration);
        });
        services.AddSingleton<JobActivator>(s => new AspNetCoreJobActivator(s.GetRequiredService<IServiceScopeFactory>()));
        services.AddHangfire((s, h) => h.SetDataCompatibilityLevel(CompatibilityLevel.Version_180).UseSimpleAssemblyNameTypeSerializer().UseRecommendedSerializerSettings()
            .UseLogProvider(new JobWords(s.GetRequiredService<ILoggerFactory>())));
        services.AddHangfireServer(o =>
        {
            o.WorkerCount = 1;
            o.SchedulePollingInterval = TimeSpan.FromSeconds(5);
        });
    }

    private static JobStorage JobsIn(IConfiguration configuration)
    {
        if (configuration["Jobs:Storage"] is "InMemory")
        {
            return new InMemoryStorage(new InMemoryStorageOptions());
        }

        if (configuration["Database:Postgres"] is { Length: > 0 } postgres)
        {
            var options = new PostgreSqlStorageOptions();
            return new PostgreSqlStorage(new NpgsqlConnectionFactory(postgres, options), options);
        }

        // its own file: backups and migrations of the studio's records never meet the job tables
        return new SQLiteStorage(Path.Combine(DataSetup.Folder(configuration), "jobs.db"), new SQLiteStorageOptions
        {
            QueuePollInterval = TimeSpan.FromSeconds(2),
            InvisibilityTimeout = TimeSpan.FromMinutes(5),
        });
    }
}

/// <summary>Addresses that answer with something other than a page: a photograph, a paper.</summary>
internal interface IPaths
{
    void Map(IEndpointRouteBuilder app);
}

/// <summary>Something that is known for as long as the studio runs, and is one for everybody.</summary>
public interface ILasting;

/// <summary>A job that comes round by the clock.</summary>
internal interface IRecurring
{
    void Schedule(IRecurringJobManager jobs);
}
