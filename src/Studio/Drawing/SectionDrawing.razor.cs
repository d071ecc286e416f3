using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;
using Studio.Shell;

namespace Studio.Drawing;

/// <summary>A section drawing: small for the shelf, large with dimensions and names, or editable by its lines.</summary>
public sealed partial class SectionDrawing(IJSRuntime script) : IAsyncDisposable
{
    private const double SmallWidth = 120;
    private const double LargeWidth = 620;
    private const double Narrow = 440;
    private static int made;

    // each drawing's patterns have names of their own, so that hiding one drawing does not take another's hatching away
    private readonly string key = "section" + Interlocked.Increment(ref made).ToString(CultureInfo.InvariantCulture);
    private ElementReference svg;
    private IJSObjectReference? module;
    private IJSObjectReference? watch;
    private DotNetObjectReference<SectionDrawing>? self;
    private SectionLayout? sheet;
    private string outline = "";
    private IReadOnlyList<(SectionBand Band, string Path)> bands = [];
    private double? measured;
    private bool gone;
    private bool watching;

    [Parameter, EditorRequired]
    public SectionView? View { get; set; }

    /// <summary>With dimensions and names.</summary>
    [Parameter]
    public bool Large { get; set; }

    /// <summary>About 120 px wide, no words. What is neither small nor large is small.</summary>
    [Parameter]
    public bool Small { get; set; }

    /// <summary>Lines of movable layers can be dragged or moved by arrow keys.</summary>
    [Parameter]
    public bool Editable { get; set; }

    /// <summary>Where it is narrow, numbers stand for the names, because the page lists the layers beside it.</summary>
    [Parameter]
    public bool Listed { get; set; }

    /// <summary>Width in px; a large drawing measures the room it has.</summary>
    [Parameter]
    public double? Width { get; set; }

    /// <summary>Height of the drawing itself at most [px].</summary>
    [Parameter]
    public double? Tallest { get; set; }

    /// <summary><c>metric</c> or <c>inch</c>.</summary>
    [Parameter]
    public string Units { get; set; } = "metric";

    [Parameter]
    public string Class { get; set; } = "";

    /// <summary>Replaces the words said of the drawing.</summary>
    [Parameter]
    public string? Label { get; set; }

    /// <summary>A line was moved: the layer's key and the height asked for, as it stands for casting [mm].</summary>
    [Parameter]
    public EventCallback<LineMove> Moved { get; set; }

    /// <summary>A layer was clicked, by its key; a way beside the page's own list, never the only one.</summary>
    [Parameter]
    public EventCallback<int> Picked { get; set; }

    private string Words => Label ?? (Large ? SectionWords.Whole(View!) : View!.Words);

    protected override void OnParametersSet() => Lay();

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (!Large || watching || sheet is null || gone)
        {
            return;
        }

