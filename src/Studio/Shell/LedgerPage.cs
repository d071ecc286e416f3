using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Shell;

/// <summary>
/// A page that lists what lies in the stores: search, order and retired ones come from the address, the list redraws itself when
/// somebody else saves, and retiring can be undone.
/// </summary>
/// <typeparam name="TLine">One line of the ledger.</typeparam>
public abstract class LedgerPage<TLine> : ComponentBase, IDisposable
{
    private IDisposable? ear;

    [SupplyParameterFromQuery(Name = "q")]
    public string? Query { get; set; }

    [SupplyParameterFromQuery(Name = "order")]
    public string? Order { get; set; }

    [SupplyParameterFromQuery(Name = "retired")]
    public bool Retired { get; set; }

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    /// <summary>Every line, retired ones too; null until the first answer.</summary>
    protected IReadOnlyList<TLine>? Lines { get; private set; }

    /// <summary><c>metric</c> or <c>inch</c>.</summary>
    protected string Units { get; private set; } = "metric";

    protected string Currency { get; private set; } = "GBP";

    /// <summary>The lines that match the search, in the chosen order.</summary>
    protected IReadOnlyList<TLine> Shown => [.. Ordered((Lines ?? []).Where(l => (Retired || !IsRetired(l)) && Matches(l)))];

    public void Dispose()
    {
        ear?.Dispose();
        GC.SuppressFinalize(this);
    }

    protected abstract Task<IReadOnlyList<TLine>> FetchAsync();

    /// <summary>The words that the search looks in.</summary>
    protected abstract string Words(TLine line);

    protected abstract string NameOf(TLine line);

    protected abstract bool IsRetired(TLine line);

    protected abstract IEnumerable<TLine> Ordered(IEnumerable<TLine> lines);

    /// <summary>Retires a line or brings it back.</summary>
    protected abstract Task<Saved> TurnAsync(TLine line, bool retired, string by);

    protected override async Task OnInitializedAsync()
    {
        var settings = await Settings.ReadAsync();
        (Units, Currency) = (settings.Units, settings.Currency);
        Lines = await FetchAsync();
        ear = News.Listen(n =>
        {
            if (n.Topic is News.Stores)
            {
                _ = InvokeAsync(async () =>
                {
                    Lines = await FetchAsync();
                    StateHasChanged();
                });
            }
        });
    }

    protected async Task TurnAsync(TLine line)
    {
        var retired = IsRetired(line);
        var by = await Who.NameAsync();
        var saved = await TurnAsync(line, !retired, by);
        if (!saved.Ok)
        {
            Snackbar.Add(saved.Words, Severity.Error);
            return;
        }

        Snackbar.Add(retired ? $"{NameOf(line)} is back in the stores." : $"{NameOf(line)} is retired. What uses it keeps it.", Severity.Normal, o =>
        {
            o.Action = "Undo";
            o.OnClick = _ => TurnAsync(line, retired, by);
        });
    }

    // every word must be somewhere, in any order
    private bool Matches(TLine line) =>
        (Query ?? "").Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word => Words(line).Contains(word, StringComparison.OrdinalIgnoreCase));
}
