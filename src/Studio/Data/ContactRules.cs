using FluentValidation;

namespace Studio.Data;

/// <summary>What a name, an e-mail address and a telephone number may look like; shared by every form that asks for them.</summary>
public static class ContactRules
{
    // 254: the longest address that mail can carry (RFC 5321, from memory)
    private const int LongestEmail = 254;
    private const int LongestPhone = 40;

    public static IRuleBuilderOptions<T, string> Email<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(e => string.IsNullOrWhiteSpace(e) || LooksLikeEmail(e.Trim())).WithMessage("This does not look like an e-mail address. It needs a name, an @ and a domain, such as anna@example.org.");

    public static IRuleBuilderOptions<T, string> Phone<T>(this IRuleBuilder<T, string> rule) =>
        rule.Must(p => string.IsNullOrWhiteSpace(p) || LooksLikePhone(p.Trim())).WithMessage("A telephone number has at least four digits, and otherwise only + ( ) / . - and spaces. Put other words into the notes.");

    /// <summary>At most so many characters, and none that cannot be printed.</summary>
    public static IRuleBuilderOptions<T, string> Words<T>(this IRuleBuilder<T, string> rule, int most) =>
        rule.Must(w => w is null || w.Length <= most).WithMessage(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"This is longer than {most} characters. Shorten it, or put the rest into the notes."))
            .Must(w => w is null || !w.Any(c => char.IsControl(c) && c is not ('\n' or '\r' or '\t'))).WithMessage("There is a character here that cannot be printed. Type the words again instead of pasting them.");

    private static bool LooksLikeEmail(string email)
    {
        var at = email.IndexOf('@', StringComparison.Ordinal);
        return email.Length <= LongestEmail && at > 0 && at == email.LastIndexOf('@')
            && email.LastIndexOf('.') is var dot && dot > at + 1 && dot < email.Length - 1
            && !email.Any(c => char.IsWhiteSpace(c) || char.IsControl(c));
    }

    private static bool LooksLikePhone(string phone) =>
        phone.Length <= LongestPhone && phone.Count(char.IsAsciiDigit) >= 4 && phone.All(c => char.IsAsciiDigit(c) || "+()/.- \u00A0".Contains(c, StringComparison.Ordinal));
}
