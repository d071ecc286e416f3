using System.Globalization;
using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Settings;
using Studio.SignIn;

namespace Studio.Moulds;

/// <summary>The water checks of one kept mould.</summary>
public sealed partial class WaterPart
{
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private double? height;
    private double? water;
    private string? wrongHeight;
    private string? wrongWater;
    private string refused = "";
    private bool weighed;
    private bool busy;

    /// <summary>The kept mould; its checks are changed here, what else is typed in it is left alone.</summary>
    [Parameter, EditorRequired]
    public MouldForm Form { get; set; } = default!;

    /// <summary>Height of the rim as the measures say; null while they make no mould.</summary>
    [Parameter]
    public double? RimMm { get; set; }

    [Parameter]
    public string Units { get; set; } = "metric";

    [Parameter]
    public EventCallback Changed { get; set; }

    [Inject]
    private MouldBook Book { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    private WaterLook Look => Book.Water(Form);

    private bool Scaled => Form.VolumeFactor != 1 || Form.VolumeSpreadPercent is not null;

    private DateTime Now => Clock.GetUtcNow().UtcDateTime;

    protected override async Task OnInitializedAsync() => zone = await Settings.ZoneAsync();

    private static string Factor(double factor) => factor.ToString("0.000", CultureInfo.InvariantCulture);

    private static string Percent(double percent) => percent.ToString("0.0", CultureInfo.InvariantCulture) + "\u00a0%";

    private static string Signed(double percent) => percent.ToString("+0.0;−0.0;0.0", CultureInfo.InvariantCulture) + "\u00a0%";

    private bool Check()
    {
        wrongHeight = height is > 0 ? null : "Say up to which height it was filled.";
        wrongWater = water is > 0 ? null : "Say how much water went in.";
        return (wrongHeight ?? wrongWater) is null;
    }

    private async Task RecordAsync()
    {
        if (Check() && await TryAsync(by => Book.CheckAsync(Form, height!.Value, water!.Value, by)))
        {
            (height, water) = (null, null);
        }
    }

    private async Task DropAsync(WaterRow row)
    {
        if (await TryAsync(by => Book.DropCheckAsync(Form, row.Number, by)))
        {
            Undoable("That check is taken out.", by => Book.BringCheckBackAsync(Form, row.Number, row.Check, by));
        }
    }

    private Task ScaleAsync() => RescaleAsync(by => Book.ScaleAsync(Form, by), "The volumes are scaled.");

    private Task TakeBackAsync() => RescaleAsync(by => Book.SetScaleAsync(Form, 1, null, by), "The volumes are those of the measures again.");

    private async Task RescaleAsync(Func<string, Task<Saved>> change, string words)
    {
        var (factor, spread) = (Form.VolumeFactor, Form.VolumeSpreadPercent);
        if (await TryAsync(change))
        {
            Undoable(words, by => Book.SetScaleAsync(Form, factor, spread, by));
        }
    }

    private void Undoable(string words, Func<string, Task<Saved>> undo) => Snackbar.Add(words, MudBlazor.Severity.Normal, o =>
    {
        o.Action = "Undo";
        o.OnClick = _ => InvokeAsync(() => TryAsync(undo));
    });

    private async Task<bool> TryAsync(Func<string, Task<Saved>> change)
    {
        if (busy)
        {
            return false;
        }

        busy = true;
        var saved = await change(await Who.NameAsync());
        (busy, refused) = (false, saved.Words);
        await Changed.InvokeAsync();
        return saved.Ok;
    }
}
