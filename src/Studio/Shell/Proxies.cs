using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using IPNetwork = System.Net.IPNetwork;

namespace Studio.Shell;

/// <summary>Which proxies are believed when they say where a request came from and whether it came over TLS: the setting <c>KnownProxies</c>.</summary>
internal static class Proxies
{
    private const string Nobody = "none";

    private static readonly char[] Between = [',', ';', ' '];

    /// <summary>What is wrong with the setting, in a sentence; null when it can be used.</summary>
    public static string? Wrong(IConfiguration configuration) => Named(configuration).FirstOrDefault(n => Read(n) is null) is { } name
        ? $"KnownProxies names '{name}', which is neither an address nor a network. Write addresses such as 192.0.2.7 or networks such as 172.16.0.0/12, with commas between; 'none' believes nobody."
        : null;

    /// <summary>Believes this machine's own addresses unless the setting says otherwise, and nobody else's.</summary>
    public static void AddKnownProxies(this IServiceCollection services, IConfiguration configuration) =>
        // after everybody else has set it: a switch of the framework's would believe the whole world
        services.PostConfigure<ForwardedHeadersOptions>(o =>
        {
            var known = Named(configuration).Select(Read).OfType<IPNetwork>().ToList();
            // to the framework an empty list is everybody
            o.ForwardedHeaders = known.Count == 0 ? ForwardedHeaders.None : ForwardedHeaders.XForwardedProto | ForwardedHeaders.XForwardedFor;
            o.KnownProxies.Clear();
            o.KnownIPNetworks.Clear();
            known.ForEach(o.KnownIPNetworks.Add);
        });

    private static IEnumerable<string> Named(IConfiguration configuration) => configuration["KnownProxies"] is { } set && set.Trim().Length > 0
        ? set.Split(Between, StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Where(n => n is not Nobody)
        : ["127.0.0.0/8", "::1/128"];

    private static IPNetwork? Read(string name) =>
        IPAddress.TryParse(name, out var one) ? new IPNetwork(one, one.GetAddressBytes().Length * 8)
        : IPNetwork.TryParse(name, out var many) ? many
        : null;
}
