using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>What follows the last pour, and what was poured.</summary>
public sealed partial class BenchActs(BenchBook book, Who who, ISnackbar snackbar)
{
    private string why = "";
    private string words = "";
    private bool busy;

    [Parameter, EditorRequired]
    public BenchSheet Sheet { get; set; } = default!;

    /// <summary>Told after something was kept.</summary>
    [Parameter]
    public EventCallback Done { get; set; }

    private bool Ready => Sheet.Times.Next.Kind == ActKind.Demould;

    private Task DemouldAsync() => ActAsync(by => book.DemouldAsync(Sheet.PieceId, why, by), "It is out of its mould.");

    private Task FinishAsync() => ActAsync(by => book.FinishAsync(Sheet.PieceId, by), "It is finished.");

    private async Task ActAsync(Func<string, Task<Saved>> act, string said)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        var by = await who.NameAsync();
        var saved = await act(by);
        (busy, words) = (false, saved.Words);
        if (saved.Ok)
        {
            why = "";
            var id = Sheet.PieceId;
            snackbar.Add(said, Severity.Normal, o =>
            {
                o.Action = "Undo";
                o.OnClick = async _ => await book.StepBackAsync(id, by);
            });
            await Done.InvokeAsync();
        }
    }
}
