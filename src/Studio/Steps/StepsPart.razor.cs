using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Commissions;
using Studio.SignIn;

namespace Studio.Steps;

/// <summary>Moves a commission on, asks where the facts disagree, and takes a move back.</summary>
public sealed partial class StepsPart
{
    private Step? asked;
    private string why = "";
    private decimal? spent;
    private string refused = "";
    private bool moving;

    /// <summary>Another one whenever anybody changes a part of the commission.</summary>
    [Parameter, EditorRequired]
    public StepView View { get; set; } = default!;

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

    // what is asked about is asked anew: what disagreed a moment ago may agree now
    protected override void OnParametersSet()
    {
        if (asked is { } step)
        {
            asked = View.Others.Concat(View.Elsewhere).Append(View.Main).FirstOrDefault(s => s?.To == step.To);
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

    private Task GoOnAsync() => MoveAsync(asked!);

    private async Task MoveAsync(Step step)
    {
        if (moving)
        {
            return;
        }

        moving = true;
        try
        {
            var (id, before) = (View.CommissionId, View.Stands);
            var saved = await Book.MoveAsync(id, new MoveForm(before, step.To, step.Words, why, spent), await Who.NameAsync());
            refused = saved.Words;
            if (saved.Ok)
            {
                asked = null;
                Snackbar.Add($"It stands at “{Standing.Label(step.To)}”.", configure: o =>
                {
                    o.Action = "Undo";
                    o.OnClick = _ => InvokeAsync(() => UndoAsync(id, step.To, before));
                });
            }
        }
        finally
        {
            moving = false;
        }

        await Changed.InvokeAsync();
    }

    private async Task UndoAsync(int id, string now, string before)
    {
        refused = (await Book.UndoAsync(id, now, before, await Who.NameAsync())).Words;
        await Changed.InvokeAsync();
    }
}
