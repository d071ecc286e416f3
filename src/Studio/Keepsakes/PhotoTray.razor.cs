using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>The photographs of one keepsake while it is taken in.</summary>
public sealed partial class PhotoTray : IAsyncDisposable
{
    // 40 MB over a poor connection takes minutes, and nobody wants to photograph it again
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(10);

    private ElementReference root;
    private IJSObjectReference? module;
    private IJSObjectReference? tray;

    /// <summary>The key under which kept photographs survive a reload; empty: they do not.</summary>
    [Parameter]
    public string DraftKey { get; set; } = "";

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    /// <summary>Waits for what is on its way, then tells what was kept and how many were not.</summary>
    public async Task<(IReadOnlyList<int> Ids, int Lost)> SettleAsync()
    {
        if (tray is null)
        {
            return ([], 0);
        }

        await tray.InvokeVoidAsync("settled", Patience);
        return (await tray.InvokeAsync<int[]>("ids"), await tray.InvokeAsync<int>("lost"));
    }

    /// <summary>An empty tray for the next keepsake.</summary>
    public async Task ClearAsync()
    {
        if (tray is not null)
        {
            await tray.InvokeVoidAsync("clear");
        }
    }

    public async ValueTask DisposeAsync()
    {
        await Scripts.LetGoAsync(tray, "dispose", module);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (firstRender)
        {
            module = await Script.InvokeAsync<IJSObjectReference>("import", "/intake.js");
            tray = await module.InvokeAsync<IJSObjectReference>("tray", root, DraftKey);
        }
    }
}
