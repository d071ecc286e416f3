using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Rendering;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>The ledger of all keepsakes.</summary>
public sealed partial class KeepsakesPage : IDisposable
{
    private const int Step = 60;

    private static readonly (string Key, string Label)[] Filters = [("", "All"), (CustodyWhereabouts.Here, "Here"), (CustodyWhereabouts.InPiece, "In a piece"), (CustodyWhereabouts.Returned, "Gone home"), (CustodyWhereabouts.Lost, "Lost"), (CustodyWhereabouts.Withdrawn, "Crossed out")];

    private LedgerView? ledger;
    private IDisposable? ear;
    private string search = "";
    private string custody = "";
    private int most = Step;
    private int asked;
    private DateOnly today;

    [SupplyParameterFromQuery(Name = "q")]
    private string? Query { get; set; }

    [SupplyParameterFromQuery(Name = "custody")]
    private string? QueryCustody { get; set; }

    [Inject]
    private KeepsakeBook Book { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    public void Dispose() => ear?.Dispose();

    protected override async Task OnInitializedAsync()
    {
        (search, custody) = (Query ?? "", QueryCustody ?? "");
        today = DateOnly.FromDateTime(Say.Local(Clock.GetUtcNow().UtcDateTime, await Settings.ZoneAsync()));
        await LoadAsync();
        ear = News.Listen(n =>
        {
            if (n.Topic is News.Keepsake)
            {
                _ = InvokeAsync(async () =>
                {
                    await LoadAsync();
                    StateHasChanged();
                });
            }
        });
    }

    private async Task LoadAsync() => ledger = await Book.LedgerAsync(search, custody, most);

    // only the newest of several quick keystrokes asks the database
    private async Task SearchAsync(string typed)
    {
        search = typed;
        var mine = ++asked;
        await Task.Delay(TimeSpan.FromMilliseconds(200), Clock);
        if (mine == asked)
        {
            await AskAsync();
        }
    }

    private Task FilterAsync(string key)
    {
        custody = key;
        return AskAsync();
    }

    private async Task AskAsync()
    {
        most = Step;
        await LoadAsync();
        StateHasChanged();
        Nav.NavigateTo(Nav.GetUriWithQueryParameters(new Dictionary<string, object?>(StringComparer.Ordinal) { ["q"] = search.Length > 0 ? search : null, ["custody"] = custody.Length > 0 ? custody : null }), replace: true);
    }

    private Task MoreAsync()
    {
        most += Step;
        return LoadAsync();
    }

    private RenderFragment CustodyTag(LedgerLine k) => b =>
    {
        if (k.Custody != CustodyWhereabouts.Here)
        {
            Tag(b, k.Custody == CustodyWhereabouts.InPiece ? "tag good" : "tag", CustodyWords.Label(k.Custody));
        }
        else if (k.ReturnBy is { } day)
        {
            Tag(b, day < today ? "tag late" : "tag due", $"Back by {Say.Day(day, today)}");
        }
    };

    private static void Tag(RenderTreeBuilder b, string look, string words)
    {
        b.OpenElement(0, "span");
        b.AddAttribute(1, "class", look);
        b.AddContent(2, words);
        b.CloseElement();
    }
}
