using Studio.Data;
using Studio.Shell;

namespace Studio.Commands;

/// <summary>Serves the studio to browsers.</summary>
internal static class ServeCommand
{
    private const string DefaultUrl = "http://127.0.0.1:5190";

    public static async Task<int> RunAsync(string[] args, bool demo, CancellationToken cancel)
    {
        var builder = WebApplication.CreateBuilder(new WebApplicationOptions { Args = args, ContentRootPath = PublishedRoot(args) });
        builder.Configuration.AddCommandLine(args, new Dictionary<string, string>(StringComparer.Ordinal) { ["--data"] = "DataDir" });
        if (string.IsNullOrEmpty(builder.Configuration["urls"]) && string.IsNullOrEmpty(builder.Configuration["http_ports"]))
        {
            builder.WebHost.UseUrls(DefaultUrl);
        }

        if (Proxies.Wrong(builder.Configuration) is { } wrong)
        {
            await Console.Error.WriteLineAsync(wrong);
            return 1;
        }

        builder.AddStudio();
        await using var app = builder.Build();
        var opened = await DataOpening.OpenAsync(app.Services, app.Configuration);
        if (!opened.Ok)
        {
            await Console.Error.WriteLineAsync(opened.Words);
            return 1;
        }

        if (demo)
        {
            var loaded = await app.Services.GetRequiredService<IDemo>().LoadAsync();
            if (!loaded.Ok)
            {
                await Console.Error.WriteLineAsync(loaded.Words);
                return 1;
            }
        }

        app.UseStudio();
        app.Lifetime.ApplicationStarted.Register(() => Welcome.Print(app));
        try
        {
            await app.RunAsync(cancel);
            return 0;
        }
        catch (IOException e) when (e.InnerException is Microsoft.AspNetCore.Connections.AddressInUseException)
        {
            await Console.Error.WriteLineAsync($"{string.Join(", ", app.Urls)} is in use already: perhaps the studio is open in another window. Close it, or choose another port: --urls http://127.0.0.1:5191");
            return 1;
        }
    }

    // a published studio has its pages beside the program; a studio run from source has them in the project folder
    private static string? PublishedRoot(string[] args) =>
        !args.Any(a => a.StartsWith("--contentRoot", StringComparison.OrdinalIgnoreCase)) && Directory.Exists(Path.Combine(AppContext.BaseDirectory, "wwwroot"))
            ? AppContext.BaseDirectory
            : null;
}
