using System.Net;
using System.Net.Sockets;

namespace Studio.SignIn;

/// <summary>Where a request came from, no more exactly than is needed.</summary>
public static class Network
{
    /// <summary>The network an address lies in, for people and for keeping: IPv4 to /24, IPv6 to /48; empty for none.</summary>
    public static string Shortened(IPAddress? address) => Cut(address, 24, 48);

    /// <summary>What counts as one place while somebody tries passwords, in memory only: an IPv4 address, an IPv6 /64, which is one household's.</summary>
    public static string Exact(IPAddress? address) => Cut(address, 32, 64);

    private static string Cut(IPAddress? address, int bits4, int bits6)
    {
        if (address is null)
        {
            return "";
        }

        var plain = address.IsIPv4MappedToIPv6 ? address.MapToIPv4() : address;
        var bits = plain.AddressFamily is AddressFamily.InterNetwork ? bits4 : bits6;
        var bytes = plain.GetAddressBytes();
        for (var i = 0; i < bytes.Length; i++)
        {
            bytes[i] &= (byte)(0xFF << Math.Clamp(((i + 1) * 8) - bits, 0, 8));
        }

        return FormattableString.Invariant($"{new IPAddress(bytes)}/{bits}");
    }
}
