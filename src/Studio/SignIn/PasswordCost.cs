using System.Buffers.Binary;
using System.Security.Cryptography;
using Microsoft.AspNetCore.Identity;
using Microsoft.Extensions.Options;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>What checking a password costs, and that it costs the same for everybody: also for nobody.</summary>
public sealed class PasswordCost(IPasswordHasher<StudioUser> hasher, IOptions<PasswordHasherOptions> options)
{
    /// <summary>
    /// Rounds of PBKDF2 with HMAC-SHA-512, Identity's format 3. OWASP's Password Storage Cheat Sheet asked for 210 000 in December 2022
    /// (its pull request 1055) and for 220 000 since, the latter from memory.
    /// </summary>
    public const int Rounds = 220_000;

    private readonly Lazy<string> nobodys = new(() => hasher.HashPassword(new StudioUser(), RandomNumberGenerator.GetHexString(32)));

    /// <summary>Whether the password is the person's; always one whole check long. Retired people and nobody are never right.</summary>
    /// <returns><see cref="PasswordVerificationResult.SuccessRehashNeeded"/> where it was kept with fewer rounds than now.</returns>
    public PasswordVerificationResult Check(StudioUser? user, string password)
    {
        var nobody = nobodys.Value;
        var hash = user?.PasswordHash ?? nobody;
        var answer = hasher.VerifyHashedPassword(user ?? new StudioUser(), hash, password);
        if (answer is PasswordVerificationResult.Failed && options.Value.IterationCount - RoundsOf(hash) is > 0 and var missing)
        {
            // a hash from before the rounds were raised must not be told by a quicker no
            Rfc2898DeriveBytes.Pbkdf2(password, new byte[16], missing, HashAlgorithmName.SHA512, 32);
        }

        return user is { Retired: false, PasswordHash: not null } ? answer : PasswordVerificationResult.Failed;
    }

    /// <summary>One whole check that nothing can pass.</summary>
    public void Spend(string password) => Check(null, password);

    // format 3: a byte 1, the function, the rounds, each four bytes, big-endian (ASP.NET Core, PasswordHasher.cs)
    private static int RoundsOf(string hash)
    {
        var bytes = Convert.FromBase64String(hash);
        return bytes is [1, ..] && bytes.Length > 9 ? (int)BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(5)) : 0;
    }
}
