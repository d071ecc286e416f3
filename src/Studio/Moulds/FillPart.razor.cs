using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Microsoft.JSInterop;
using Studio.Engine;

namespace Studio.Moulds;

/// <summary>The rows of a water fill.</summary>
public sealed partial class FillPart
{
    private (int Place, FillRow Row)? removed;
    private int? focus;

    [Parameter, EditorRequired]
    public FillRows Fill { get; set; } = default!;

    [Parameter, EditorRequired]
    public MouldGlance Glance { get; set; } = default!;

    [Parameter]
    public string Units { get; set; } = "metric";

    /// <summary>The page's complaint about a field, or null.</summary>
    [Parameter, EditorRequired]
    public Func<string, string?> Edit { get; set; } = default!;

    [Parameter]
    public EventCallback Changed { get; set; }

    [Inject]
    private IJSRuntime Script { get; set; } = default!;

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        if (focus is { } row)
        {
            focus = null;
            await Script.InvokeVoidAsync("studio.focus", FormattableString.Invariant($"#reading-{row} input"));
        }
    }

    private static Dictionary<string, object?> Named(string words) => new(StringComparer.Ordinal) { ["aria-label"] = words };

    private Finding? WildAt(int row) => Glance.Wild.FirstOrDefault(f => f.Path == FormattableString.Invariant($"readings[{row}]"));

    // while somebody types; a field that carries the page's own complaint says it once
    private string? LiveTrouble(int row)
    {
        var path = FormattableString.Invariant($"readings[{row}]");
        return Edit(path + ".height") is not null || Edit(path + ".water") is not null ? null
            : Glance.Troubles.FirstOrDefault(t => t.Path.StartsWith(path, StringComparison.Ordinal))?.Message;
    }

    private Task SetAsync(Action set)
    {
        set();
        return Changed.InvokeAsync();
    }

    private Task CountAsync(bool added) => SetAsync(() => Fill.Count(added));

    private Task WeighAsync(bool weighed) => SetAsync(() => Fill.Weighed = weighed);

    private async Task KeyAsync(KeyboardEventArgs e, int row)
    {
        if (e.Key is "Enter")
        {
            await AddAsync(row + 1);
        }
    }

    // an empty row that waits already is gone to, not doubled
    private Task AddAsync(int place)
    {
        focus = place;
        if (place < Fill.Rows.Count)
        {
            return Changed.InvokeAsync();
        }

        if (Fill.Rows[^1].Empty)
        {
            focus = Fill.Rows.Count - 1;
            return Changed.InvokeAsync();
        }

        return SetAsync(() => Fill.Rows.Add(new()));
    }

    private Task RemoveAsync(int place) => SetAsync(() =>
    {
        removed = Fill.Rows[place].Empty ? removed : (place, Fill.Rows[place]);
        Fill.Rows.RemoveAt(place);
        if (Fill.Rows.Count == 0)
        {
            Fill.Rows.Add(new());
        }

        focus = Math.Min(place, Fill.Rows.Count - 1);
    });

    private Task PutBackAsync() => SetAsync(() =>
    {
        var (place, row) = removed!.Value;
        Fill.Rows.Insert(Math.Min(place, Fill.Rows.Count), row);
        (removed, focus) = (null, place);
    });
}
