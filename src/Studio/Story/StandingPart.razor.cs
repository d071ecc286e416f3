using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Commissions;
using Studio.SignIn;

namespace Studio.Story;

/// <summary>Moves a commission on, and takes a move back.</summary>
public sealed partial class StandingPart
{
    private string refused = "";
    private bool moving;

    [Parameter, EditorRequired]
    public CommissionStory Story { get; set; } = default!;

    [Parameter]
    public EventCallback Changed { get; set; }

    [Inject]
    private CommissionBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    private string Stands => Story.Commission.Stands;

    private async Task MoveAsync(string to, string words)
    {
        if (moving)
        {
            return;
        }

        moving = true;
        var (id, before) = (Story.Commission.Id, Stands);
        var saved = await Book.MoveAsync(id, before, to, words, await Who.NameAsync());
        (refused, moving) = (saved.Words, false);
        if (saved.Ok)
        {
            Snackbar.Add($"{Story.Commission.Number} stands at “{Standing.Label(to)}”.", configure: o =>
            {
                o.Action = "Undo";
                o.OnClick = _ => InvokeAsync(() => UndoAsync(id, to, before));
            });
        }

        await Changed.InvokeAsync();
    }

    private async Task UndoAsync(int id, string now, string before)
    {
        var saved = await Book.UndoAsync(id, now, before, await Who.NameAsync());
        refused = saved.Words;
        await Changed.InvokeAsync();
    }
}