        watching = true;
        try
        {
            await WatchAsync();
        }
        catch (JSDisconnectedException)
        {
            // the browser left; nothing to measure any more
        }
        catch (JSException) when (gone)
        {
            // the drawing left the page while the browser was asked
        }
    }

    // the page may take the drawing away while the browser still answers
    private async Task WatchAsync()
    {
        var loaded = await script.InvokeAsync<IJSObjectReference>("import", "/drawing.js");
        if (gone)
        {
            await loaded.DisposeAsync();
            return;
        }

        module = loaded;
        self = DotNetObjectReference.Create(this);
        var begun = await loaded.InvokeAsync<IJSObjectReference>("watch", svg, self, Editable);
        if (gone)
        {
            await Scripts.LetGoAsync(begun, "stop", null);
            return;
        }

        watch = begun;
    }

    /// <summary>The browser tells how wide the drawing may be.</summary>
    [JSInvokable]
    public void Fit(double width)
    {
        if (!gone && width > 60 && Math.Abs(width - (measured ?? LargeWidth)) > 4)
        {
            measured = width;
            Lay();
            StateHasChanged();
        }
    }

    /// <summary>The browser drags a line to a height of the drawing box [its own units from the top].</summary>
    [JSInvokable]
    public Task DragAsync(int layer, double y, bool last)
    {
        if (gone || sheet is null || View is null)
        {
            return Task.CompletedTask;
        }

        var drawn = View.HeightMm - ((y - sheet.Top) / sheet.Scale);
        return Moved.InvokeAsync(new LineMove(layer, Math.Round(View.Drawn(drawn)), last));
    }

    public async ValueTask DisposeAsync()
    {
        gone = true;
        await Scripts.LetGoAsync(watch, "stop", module);

        self?.Dispose();
    }

    private void Lay()
    {
        sheet = View is { WidestMm: > 0, HeightMm: > 0 } v ? new SectionLayout(v, Large, Room, Tallest ?? (Large ? 560 : 130), Units, names: !Listed || Room >= Narrow) : null;
        outline = sheet?.Path(View!.Outline) ?? "";
        bands = sheet is null ? [] : [.. View!.Bands.Where(b => !b.Empty).Select(b => (b, sheet.Path(b.Rings)))];
    }

    // the shelf draws hundreds: a drawing without anything hatched brings no patterns
    private bool Hatched => Large || View!.Former.Count > 0 || bands.Any(b => b.Band.Layer.State is LayerState.Curing);

    private double Room => Width ?? (Large ? measured ?? LargeWidth : SmallWidth);

    // no handler at all where nobody listens: the shelf draws hundreds of bands
    private EventCallback<MouseEventArgs> Click(SectionBand band) =>
        Picked.HasDelegate ? EventCallback.Factory.Create<MouseEventArgs>(this, () => Picked.InvokeAsync(band.Layer.Key)) : default;

    private static string Exact(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);

    private static string State(SectionBand band) => band.Layer.State.ToString().ToLowerInvariant();

    // a colour from a record could be anything; only one that is a colour reaches the page
    internal static string Colour(string colour) => colour is ['#', .. var digits] && digits.Length is 3 or 6 && digits.All(char.IsAsciiHexDigit) ? colour : "#cfd8d6";

    internal static string Ends(SectionDimension d)
    {
        var (x1, y1, x2, y2) = (SectionLayout.Number(d.X1), SectionLayout.Number(d.Y1), SectionLayout.Number(d.X2), SectionLayout.Number(d.Y2));
        return d.Upright
            ? $"M{x1} {y1}V{y2}m-4 -3l8 6M{SectionLayout.Number(d.X1 - 4)} {SectionLayout.Number(d.Y1 - 3)}l8 6M{SectionLayout.Number(d.X1 - 5)} {y1}h10M{SectionLayout.Number(d.X2 - 5)} {y2}h10"
            : $"M{x1} {y1}H{x2}m-3 4l6 -8M{SectionLayout.Number(d.X1 - 3)} {SectionLayout.Number(d.Y1 + 4)}l6 -8M{x1} {SectionLayout.Number(d.Y1 - 5)}v10M{x2} {SectionLayout.Number(d.Y2 - 5)}v10";
    }

    // arrows move by a millimetre, with shift by ten; Page keys by ten as sliders do
    private Task KeyAsync(int layer, KeyboardEventArgs e)
    {
        // the line as it lies now: a key pressed quickly comes with what was drawn before
        if (sheet?.Lines.FirstOrDefault(l => l.Key == layer) is not { } line)
        {
            return Task.CompletedTask;
        }

        var up = View!.AsStands ? 1 : -1;
        var step = e.ShiftKey ? 10 : 1;
        double? to = e.Key switch
        {
            "ArrowUp" or "ArrowRight" => line.Mm + (up * step),
            "ArrowDown" or "ArrowLeft" => line.Mm - (up * step),
            "PageUp" => line.Mm + (up * 10),
            "PageDown" => line.Mm - (up * 10),
            _ => null,
        };
        return to is { } mm ? Moved.InvokeAsync(new LineMove(line.Key, mm, Last: true)) : Task.CompletedTask;
    }
}

/// <summary>A line of the drawing was moved.</summary>
/// <param name="Layer">The layer whose top it is, by its key.</param>
/// <param name="ToMm">Height asked for, as it stands for casting [mm].</param>
/// <param name="Last">False while still dragging.</param>
public sealed record LineMove(int Layer, double ToMm, bool Last);
