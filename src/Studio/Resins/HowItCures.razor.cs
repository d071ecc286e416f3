using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Engine.Cure;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Resins;

/// <summary>Fits the sheet that is being typed, after a pause, without holding the page up.</summary>
public sealed partial class HowItCures(CureBook book, SettingsBook settings, News news, TimeProvider clock, Who who, ISnackbar snackbar) : IDisposable
{
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(600);

    private DataSheet? sheet;
    private DataSheet? kept;
    private CureShown? shown;
    private IReadOnlyList<CureRow> rows = [];
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private CancellationTokenSource? running;
    private IDisposable? ear;
    private bool working;
    private bool busy;
    private string refused = "";

    /// <summary>The form as typed so far.</summary>
    [Parameter, EditorRequired]
    public ResinForm Sheet { get; set; } = default!;

    [Parameter]
    public int ResinId { get; set; }

    private DateTime Now => clock.GetUtcNow().UtcDateTime;

    private bool same => shown is not null && kept == shown.Sheet;

    private bool inUse => same && rows.Any(r => r is { InUse: true, Lot: "", PourId: null, EarlierSheet: false });

    public void Dispose()
    {
        running?.Cancel();
        running?.Dispose();
        ear?.Dispose();
    }

    protected override async Task OnInitializedAsync()
    {
        zone = await settings.ZoneAsync();
        await LoadAsync();
        ear = news.Listen(n =>
        {
            if (n.Topic is News.Stores)
            {
                _ = InvokeAsync(async () =>
                {
                    await LoadAsync();
                    StateHasChanged();
                });
            }
        });
    }

    protected override void OnParametersSet() => Look();

    // asked for by the page at every redraw: only another sheet starts another fit
    private void Look()
    {
        var typed = Sheet.ToResin().DataSheet;
        if (typed == sheet)
        {
            return;
        }

        (sheet, refused) = (typed, "");
        running?.Cancel();
        running?.Dispose();
        (running, working) = (null, false);
        if (typed is null)
        {
            shown = null;
            return;
        }

        (running, working) = (new(), true);
        _ = FitAsync(typed, running.Token);
    }

    private async Task FitAsync(DataSheet typed, CancellationToken stop)
    {
        try
        {
            await Task.Delay(Pause, clock, stop);
            var fitted = await Task.Run(() => CureLook.RunAsync(typed, stop), stop);
            await InvokeAsync(() =>
            {
                if (sheet == typed)
                {
                    (shown, working) = (fitted, false);
                    StateHasChanged();
                }
            });
        }
        catch (OperationCanceledException)
        {
            // somebody typed on, or left
        }
        catch (ObjectDisposedException)
        {
            // the page was left while it was being drawn
        }
    }

    private async Task LoadAsync()
    {
        if (ResinId > 0)
        {
            (rows, kept) = (await book.HistoryAsync(ResinId), await book.KeptSheetAsync(ResinId));
        }
    }

    private Task DecideAsync(bool accept) => ActAsync(by => book.DecideSheetAsync(ResinId, shown!.Sheet, accept, by), accept ? "Taken over for pours from now on." : "Left aside. It stays in the list below.");

    private Task ChangeAsync(CureRow row) => ActAsync(
        by => book.DecideAsync(row.Id, row.Standing != KnownCure.Accepted, by), row.Standing == KnownCure.Accepted ? "Let go of. Pours made already keep what they were made with." : "Taken over for pours from now on.");

    private async Task ActAsync(Func<string, Task<Saved>> act, string done)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        var saved = await act(await who.NameAsync());
        (busy, refused) = (false, saved.Words);
        if (saved.Ok)
        {
            snackbar.Add(done, Severity.Normal);
            await LoadAsync();
        }
    }
}
