using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Clock;
using Studio.Data;
using Studio.Pieces;
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

    private Task EarlyAsync() => RunAsync(by => book.DemouldAsync(Sheet.PieceId, why, by), "It is out of its mould, early; the reason is kept.", Making.Demoulded);

    private Task FinishEarlyAsync() => RunAsync(by => book.FinishAsync(Sheet.PieceId, why, by), "It is called finished, early; the reason is kept.", Making.Finished);

    private async Task NoFailureAsync()
    {
        words = (await book.StepBackAsync(Sheet.PieceId, Making.Failed, await who.NameAsync())).Words;
        await Done.InvokeAsync();
    }

    private async Task RunAsync(Func<string, Task<Saved>> act, string said, string to)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        try
        {
            var saved = await act(await who.NameAsync());
            words = saved.Words;
            if (!saved.Ok)
            {
                return;
            }
        }
        finally
        {
            busy = false;
        }

        why = "";
        var id = Sheet.PieceId;
        snackbar.Add(said, Severity.Normal, o =>
        {
            o.Action = "Undo";
            o.OnClick = async _ => await book.StepBackAsync(id, to, await who.NameAsync());
        });
        await Done.InvokeAsync();
    }
}
