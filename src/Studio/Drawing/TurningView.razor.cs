using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Shell;

namespace Studio.Drawing;

/// <summary>A piece or an empty mould that can be turned and looked at from every side.</summary>
public sealed partial class TurningView(IJSRuntime script) : IAsyncDisposable
{
    private const string None = "This browser does not draw in three dimensions here. The section and the plan show the same piece.";
    private static int made;

    private readonly string key = "turning" + Interlocked.Increment(ref made).ToString(CultureInfo.InvariantCulture);
    private ElementReference box;
    private IJSObjectReference? module;
    private IJSObjectReference? picture;
    private string wanted = "";
    private string sent = "";
    private bool busy;
    private bool failed;
    private bool lighter;
    private bool gone;

    /// <summary>What is drawn, the way up that the view shows it.</summary>
    [Parameter, EditorRequired]
    public SectionView? View { get; set; }

    /// <summary>Width to height, as CSS writes it.</summary>
    [Parameter]
    public string Shape { get; set; } = "6 / 5";

    /// <summary>Height at most [px].</summary>
    [Parameter]
    public double Tallest { get; set; } = 520;

    private string Words => View is { } v ? "In three dimensions: " + v.Words : "";

    private string Said => (lighter ? string.Create(CultureInfo.InvariantCulture, $" The mesh has more than {TurningScene.MostTriangles} triangles; this picture shows fewer, the figures use them all.") : "")
        + (View!.Bands.Any(b => b.Layer.Scatter || b.Layer.Placed.Count > 0) ? " Loose filling and things set in by hand are left out here." : "")
        + (View.Caveat.Length > 0 ? " " + View.Caveat : "");

    protected override void OnParametersSet() => wanted = View is { WidestMm: > 0, HeightMm: > 0 } v ? TurningScene.Key(v) : "";

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (gone || failed || busy || wanted.Length == 0 || wanted == sent)
        {
            return;
        }

        busy = true;
        try
        {
            await ShowAsync();
        }
        catch (JSDisconnectedException)
        {
            // the browser left
        }
        catch (JSException)
        {
            // the view left the page while the browser was asked, or the browser cannot do it: the other drawings can
            failed = !gone;
            StateHasChanged();
        }
        finally
        {
            busy = false;
        }

        if (!gone && !failed && wanted != sent)
        {
            StateHasChanged();
        }
    }

    private async Task ShowAsync()
    {
        module ??= await script.InvokeAsync<IJSObjectReference>("import", "/turning.js");
        picture ??= await module.InvokeAsync<IJSObjectReference>("begin", box);
        var now = wanted;
        var scene = TurningScene.Of(View!);
        var shown = await picture.InvokeAsync<bool>("show", scene.Parts);
        sent = now;
        if (!shown || lighter != scene.Lighter)
        {
            (failed, lighter) = (!shown, scene.Lighter);
            StateHasChanged();
        }
    }

    public async ValueTask DisposeAsync()
    {
        gone = true;
        await Scripts.LetGoAsync(picture, "stop", module);
    }
}
