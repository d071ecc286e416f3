using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Pieces;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>Notes that a piece failed.</summary>
public sealed partial class BenchFail(BenchBook book, Who who, ISnackbar snackbar, NavigationManager navigation)
{
    private readonly FailForm form = new();
    private string wrong = "";
    private bool busy;

    [Parameter, EditorRequired]
    public int PieceId { get; set; }

    /// <summary>What lies in it of the family's things, by the log.</summary>
    [Parameter, EditorRequired]
    public IReadOnlyList<string> Inside { get; set; } = [];

    [Parameter, EditorRequired]
    public string Currency { get; set; } = "";

    /// <summary>Told after it was kept.</summary>
    [Parameter]
    public EventCallback Done { get; set; }

    private async Task KeepAsync()
    {
        if (busy)
        {
            return;
        }

        busy = true;
        try
        {
            var saved = await book.FailAsync(PieceId, form, await who.NameAsync());
            wrong = saved.Words;
            if (!saved.Ok)
            {
                return;
            }

            var id = PieceId;
            snackbar.Add("It is noted as failed.", Severity.Normal, o =>
            {
                o.Action = "Undo";
                o.OnClick = async _ => await book.StepBackAsync(id, Making.Failed, await who.NameAsync());
            });
            if (saved.Id != PieceId)
            {
                navigation.NavigateTo(FormattableString.Invariant($"/pieces/{saved.Id}"));
                return;
            }
        }
        finally
        {
            busy = false;
        }

        await Done.InvokeAsync();
    }
}
