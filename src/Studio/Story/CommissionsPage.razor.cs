using Microsoft.AspNetCore.Components;
using Studio.Commissions;
using Studio.Data;

namespace Studio.Story;

/// <summary>The list of commissions.</summary>
public sealed partial class CommissionsPage : IDisposable
{
    private const int Step = 50;

    private readonly HashSet<string> stands = new(StringComparer.Ordinal);
    private CommissionList? list;
    private DateOnly today;
    private bool finished;
    private int take = Step;
    private int asked;
    private string find = "";
    private string written = "";
    private IDisposable? ear;

    [SupplyParameterFromQuery]
    private string? Find { get; set; }

    /// <summary>Keys of where they stand, with commas between; <c>all</c> shows finished ones too.</summary>
    [SupplyParameterFromQuery]
    private string? Show { get; set; }

    [Inject]
    private StoryBook Book { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private NavigationManager Nav { get; set; } = default!;

    private string Nothing => find.Trim() is { Length: > 0 } words ? $"Nothing here matches “{words}”." : "Nothing stands here just now.";

    public void Dispose() => ear?.Dispose();

    protected override void OnInitialized() => ear = News.Listen(n =>
    {
        if (n.Topic is News.Commission or News.Piece or News.Keepsake)
        {
            _ = InvokeAsync(async () =>
            {
                await LoadAsync();
                StateHasChanged();
            });
        }
    });

    // the address says what is shown, so that going back from a commission finds the list as it was left
    protected override async Task OnParametersSetAsync()
    {
        if (list is null || Address(Find, Show) != written)
        {
            (find, written, take) = (Find ?? "", Address(Find, Show), Step);
            var keys = (Show ?? "").Split(',', StringSplitOptions.RemoveEmptyEntries);
            stands.Clear();
            stands.UnionWith(keys.Where(k => Standing.All.Any(known => known.Key == k)));
            finished = keys.Contains("all", StringComparer.Ordinal);
            await LoadAsync();
        }
    }

    private static string Address(string? find, string? show) => $"{find ?? ""}\n{show ?? ""}";

    private static string Pressed(bool on) => on ? "true" : "false";

    private static string Counts(CommissionLine c) => (c.Pieces, c.Keepsakes) is (0, 0)
        ? "nothing yet"
        : string.Join(", ", new[] { Many(c.Pieces, "piece"), Many(c.Keepsakes, "keepsake") }.Where(s => s.Length > 0));

    private static string Many(int count, string word) => count switch
    {
        0 => "",
        1 => $"1 {word}",
        _ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{count} {word}s"),
    };

    // the newest question wins over a slower answer to an older one
    private async Task LoadAsync()
    {
        var mine = ++asked;
        today = await Book.TodayAsync();
        var answer = await Book.ListAsync(new CommissionQuestion(find, [.. stands], finished, take));
        if (mine == asked)
        {
            list = answer;
        }
    }

    private Task SearchAsync(string typed)
    {
        find = typed;
        return ShowAsync();
    }

    private Task ToggleAsync(string key)
    {
        finished = false;
        if (!stands.Remove(key))
        {
            stands.Add(key);
        }

        return ShowAsync();
    }

    private Task OpenOnesAsync()
    {
        stands.Clear();
        finished = false;
        return ShowAsync();
    }

    private Task AllAsync()
    {
        stands.Clear();
        finished = true;
        return ShowAsync();
    }

    private Task ShowAsync()
    {
        take = Step;
        string? show = stands.Count > 0 ? string.Join(',', stands.Order(StringComparer.Ordinal)) : finished ? "all" : null, words = find.Length > 0 ? find : null;
        written = Address(words, show);
        Nav.NavigateTo(Nav.GetUriWithQueryParameters(new Dictionary<string, object?>(StringComparer.Ordinal) { ["find"] = words, ["show"] = show }), replace: true);
        return LoadAsync();
    }

    private void OpenTheOne()
    {
        if (list is { Lines: [var only] })
        {
            Nav.NavigateTo($"/commissions/{only.Id}");
        }
    }

    private Task MoreAsync()
    {
        take += Step;
        return LoadAsync();
    }
}
