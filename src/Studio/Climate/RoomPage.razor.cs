using System.Globalization;
using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Climate;

/// <summary>The room over the last days, its sensors, and every reading with what is doubted.</summary>
public sealed partial class RoomPage(RoomViewBook book, SensorBook sensorBook, SettingsBook settings, News news, Who who, ISnackbar snackbar, NavigationManager nav) : IDisposable
{
    private const int Most = 200;

    private RoomView? view;
    private IReadOnlyList<SensorNow> sensors = [];
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private SensorForm? form;
    private string? token;
    private string tokenFor = "";
    private string query = "";
    private int days = 3;
    private IDisposable? ear;

    private NavigationManager Nav => nav;

    private IReadOnlyList<RoomPoint> Shown =>
        [.. (view?.Places ?? []).SelectMany(p => p.Points).Where(Matches).OrderByDescending(p => p.At)];

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

    internal static string DoubtWords(string code) => code switch
    {
        ReadingDoubts.Spike => "a jump",
        ReadingDoubts.ClockOff => "its clock is off",
        ReadingDoubts.ErrorValue => "a sensor's error value",
        ReadingDoubts.OutOfRange => "no room is so",
        _ => code,
    };

    private async Task LoadAsync()
    {
        view = await book.ReadAsync(days);
        sensors = await sensorBook.ListAsync();
    }

    private Task DaysAsync(ChangeEventArgs e)
    {
        days = int.Parse((string)e.Value!, CultureInfo.InvariantCulture);
        return LoadAsync();
    }

    private void Begin(Sensor sensor) => form = new()
    {
        Id = sensor.Id,
        Name = sensor.Name,
        Place = sensor.Id == 0 ? RoomBook.CastingRoom : sensor.Place,
        Way = sensor.Way,
        Topic = sensor.Topic,
        CelsiusField = sensor.CelsiusField,
        HumidityField = sensor.HumidityField,
        Unit = sensor.Unit,
        CorrectionK = sensor.CorrectionK,
        EveryMinutes = sensor.EveryMinutes,
    };

    private async Task KeptAsync(SensorMade made)
    {
        (tokenFor, token, form) = (form?.Name ?? "", made.Token, null);
        await LoadAsync();
    }

    private async Task TokenAsync(Sensor sensor)
    {
        var made = await sensorBook.NewTokenAsync(sensor.Id, await who.NameAsync());
        (tokenFor, token) = (sensor.Name, made.Token);
        if (!made.Saved.Ok)
        {
            snackbar.Add(made.Saved.Words, Severity.Error);
        }
    }

    private async Task RemoveAsync(Sensor sensor)
    {
        var by = await who.NameAsync();
        var saved = await sensorBook.RemoveAsync(sensor.Id, by);
        snackbar.Add(saved.Ok ? $"{sensor.Name} is removed: its token no longer counts, its readings stay." : saved.Words, saved.Ok ? Severity.Normal : Severity.Error, o =>
        {
            o.Action = saved.Ok ? "Undo" : null;
            o.OnClick = _ => sensorBook.RestoreAsync(sensor.Id, by);
        });
    }

    private async Task CountAsync(RoomPoint point)
    {
        var saved = await book.CountAsync(point.Id, !point.Counts);
        snackbar.Add(saved.Ok ? $"{Say.Celsius(point.Celsius)} {(point.Counts ? "no longer counts" : "counts from now on")}." : saved.Words, saved.Ok ? Severity.Normal : Severity.Error, o =>
        {
            o.Action = saved.Ok ? "Undo" : null;
            o.OnClick = _ => book.CountAsync(point.Id, point.Counts);
        });
    }

    private bool Matches(RoomPoint p) => query.Split(' ', StringSplitOptions.RemoveEmptyEntries)
        .All(w => $"{p.Place} {p.By} {DoubtWords(p.Doubt)} {Say.Celsius(p.Celsius)}".Contains(w, StringComparison.OrdinalIgnoreCase));
}
