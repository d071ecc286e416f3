using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Studio.Climate;

/// <summary>The secret a sensor shows: made of chance, shown once, kept only as its SHA-256.</summary>
internal static class SensorToken
{
    private const int Bytes = 32;

    /// <summary>A new token: 43 letters, digits, dashes and underscores.</summary>
    internal static string Make() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>What is kept of it. Looking up by this hash tells nobody how much of a guess was right.</summary>
    internal static string Hash(string token) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
