using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Climate;

/// <summary>The room's temperature and a way to log it.</summary>
public sealed partial class RoomForm(RoomBook book, SettingsBook settings, News news, Who who, TimeProvider clock, ISnackbar snackbar) : IDisposable
{
    private static readonly Dictionary<string, object?> Key = new(StringComparer.Ordinal) { ["id"] = "room-celsius" };

    private readonly UnreadNumbers unread = new();
    private readonly string titleId = "room-" + Guid.NewGuid().ToString("N")[..8];
    private RoomNow? room;
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private IReadOnlyList<string> silent = [];
    private double? celsius;
    private double? humidity;
    private string place = RoomBook.CastingRoom;
    private string words = "";
    private bool ask;
    private bool busy;
    private bool touched;
    private IDisposable? ear;

    /// <summary>Told after a reading is kept.</summary>
    [Parameter]
    public EventCallback<RoomNow> Logged { get; set; }

    private TimeProvider Clock => clock;

    private bool Stale => room is not null && clock.GetUtcNow().UtcDateTime - room.At > TimeSpan.FromHours(RoomBook.StaleHours);

    public void Dispose() => ear?.Dispose();

    protected override async Task OnInitializedAsync()
    {
        zone = await settings.ZoneAsync();
        await LoadAsync();
        ear = news.Listen(n =>
        {
            if (n.Topic is News.Room)
            {
                _ = InvokeAsync(async () =>
                {
                    await LoadAsync();
                    StateHasChanged();
                });
            }
        });
    }

    private async Task LoadAsync()
    {
        room = await book.NowAsync();
        silent = await book.SilentAsync();
        if (!touched)
        {
            celsius = room?.Celsius;
            place = room?.Place is { Length: > 0 } p ? p : RoomBook.CastingRoom;
        }
    }

    private void Step(double by) => Take(RoomBook.Step(celsius, by));

    private void Take(double? value)
    {
        (celsius, touched, words, ask) = (value, true, "", false);
    }

    private Task LogAsync() => LogAsync(sure: false);

    private Task SureAsync() => LogAsync(sure: true);

    private async Task LogAsync(bool sure)
    {
        if (busy || unread.Refuse())
        {
            return;
        }

        busy = true;
        var saved = await book.LogAsync(new RoomEntry(celsius, humidity, place, sure), await who.NameAsync());
        (busy, words, ask) = (false, saved.Words, saved.Ask);
        if (saved.Ok)
        {
            touched = false;
            humidity = null;
            await LoadAsync();
            Offer(saved.Id);
            await Logged.InvokeAsync(room!);
        }
    }

    private void Offer(int id) => snackbar.Add($"{Say.Celsius(room?.Celsius ?? 0)} is logged.", Severity.Normal, o =>
    {
        o.Action = "Undo";
        o.OnClick = async _ => await book.WithdrawAsync(id);
    });
}
