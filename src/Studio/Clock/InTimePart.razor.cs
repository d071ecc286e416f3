using Studio.Data;
using Studio.Engine.Time;
using Studio.Settings;
using Studio.Shell;

namespace Studio.Clock;

/// <summary>The earliest day on the piece's page, reckoned anew when anything is kept that it rests on.</summary>
public sealed partial class InTimePart(PieceTimeBook book, SettingsBook settings, TimeProvider clock, News news) : IDisposable
{
    private TimeResult? time;
    private DateOnly today;
    private bool asked;
    private IDisposable? ear;

    public void Dispose() => ear?.Dispose();

    protected override async Task OnInitializedAsync()
    {
        ear = news.Listen(n => _ = InvokeAsync(async () =>
        {
            await LoadAsync();
            StateHasChanged();
        }));
        await LoadAsync();
    }

    private async Task LoadAsync()
    {
        today = DateOnly.FromDateTime(Say.Local(clock.GetUtcNow().UtcDateTime, await settings.ZoneAsync()));
        time = await book.OfPieceAsync(Session.Piece.Id);
        asked = true;
    }
}
