using System.Globalization;
using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using Studio.Engine.Fit;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Calibration;

/// <summary>A thermometer's log of one pour, and what it teaches of the resin.</summary>
public sealed partial class LogPage(CuringBook book, Who who, IJSRuntime script) : IDisposable
{
    private readonly Complaints wrong = new();
    private readonly UnreadNumbers unread = new();
    private readonly CancellationTokenSource gone = new();
    private LogView? sheet;
    private LogForm form = new();
    private LogRefitted? refit;
    private IReadOnlyList<LogLineError> lineErrors = [];
    private string keptAs = "";
    private string refused = "";
    private string pasted = "";
    private string bare = "min";
    private string unit = "";
    private string understood = "";
    private string decided = "";
    private double? minutes;
    private double? celsius;
    private double? sensorHours = 48;
    private int sensor;
    private bool asks;
    private bool missing;
    private bool busy;
    private bool asked;
    private bool working;

    [Parameter]
    public int Id { get; set; }

    private bool Kept => form.Id > 0 && Written == keptAs;

    private string Written => Data.JsonColumn.Write(form);

    private string DraftKey => string.Create(CultureInfo.InvariantCulture, $"log-{Id}");

    private string Said => form.Readings.Count == 0 ? "No reading yet." : string.Create(CultureInfo.InvariantCulture,
        $"{form.Readings.Count} {(form.Readings.Count == 1 ? "reading" : "readings")}, from {form.Readings[0].AfterHours:0.#} to {form.Readings[^1].AfterHours:0.#} h after the pour, {form.Readings.Min(r => r.Celsius):0.#} to {form.Readings.Max(r => r.Celsius):0.#} °C.");

    public void Dispose()
    {
        gone.Cancel();
        gone.Dispose();
    }

    protected override Task OnParametersSetAsync() => LoadAsync();

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // what was typed before a connection was lost lies in the browser
        var first = !asked && sheet is not null; // the first render may come before the page has read
        asked = asked || first;
        if (first && await script.DraftAsync<LogForm>(DraftKey) is { } draft && draft.Id == form.Id && draft.Version == form.Version)
        {
            form = draft;
            StateHasChanged();
        }
    }

    private async Task LoadAsync()
    {
        sheet = await book.ReadAsync(Id);
        missing = sheet is null;
        form = sheet?.Form ?? new();
        keptAs = Written;
        sensor = form.SensorId ?? (sheet?.Sensors is [var first, ..] ? first.Id : 0);
    }

    private Task DraftAsync() => script.KeepDraftTextAsync(DraftKey, Written).AsTask();

    private async Task Add()
    {
        if (!unread.Refuse() && minutes is { } m && celsius is { } c)
        {
            form.Take([new(m / 60, c)]);
            (minutes, celsius, understood) = (null, null, "");
            await DraftAsync();
        }
    }

    private Task Read()
    {
        var read = LogText.Read(pasted, sheet!.Frame(bare == "h", unit));
        return TakeAsync(read);
    }

    private Task AsFahrenheit()
    {
        unit = "F";
        return Read();
    }

    private async Task TakeAsync(LogPaste read)
    {
        (understood, lineErrors, asks) = (read.Understood, read.Errors, read.AsksFahrenheit);
        if (!read.AsksFahrenheit)
        {
            form.Take(read.Readings);
            await DraftAsync();
        }
    }

    private async Task FromSensorAsync()
    {
        if (unread.Refuse())
        {
            return;
        }

        var taken = await book.TakeAsync(Id, sensor, sheet!.PouredAt.AddMinutes(-10), sheet.PouredAt.AddHours(sensorHours ?? 48));
        form.Take(taken.Readings);
        (form.SensorId, understood) = (taken.Readings.Count > 0 ? sensor : form.SensorId, taken.Words);
        await DraftAsync();
    }

    private Task Remove(LogReading reading)
    {
        form.Readings.Remove(reading);
        return DraftAsync();
    }

    private bool Check() => wrong.Take(() => new LogValidator().Validate(form));

    private async Task KeepAsync()
    {
        if (busy || !Check())
        {
            return;
        }

        busy = true;
        var saved = await book.SaveAsync(form, await who.NameAsync());
        (busy, refused) = (false, saved.Words);
        if (saved.Ok)
        {
            (refit, decided) = (null, "");
            await script.DropDraftAsync(DraftKey);
            await LoadAsync();
        }
    }

    private async Task RefitAsync()
    {
        (working, decided) = (true, "");
        try
        {
            refit = await book.RefitAsync(Id, gone.Token);
        }
        catch (OperationCanceledException)
        {
            return; // the page was left
        }
        catch (InvalidOperationException unsolved)
        {
            refit = new() { Refused = [unsolved.Message + " No answer is given."] };
        }

        working = false;
    }

    private async Task DecideAsync(bool accept)
    {
        busy = true;
        var saved = await book.DecideAsync(refit!, accept, await who.NameAsync());
        busy = false;
        decided = !saved.Ok ? saved.Words : accept ? "Taken over. Pours made from now on go by it; what was foretold before stays as it was." : "Left aside. It is kept with the resin, and nothing goes by it.";
    }
}
