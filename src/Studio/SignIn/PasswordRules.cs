using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Identity;
using Studio.Data;
using Studio.Settings;

namespace Studio.SignIn;

/// <summary>Whose password it is to be: what they and their studio are called must not be it.</summary>
public sealed record PasswordOf(string Studio, string Name, string Email);

/// <summary>
/// What a password may be: long, and none that is tried first. No classes of characters are asked for (OWASP ASVS 5.0, 6.2, from memory).
/// A password that is kept already stays good until it is changed.
/// </summary>
public static partial class PasswordRules
{
    /// <summary>The shortest [characters].</summary>
    public const int Shortest = 12;

    /// <summary>The longest [characters].</summary>
    public const int Longest = 128;

    private const string Advice = "Three or four words in a row that have nothing to do with each other are easy to say and hard to guess.";

    private static readonly string[] Rows = ["abcdefghijklmnopqrstuvwxyz", "01234567890", "qwertyuiop", "asdfghjkl", "zxcvbnm", "qwertzuiop", "azertyuiop", "qazwsxedcrfvtgbyhnujm", "1q2w3e4r5t6y7u8i9o0p"];

    private static readonly HashSet<string> Common = ReadCommon();

    /// <summary>What is wrong with a password; null when it will do.</summary>
    public static string? Wrong(string? password, PasswordOf? whose = null)
    {
        var typed = password ?? "";
        return typed.Length switch
        {
            < Shortest => $"A password needs twelve characters or more. {Advice}",
            > Longest => "A password may have at most 128 characters.",
            _ when IsRow(typed) || IsRepeated(typed) => $"This password follows the keys or repeats itself, and such are tried first. {Advice}",
            _ when IsCommon(typed) => $"This is one of the passwords that are tried first. {Advice}",
            _ when whose is not null && Names(whose).Contains(Stem(typed), StringComparer.Ordinal) => $"This password is what you or the studio are called, and that is tried first. {Advice}",
            _ => null,
        };
    }

    private static bool IsCommon(string typed)
    {
        var small = typed.ToLowerInvariant();
        return new[] { small, Plain(small), Stem(small), Unmasked(Core().Match(small).Value), Stem(Unmasked(small)) }.Any(Common.Contains);
    }

    // "Sunshine2026!!" is "sunshine" to whoever guesses
    private static string Stem(string typed) => Ends().Replace(Plain(typed), "");

    private static string Plain(string typed) => NoSigns().Replace(typed.ToLowerInvariant(), "");

    private static string Unmasked(string small) => string.Concat(small.Select(c => c switch { '0' => 'o', '1' or '!' => 'i', '3' => 'e', '4' or '@' => 'a', '5' or '$' => 's', '7' => 't', _ => c }));

    // made of one piece over and over, or of hardly any different characters
    private static bool IsRepeated(string typed)
    {
        var (small, plain) = (typed.ToLowerInvariant(), Plain(typed));
        return small.Distinct().Count() < 5 || Enumerable.Range(1, plain.Length / 2).Any(n => plain.Length % n == 0 && plain == string.Concat(Enumerable.Repeat(plain[..n], plain.Length / n)));
    }

    // nine of ten steps go to the neighbour on the keys or in the alphabet, either way
    private static bool IsRow(string typed)
    {
        var small = typed.ToLowerInvariant();
        var steps = Enumerable.Range(0, small.Length - 1).Count(i => Array.Exists(Rows, r => r.Contains(small[i..(i + 2)], StringComparison.Ordinal) || r.Contains($"{small[i + 1]}{small[i]}", StringComparison.Ordinal)));
        return steps * 10 >= (small.Length - 1) * 9;
    }

    private static IEnumerable<string> Names(PasswordOf whose) =>
        new[] { whose.Studio, whose.Name, whose.Email, whose.Email.Split('@')[0] }.Select(Stem).Where(n => n.Length > 0);

    private static HashSet<string> ReadCommon()
    {
        using var stream = Assembly.GetExecutingAssembly().GetManifestResourceStream("common-passwords.txt")
            ?? throw new InvalidOperationException("The list of common passwords is not part of this program.");
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Where(l => l[0] != '#').SelectMany(l => l.Split(' '))];
    }

    [GeneratedRegex(@"[^\p{L}\p{N}]+", RegexOptions.None, 1000)]
    private static partial Regex NoSigns();

    // from the first letter to the last
    [GeneratedRegex(@"\p{L}.*\p{L}", RegexOptions.None, 1000)]
    private static partial Regex Core();

    [GeneratedRegex(@"^\d+|\d+$", RegexOptions.None, 1000)]
    private static partial Regex Ends();
}

/// <summary>Puts the rules where every new password passes, whoever sets it: at the first start, under People, on one's own page, at the command line.</summary>
internal sealed class StudioPasswords(SettingsBook settings) : IPasswordValidator<StudioUser>
{
    public async Task<IdentityResult> ValidateAsync(UserManager<StudioUser> manager, StudioUser user, string? password) =>
        PasswordRules.Wrong(password, new((await settings.ReadAsync()).StudioName, user.DisplayName, user.Email ?? "")) is { } wrong
            ? IdentityResult.Failed(new IdentityError { Code = nameof(PasswordRules), Description = wrong })
            : IdentityResult.Success;
}
