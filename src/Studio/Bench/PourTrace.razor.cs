using Microsoft.AspNetCore.Components;
using Studio.Data;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>One pour and its trace, with the way to set it right.</summary>
public sealed partial class PourTrace(BenchBook book, Who who)
{
    private readonly UnreadNumbers unread = new();
    private CorrectionForm form = new();
    private bool open;
    private bool taking;
    private bool busy;
    private IReadOnlyList<string> held = [];
    private string why = "";
    private string place = "";
    private string wrong = "";

    [Parameter, EditorRequired]
    public BenchView Sheet { get; set; } = default!;

    [Parameter, EditorRequired]
    public BenchPour Pour { get; set; } = default!;

    [Parameter]
    public EventCallback Done { get; set; }

    private void Open()
    {
        form = new() { PourId = Pour.Id, Version = Pour.Version, ActualAG = Pour.ActualAG, ActualBG = Pour.ActualBG, RoomC = Pour.RoomC, StartedAt = Pour.StartedAt, Lot = Pour.Lot };
        (open, taking, wrong) = (true, false, "");
    }

    private async Task TakingAsync()
    {
        taking = !taking;
        held = taking ? await book.HeldAsync(Pour.Id) : [];
    }

    private Task CorrectAsync() => unread.Refuse() ? Task.CompletedTask : ActAsync(async by => await book.CorrectAsync(form, by));

    private Task WithdrawAsync() => ActAsync(async by => await book.WithdrawAsync(Pour.Id, why, place, by));

    private async Task ActAsync(Func<string, Task<Saved>> act)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        var saved = await act(await who.NameAsync());
        (busy, wrong) = (false, saved.Words);
        if (saved.Ok)
        {
            (open, taking) = (false, false);
            await Done.InvokeAsync();
        }
    }
}
