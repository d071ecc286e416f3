using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;
using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Shell;

/// <summary>The frame around every room.</summary>
public partial class MainLayout
{
    private MudThemeProvider? theme;
    private ErrorBoundary? boundary;
    private StudioSettings settings = new();
    private IDisposable? ear;
    private bool dark;
    private bool ended;

    // the browser knows light from dark; until it has said so the page is still turning
    private bool looked;

    [CascadingParameter]
    private HttpContext? Http { get; set; }

    [Inject]
    private SettingsBook Book { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    public void Dispose()
    {
        ear?.Dispose();
        Who.Ended -= SayEnded;
    }

    protected override async Task OnInitializedAsync()
    {
        dark = Http?.Request.Cookies["look"] is "dark";
        Who.Ended += SayEnded;
        settings = await Book.ReadAsync();
        ear = News.Listen(n =>
        {
            if (n.Topic == News.Settings)
            {
                _ = InvokeAsync(async () =>
                {
                    settings = await Book.ReadAsync();
                    StateHasChanged();
                });
            }
        });
    }

    protected override void OnParametersSet() => boundary?.Recover();

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender && theme is not null)
        {
            var chosen = await Script.InvokeAsync<string>("studio.look");
            dark = chosen is "dark" || (chosen is not "light" && await theme.GetSystemDarkModeAsync());
            looked = true;
            StateHasChanged();
        }
    }

    // whatever act was refused: also an Undo, of whose end nobody else hears
    private void SayEnded() => _ = InvokeAsync(() =>
    {
        ended = true;
        StateHasChanged();
    });

    private async Task TurnAsync()
    {
        dark = !dark;
        await Script.InvokeVoidAsync("studio.chooseLook", dark ? "dark" : "light");
    }
}
