using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Engine.Custody;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>Opens a keepsake by its label: read by the camera where the browser can, typed otherwise.</summary>
public sealed partial class ScanPage : IAsyncDisposable
{
    private ElementReference video;
    private IJSObjectReference? module;
    private IJSObjectReference? scan;
    private DotNetObjectReference<ScanPage>? self;
    private string state = "";
    private string typed = "";
    private string wrong = "";

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    private string Words => state switch
    {
        "looking" => "Hold the label's square before the camera.",
        "refused" => "The camera was not allowed. Allow it in the browser's settings for this page, or type the number.",
        "none" => "This browser cannot read labels by itself. The phone's own camera can: point it at the square and open the address that it shows. Or type the number.",
        _ => "Opening the camera…",
    };

    /// <summary>Called with what a label says: our address, or a bare number.</summary>
    [JSInvokable]
    public Task ReadAsync(string text) => InvokeAsync(() =>
    {
        Open(text.TrimEnd('/').Split('/')[^1]);
        StateHasChanged();
    });

    public async ValueTask DisposeAsync()
    {
        self?.Dispose();
        await Scripts.LetGoAsync(scan, "dispose", module);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!firstRender)
        {
            return;
        }

        self = DotNetObjectReference.Create(this);
        module = await Script.InvokeAsync<IJSObjectReference>("import", "/intake.js");
        scan = await module.InvokeAsync<IJSObjectReference>("scan", video, self);
        state = await scan.InvokeAsync<string>("start");
        StateHasChanged();
    }

    private void Open(string number)
    {
        var parsed = EntryNumber.Parse(number);
        wrong = parsed.Ok ? "" : parsed.Errors[0].Message;
        if (parsed.Ok)
        {
            Nav.NavigateTo("/keepsakes/" + parsed.Value);
        }
    }
}
