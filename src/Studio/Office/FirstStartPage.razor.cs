using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.SignIn;

namespace Studio.Office;

/// <summary>Shown while nobody can sign in: create the owner, or look around the demo.</summary>
public partial class FirstStartPage
{
    private bool admitted;
    private IReadOnlyList<string> wrong = [];

    private static IEnumerable<string> Zones { get; } =
        [.. TimeZoneInfo.GetSystemTimeZones().Select(z => z.Id).Append(TimeZoneInfo.Local.Id).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];

    public sealed class OwnerForm
    {
        public string Studio { get; set; } = "";

        public string Name { get; set; } = "";

        public string Email { get; set; } = "";

        public string Password { get; set; } = "";

        public string Zone { get; set; } = TimeZoneInfo.Local.Id;

        public string Code { get; set; } = "";
    }

    public sealed class DemoForm
    {
        public string Code { get; set; } = "";
    }

    [CascadingParameter]
    private HttpContext Http { get; set; } = default!;

    [SupplyParameterFromForm(FormName = "owner")]
    private OwnerForm Input { get; set; } = default!;

    [SupplyParameterFromForm(FormName = "demo")]
    private DemoForm Demo { get; set; } = default!;

    [SupplyParameterFromQuery]
    private string? Code { get; set; }

    [Inject]
    private FirstStart First { get; set; } = default!;

    [Inject]
    private DoorBook Door { get; set; } = default!;

    [Inject]
    private IDemo Studio { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    protected override async Task OnInitializedAsync()
    {
        Input ??= new OwnerForm();
        Demo ??= new DemoForm();
        Code ??= Input.Code is { Length: > 0 } ? Input.Code : Demo.Code;
        if (!await First.EmptyAsync())
        {
            Nav.NavigateTo("/sign-in");
            return;
        }

        admitted = First.Admits(Code);
    }

    private async Task CreateAsync()
    {
        if (!admitted)
        {
            return;
        }

        var (user, complaints) = await First.MakeOwnerAsync(Input.Name, Input.Email, Input.Password, (Input.Studio, Input.Zone));
        if (user is null)
        {
            wrong = complaints;
            return;
        }

        await Door.AdmitAsync(Http, user);
        Nav.NavigateTo("/", forceLoad: true);
    }

    private async Task LookAroundAsync()
    {
        if (!admitted)
        {
            return;
        }

        var loaded = await Studio.LoadAsync();
        if (!loaded.Ok)
        {
            wrong = [loaded.Words];
            return;
        }

        await Door.AdmitAsync(Http, IDemo.Email);

        Nav.NavigateTo("/", forceLoad: true);
    }
}
