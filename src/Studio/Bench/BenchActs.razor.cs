using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Clock;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>What follows the last pour, and what was poured.</summary>
public sealed partial class BenchActs(BenchBook book, Who who, ISnackbar snackbar)
{
    private string why = "";
    private string words = "";
    private bool busy;

    [Parameter, EditorRequired]
    public BenchView Sheet { get; set; } = default!;

    /// <summary>Told after something was kept.</summary>
    [Parameter]
    public EventCallback Done { get; set; }

    private bool Ready => Sheet.Times.Next.Kind == ActKind.Demould;

    private async Task EarlyAsync()
    {
        if (busy)
        {
            return;
        }

        busy = true;
        var by = await who.NameAsync();
        var saved = await book.DemouldAsync(Sheet.PieceId, why, by);
        (busy, words) = (false, saved.Words);
        if (saved.Ok)
        {
            why = "";
            var id = Sheet.PieceId;
            snackbar.Add("It is out of its mould, early; the reason is kept.", Severity.Normal, o =>
            {
                o.Action = "Undo";
                o.OnClick = async _ => await book.StepBackAsync(id, by);
            });
            await Done.InvokeAsync();
        }
    }
}
