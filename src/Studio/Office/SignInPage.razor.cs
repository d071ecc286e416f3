using Studio.SignIn;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Identity;
using Studio.Data;
using Studio.Settings;

namespace Studio.Office;

/// <summary>The only page, with the first start, that is open to anybody.</summary>
public partial class SignInPage
{
    private string wrong = "";
    private StudioSettings studio = new();

    public sealed class Form
    {
        public string Email { get; set; } = "";

        public string Password { get; set; } = "";

        public bool Stay { get; set; }
    }

    [SupplyParameterFromForm(FormName = "sign-in")]
    private Form Input { get; set; } = default!;

    [SupplyParameterFromQuery]
    private string? ReturnUrl { get; set; }

    [Inject]
    private SignInManager<StudioUser> SignIns { get; set; } = default!;

    [Inject]
    private FirstStart First { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    protected override async Task OnInitializedAsync()
    {
        Input ??= new Form();
        studio = await Settings.ReadAsync();
        if (await First.EmptyAsync())
        {
            Nav.NavigateTo("/first-start");
        }
    }

    private async Task EnterAsync()
    {
        var user = await SignIns.UserManager.FindByEmailAsync(Input.Email.Trim());
        if (user is { Retired: false })
        {
            var result = await SignIns.PasswordSignInAsync(user, Input.Password, Input.Stay, lockoutOnFailure: true);
            if (result.Succeeded)
            {
                Nav.NavigateTo(Local(ReturnUrl), forceLoad: true);
                return;
            }

            if (result.IsLockedOut)
            {
                wrong = "Too many tries. This sign-in rests for ten minutes; then try again, or ask the owner to set a new password.";
                return;
            }
        }

        wrong = "E-mail and password do not belong together. Check both and try again.";
    }

    // never send a person who just signed in to somebody else's site
    private static string Local(string? url) => url is ['/', not '/' and not '\\', ..] ? url : "/";
}
