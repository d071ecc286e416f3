using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Commissions;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Steps;

/// <summary>Moves a commission on, asks where the facts disagree, and takes a move back.</summary>
public sealed partial class StepsPart
{
    private readonly UnreadNumbers unread = new();
    private StepView? view;
    private Step? asked;
    private string why = "";
    private decimal? spent;
    private string refused = "";
    private bool moving;

    [Parameter, EditorRequired]
    public int CommissionId { get; set; }

    /// <summary>The studio's currency, for what was spent.</summary>
    [Parameter, EditorRequired]
    public string Currency { get; set; } = "";

    [Parameter]
    public EventCallback Changed { get; set; }

    [Inject]
    private StepBook Book { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    // the page renders anew whenever anybody changes a part of the commission, and then the facts are read anew
    protected override async Task OnParametersSetAsync()
    {
        view = await Book.ReadAsync(CommissionId);
        if (asked is { } step)
        {
            asked = view?.Others.Concat(view.Elsewhere).Append(view.Main).FirstOrDefault(s => s?.To == step.To);
        }
    }

    private static bool Barred(Step step) => step is { To: Standing.CrossedOut, Disagrees.Count: > 0 };

    private async Task AskAsync(Step step)
    {
        (refused, why, spent) = ("", "", null);
        if (step.Asks)
        {
            asked = step;
            return;
        }

        await MoveAsync(step);
    }

    private void Leave() => (asked, refused) = (null, "");

    private async Task GoOnAsync()
    {
        if (unread.Any)
        {
            refused = "What was spent cannot be read as a sum of money. Nothing was changed: set it right, or leave it empty.";
            return;
        }

        await MoveAsync(asked!);
    }

    private async Task MoveAsync(Step step)
    {
        if (moving || view is null)
        {
            return;
        }

        moving = true;
        try
        {
            var before = view.Stands;
            var saved = await Book.MoveAsync(CommissionId, new MoveForm(before, step.To, step.Words, why, spent), await Who.NameAsync());
            refused = saved.Words;
            if (saved.Ok)
            {
                asked = null;
                Snackbar.Add($"It stands at “{Standing.Label(step.To)}”.", configure: o =>
                {
                    o.Action = "Undo";
                    o.OnClick = _ => InvokeAsync(() => UndoAsync(step.To, before));
                });
            }
        }
        finally
        {
            moving = false;
        }

        await Changed.InvokeAsync();
    }

    private async Task UndoAsync(string now, string before)
    {
        refused = (await Book.UndoAsync(CommissionId, now, before, await Who.NameAsync())).Words;
        await Changed.InvokeAsync();
    }
}
