using Microsoft.AspNetCore.Components;
using Studio.Data;

namespace Studio.Tips;

/// <summary>One tip, to read and to write.</summary>
public sealed partial class TipPage
{
    [Inject]
    private TipBook Book { get; set; } = default!;

    protected override string Thing => "tip";

    protected override string Ledger => "/stores/tips";

    protected override Task<TipForm?> FetchAsync(int id) => Book.FormAsync(id);

    protected override Task<Saved> KeepAsync(TipForm form, string by) => Book.SaveAsync(form, by);

    protected override Task<Saved> TurnAsync(int id, bool retired, string by) => Book.TurnAsync(id, retired, by);
}
