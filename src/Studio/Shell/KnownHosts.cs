using System.Net;
using Studio.Data;
using Studio.Settings;

namespace Studio.Shell;

/// <summary>
/// Under which names the studio answers. A page from elsewhere can have its own name lead to this machine; under that name nothing is
/// shown. <c>AllowedHosts</c> names them; unset, they are this machine's own and the address for phones in the settings.
/// </summary>
public sealed class KnownHosts : ILasting, IDisposable
{
    private static readonly string[] Loopback = ["localhost", "127.0.0.1", "::1"];

    private readonly IServiceScopeFactory scopes;
    private readonly IConfiguration configuration;
    private readonly IDisposable ear;
    private HashSet<string>? names;

    public KnownHosts(IServiceScopeFactory scopes, IConfiguration configuration, News news)
    {
        ArgumentNullException.ThrowIfNull(news);
        (this.scopes, this.configuration) = (scopes, configuration);
        ear = news.Listen(n => names = n.Topic is News.Settings ? null : names);
    }

    /// <summary>True when the owner of the machine named them: then the framework's own filter keeps to that list.</summary>
    public bool Named => !string.IsNullOrWhiteSpace(configuration["AllowedHosts"]);

    public void Dispose() => ear.Dispose();

    /// <summary>Whether a request under this name is answered.</summary>
    /// <param name="host">As the browser sent it, without the port.</param>
    /// <param name="here">The address of ours that it came in by; a browser that names it was led by nobody's name.</param>
    public async Task<bool> KnowsAsync(string host, IPAddress? here)
    {
        var plain = host.Trim('[', ']');
        return (IPAddress.TryParse(plain, out var address) && here is not null && address.Equals(here.IsIPv4MappedToIPv6 ? here.MapToIPv4() : here))
            || (names ?? await ReadAsync()).Contains(plain);
    }

    private async Task<HashSet<string>> ReadAsync()
    {
        await using var scope = scopes.CreateAsyncScope();
        var settings = await scope.ServiceProvider.GetRequiredService<SettingsBook>().ReadAsync();
        var machine = Dns.GetHostName();
        var listening = (configuration["urls"] ?? "").Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        // .local is how a home network calls a machine by its own name (multicast DNS, RFC 6762)
        return names = new(Loopback.Append(machine).Append(machine + ".local").Concat(listening.Append(settings.PublicUrl).Select(HostOf).OfType<string>()), StringComparer.OrdinalIgnoreCase);
    }

    private static string? HostOf(string address) => Uri.TryCreate(address, UriKind.Absolute, out var uri) && uri.Host is not "0.0.0.0" ? uri.Host.Trim('[', ']') : null;
}

/// <summary>The gate that asks <see cref="KnownHosts"/>.</summary>
internal static class HostGate
{
    private const string Sentence =
        "The studio does not answer under this name. Open it under the name of its computer or the address for phones in its settings, or add this name to AllowedHosts where the studio is started.";

    public static void UseKnownHosts(this IApplicationBuilder app) => app.Use(async (http, next) =>
    {
        var hosts = http.RequestServices.GetRequiredService<KnownHosts>();
        if (hosts.Named || await hosts.KnowsAsync(http.Request.Host.Host, http.Connection.LocalIpAddress))
        {
            await next(http);
            return;
        }

        http.Response.StatusCode = StatusCodes.Status400BadRequest;
        http.Response.ContentType = "text/plain; charset=utf-8";
        await http.Response.WriteAsync(Sentence);
    });
}
