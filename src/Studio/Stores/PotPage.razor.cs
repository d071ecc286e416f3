using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Stores;

/// <summary>One pressure pot, to read and to write.</summary>
public sealed partial class PotPage
{
    private DateOnly today;

    [Inject]
    private PotBook Book { get; set; } = default!;

    protected override string Thing => "pot";

    protected override string Ledger => "/stores/pots";

    protected override Task<PotForm?> FetchAsync(int id) => Book.FormAsync(id);

    protected override Task<Saved> KeepAsync(PotForm form, string by) => Book.SaveAsync(form, by);

    protected override Task<Saved> TurnAsync(int id, bool retired, string by) => Book.RetireAsync(id, retired, by);

    protected override async Task OnInitializedAsync()
    {
        today = await Book.TodayAsync();
        await base.OnInitializedAsync();
    }
}
