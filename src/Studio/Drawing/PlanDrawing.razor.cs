using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Engine.Moulds;
using Studio.Shell;

namespace Studio.Drawing;

/// <summary>The plan of a piece: what one sees from above at a height.</summary>
public sealed partial class PlanDrawing(IJSRuntime script) : IAsyncDisposable
{
    private const double Unmeasured = 520;
    private const double Side = 66;
    private const double Other = 26;
    private const double Edge = 34;
    private const double SecondRow = 30;
    private static int made;

    private readonly string key = "plan" + Interlocked.Increment(ref made).ToString(CultureInfo.InvariantCulture);
    private DotNetObjectReference<PlanDrawing>? self;
    private ElementReference svg;
    private IJSObjectReference? module;
    private IJSObjectReference? watch;
    private bool watching;
    private bool gone;
    private double? measured;
    private PlanView? plan;
    private IReadOnlyList<(string Key, string Words, double? AtMm)> heights = [];
    private string chosen = "rim";
    private PlanPoint low;
    private PlanPoint high;
    private double width;
    private double height;
    private double scale;

    /// <summary>The piece, either way up; a plan always looks down into the mould as it stands for casting.</summary>
    [Parameter, EditorRequired]
    public SectionView? View { get; set; }

    /// <summary>Height to look at, as it stands for casting [mm]; null for the rim.</summary>
    [Parameter]
    public double? AtMm { get; set; }

    /// <summary>Lets the reader choose among the rim and the tops of the layers.</summary>
    [Parameter]
    public bool Choose { get; set; }

    [Parameter]
    public IReadOnlyList<PlanHole> Holes { get; set; } = [];

    /// <summary><c>metric</c> or <c>inch</c>.</summary>
    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>Width in px; without one the drawing measures the room it has.</summary>
    [Parameter]
    public double? Width { get; set; }

    /// <summary>Height at most [px].</summary>
    [Parameter]
    public double Tallest { get; set; } = 520;

    [Parameter]
    public string Class { get; set; } = "";

    private string Key => (plan!.AtRim ? "Looking down into the mould at its rim." : "Looking down into the mould.") + (plan.Beyond.Count > 0 ? " Broken lines: its rim, its bottom, or where it is widest." : "")
        + (plan.Sheets.Count > 0 ? " Dash and dot: " + string.Join(", ", plan.Sheets.Select(s => s.Name)) + "." : "")
        + (plan.Unknown ? " Its outline is not known: drawn round, with the area of the water fill." : "");

    protected override void OnParametersSet() => Lay();

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (watching || gone || plan is null || Width is not null)
        {
            return;
        }

        watching = true;
        try
        {
            module = await script.InvokeAsync<IJSObjectReference>("import", "/drawing.js");
            self = DotNetObjectReference.Create(this);
            watch = await module.InvokeAsync<IJSObjectReference>("watch", svg, self, false);
            if (gone)
            {
                await StopAsync();
            }
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

    /// <summary>The browser tells how wide the drawing may be.</summary>
    [JSInvokable]
    public void Fit(double room)
    {
        if (!gone && room > 60 && Math.Abs(room - (measured ?? Unmeasured)) > 4)
        {
            measured = room;
            Lay();
            StateHasChanged();
        }
    }

    public async ValueTask DisposeAsync()
    {
        gone = true;
        await StopAsync();
        self?.Dispose();
    }

    private async Task StopAsync()
    {
        var (ends, from) = (watch, module);
        (watch, module) = (null, null);
        await Scripts.LetGoAsync(ends, "stop", from);
    }

    private IEnumerable<SectionDimension> Dimensions
    {
        get
        {
            var (a, b) = plan!.Extent;
            if (plan.Outline.Count > 0)
            {
                yield return Across(a.XMm, b.XMm, Y(low.YMm) + 24);
                yield return Upright(a.YMm, b.YMm, 18);
            }

            if (plan.Former is { } f)
            {
                yield return Across(-f.OuterWidthMm / 2, f.OuterWidthMm / 2, Y(low.YMm) + 24 + SecondRow);
                yield return Upright(-f.OuterDepthMm / 2, f.OuterDepthMm / 2, 48);
            }
        }
    }

    private void Lay()
    {
        if (View is not { WidestMm: > 0, HeightMm: > 0 } v)
        {
            plan = null;
            return;
        }

        heights = [("rim", "the rim", null), .. v.Bands.Reverse().Select(b => (b.Number.ToString(CultureInfo.InvariantCulture), string.Create(CultureInfo.InvariantCulture, $"the top of {b.Number} {b.Layer.Name}, {Length(b.Layer.ToMm)}"), (double?)b.Layer.ToMm))];
        plan = PlanView.Of(v, Choose ? heights.FirstOrDefault(h => h.Key == chosen).AtMm : AtMm, Holes);
        (low, high) = plan.Whole;
        var (wide, deep) = (Math.Max(high.XMm - low.XMm, 0.1), Math.Max(high.YMm - low.YMm, 0.1));
        var foot = Edge + (plan.Former is null ? 0 : SecondRow);
        scale = Math.Max(0.001, Math.Min(((Width ?? measured ?? Unmeasured) - Side - Other) / wide, (Tallest - Other - foot) / deep));
        (width, height) = (Width ?? measured ?? Unmeasured, (deep * scale) + Other + foot);
    }

    private double X(double xMm) => Side + ((width - Side - Other) / 2) + ((xMm - ((low.XMm + high.XMm) / 2)) * scale);

    private double Y(double yMm) => Other + ((high.YMm - yMm) * scale);

    private SectionDimension Across(double from, double to, double y) => new(X(from), y, X(to), y, Length(to - from), Upright: false);

    private SectionDimension Upright(double from, double to, double x) => new(x, Y(from), x, Y(to), Length(to - from), Upright: true);

    private string Length(double mm) => Units == "inch" ? string.Create(CultureInfo.InvariantCulture, $"{mm / 25.4:0.##} in") : string.Create(CultureInfo.InvariantCulture, $"{mm:0.#} mm");

    private string Box(double wide, double deep) => Path([[new(-wide / 2, -deep / 2), new(wide / 2, -deep / 2), new(wide / 2, deep / 2), new(-wide / 2, deep / 2)]]);

    private string Line(PlanFilm sheet) => sheet.Filled ? Path(sheet.Rings) : sheet.Rings.Aggregate(new StringBuilder(), Trace).ToString();

    private string Path(IReadOnlyList<IReadOnlyList<PlanPoint>> rings) => rings.Aggregate(new StringBuilder(), (path, ring) => Trace(path, ring).Append('Z')).ToString();

    private StringBuilder Trace(StringBuilder path, IReadOnlyList<PlanPoint> points)
    {
        for (var i = 0; i < points.Count; i++)
        {
            path.Append(CultureInfo.InvariantCulture, $"{(i == 0 ? 'M' : 'L')}{X(points[i].XMm):0.#} {Y(points[i].YMm):0.#}");
        }

        return path;
    }
}
