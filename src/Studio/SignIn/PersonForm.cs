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
    public PersonValidator()
    {
        RuleFor(p => p.Name).Must(n => !string.IsNullOrWhiteSpace(n)).WithMessage("What are they called? The name stands beside everything they do.").Words(100);
        RuleFor(p => p.Email).Must(e => !string.IsNullOrWhiteSpace(e)).WithMessage("Type the e-mail they will sign in with.").Email();
        RuleFor(p => p.Role).Must(r => Roles.All.Any(known => known.Key == r)).WithMessage("Choose what they may do.");
        RuleFor(p => p.Password).Must((p, typed) => Wrong(p) is null).WithMessage(Wrong);
    }

    // the studio's name is asked where the password is set
    private static string? Wrong(PersonForm form) => PasswordRules.Wrong(form.Password, new("", form.Name, form.Email));
}
