using Microsoft.AspNetCore.Identity;

namespace Studio.SignIn;

/// <summary>What the sign-in library says, in the studio's own words.</summary>
internal sealed class PlainIdentityWords : IdentityErrorDescriber
{
    public override IdentityError DuplicateEmail(string email) => Say(nameof(DuplicateEmail), $"Somebody signs in with {email} already. Bring them back if they are retired, or use another e-mail.");

    // the user name is the e-mail, so the sentence above says it already
    public override IdentityError DuplicateUserName(string userName) => Say(nameof(DuplicateUserName), "Each e-mail belongs to one person.");

    public override IdentityError InvalidEmail(string? email) => Say(nameof(InvalidEmail), "This does not look like an e-mail address. It needs a name, an @ and a domain.");

    public override IdentityError InvalidUserName(string? userName) => Say(nameof(InvalidUserName), "The e-mail has a letter that cannot be used to sign in. Use plain letters, digits and . _ - + @.");

    public override IdentityError ConcurrencyFailure() => Say(nameof(ConcurrencyFailure), Data.Saved.SomeoneElse);

    private static IdentityError Say(string code, string words) => new() { Code = code, Description = words };
}
