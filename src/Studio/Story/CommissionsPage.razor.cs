using Microsoft.AspNetCore.Components;
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
    private IDisposable? ear;

    [SupplyParameterFromQuery]
    private string? Find { get; set; }

    [Inject]
    private StoryBook Book { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    private string Nothing => (Find ?? "").Trim() is { Length: > 0 } words ? $"Nothing here matches “{words}”." : "Nothing stands here just now.";

    public void Dispose() => ear?.Dispose();

    protected override async Task OnInitializedAsync()
    {
        finished = Find is { Length: > 0 };
        await LoadAsync();
        ear = News.Listen(n =>
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
    }

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
        var answer = await Book.ListAsync(new CommissionQuestion(Find ?? "", [.. stands], finished, take));
        if (mine == asked)
        {
            list = answer;
        }
    }

    private Task SearchAsync(string typed)
    {
        (Find, take) = (typed, Step);
        return LoadAsync();
    }

    private Task ToggleAsync(string key)
    {
        take = Step;
        if (!stands.Remove(key))
        {
            stands.Add(key);
        }

        return LoadAsync();
    }

    private Task OpenOnesAsync() => ShowAsync(alsoFinished: false);

    private Task AllAsync() => ShowAsync(alsoFinished: true);

    private Task ShowAsync(bool alsoFinished)
    {
        stands.Clear();
        (finished, take) = (alsoFinished, Step);
        return LoadAsync();
    }

    private Task MoreAsync()
    {
        take += Step;
        return LoadAsync();
    }
}
