using FluentValidation;
using Studio.Data;

namespace Studio.SignIn;

/// <summary>Somebody who is to sign in.</summary>
public sealed class PersonForm
{
    public string Name { get; set; } = "";

    public string Email { get; set; } = "";

    public string Role { get; set; } = Roles.Maker;

    /// <summary>The first password; they are told it by mouth.</summary>
    public string Password { get; set; } = "";
}

/// <summary>Checks a new person.</summary>
public sealed class PersonValidator : AbstractValidator<PersonForm>
{
    /// <summary>The shortest password; the same as sign-in asks for.</summary>
    public const int ShortestPassword = 10;

    public const int LongestPassword = 200;

    public PersonValidator()
    {
        RuleFor(p => p.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("What are they called? The name stands beside everything they do.").Words(100);
        RuleFor(p => p.Email).Must(e => !string.IsNullOrWhiteSpace(e)).WithMessage("Type the e-mail they will sign in with.").Email();
        RuleFor(p => p.Role).Must(r => Roles.All.Any(known => known.Key == r)).WithMessage("Choose what they may do.");
        RuleFor(p => p.Password).Must(p => Wrong(p) is null).WithMessage(p => Wrong(p.Password));
    }

    /// <summary>What is wrong with a password; null when it will do.</summary>
    public static string? Wrong(string password) => (password ?? "").Length switch
    {
        < ShortestPassword => "A password needs ten characters or more. Three or four words in a row are easy to say and hard to guess.",
        > LongestPassword => "A password may have at most 200 characters.",
        _ => null,
    };
}
