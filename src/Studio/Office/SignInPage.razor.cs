using Microsoft.AspNetCore.Components;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Office;

/// <summary>The only page, with the first start, that lets anybody do something.</summary>
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

    [CascadingParameter]
    private HttpContext Http { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private DoorBook Door { get; set; } = default!;

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
        var entered = await Door.EnterAsync(Http, Input.Email, Input.Password, Input.Stay);
        if (entered.Ok)
        {
            Nav.NavigateTo(Local(ReturnUrl), forceLoad: true);
            return;
        }

        wrong = entered.Words;
    }

    // never send a person who just signed in to somebody else's site
    private static string Local(string? url) => url is ['/', not '/' and not '\\', ..] ? url : "/";
}
