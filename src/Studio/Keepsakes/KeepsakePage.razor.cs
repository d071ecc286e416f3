using Microsoft.AspNetCore.Components;
using MudBlazor;
using Studio.Data;
using Studio.Engine.Custody;
using Studio.Settings;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Keepsakes;

/// <summary>One keepsake: what a scanned label opens.</summary>
public sealed partial class KeepsakePage : IDisposable
{
    private KeepsakeView? view;
    private IReadOnlyList<string> places = [];
    private TimeZoneInfo zone = TimeZoneInfo.Utc;
    private IDisposable? ear;
    private PhotoTray? tray;
    private const string Right = "right";

    private ChainLine? righting;
    private bool loaded;
    private bool saving;
    private string shown = "";
    private string act = "";
    private string slip = "";
    private string trouble = "";
    private DateOnly today;

    [Parameter]
    public string Number { get; set; } = "";

    [Inject]
    private KeepsakeBook Book { get; set; } = default!;

    [Inject]
    private SettingsBook Settings { get; set; } = default!;

    [Inject]
    private TimeProvider Clock { get; set; } = default!;

    [Inject]
    private News News { get; set; } = default!;

    [Inject]
    private ISnackbar Snackbar { get; set; } = default!;

    [Inject]
    private Who Who { get; set; } = default!;

    public void Dispose() => ear?.Dispose();

    protected override void OnInitialized() => ear = News.Listen(n =>
    {
        if (n.Topic is News.Keepsake && n.Id == view?.Keepsake.Id)
        {
            _ = InvokeAsync(async () =>
            {
                await LoadAsync();
                StateHasChanged();
            });
        }
    });

    protected override async Task OnParametersSetAsync()
    {
        if (shown == Number)
        {
            return;
        }

        shown = Number;
        Leave();
        places = (await Settings.ReadAsync()).Places;
        zone = await Settings.ZoneAsync();
        today = DateOnly.FromDateTime(Say.Local(Clock.GetUtcNow().UtcDateTime, zone));
        var parsed = EntryNumber.Parse(Number);
        slip = parsed.Ok ? "" : parsed.Errors[0].Message;
        await LoadAsync();
    }

    private static IEnumerable<(string Name, string Value)> Facts(KeepsakeView v)
    {
        var k = v.Keepsake;
        yield return ("Made of", KeepsakeKinds.Label(k.Kind));
        yield return ("How many", k.Count.ToString(System.Globalization.CultureInfo.InvariantCulture));
        yield return ("Mass", k.MassG is { } g ? Say.Grams(g) : "not weighed");
        var condition = string.Join(". ", new[] { string.Join(", ", k.ConditionWords), k.ConditionNote }.Where(t => t.Length > 0));
        yield return ("Condition", condition.Length > 0 ? condition : "not noted");
        yield return ("Came", k.Method);
        if (k.DepositorName.Length > 0)
        {
            yield return ("Brought by", $"{k.DepositorName} ({k.DepositorAuthority})");
        }

        if (k.Packing.Length > 0)
        {
            yield return ("Packed in", k.Packing);
        }
    }

    private async Task LoadAsync()
    {
        view = await Book.ViewAsync(Number);
        loaded = true;
    }

    private string PhotoAlt(KeepsakePhoto p) => $"Photograph of {view!.Keepsake.Description}{(p.TakenAt.Length > 0 ? ", taken " + p.TakenAt : "")}";

    private string When(DateTime at) => Say.When(at, zone, Clock.GetUtcNow().UtcDateTime);

    private static string Part(Keepsake k) => k is { PartCount: null, PartG: null } ? "" : $", at most {CustodyWords.Amount(k.PartCount, k.PartG)}";

    private void Begin(string chosen) => (act, trouble) = (chosen, "");

    private void Leave() => (act, trouble) = ("", "");

    private async Task DoneAsync(string said)
    {
        Leave();
        await LoadAsync();
        var undo = view?.Now.UndoId;
        Snackbar.Add(said, Severity.Normal, o =>
        {
            if (undo is { } id && view!.Chain[^1].Id == id)
            {
                o.Action = "Take it back";
                o.OnClick = _ => InvokeAsync(() => UndoAsync(id));
            }
        });
    }

    private async Task UndoAsync(int eventId)
    {
        if (saving)
        {
            return;
        }

        saving = true;
        var saved = await Book.UndoAsync(view!.Keepsake.Id, view.Keepsake.Version, eventId, await Who.NameAsync());
        await LoadAsync();
        (trouble, saving) = (saved.Words, false);
        StateHasChanged();
    }

    private async Task KeepPhotosAsync()
    {
        if (saving || tray is null)
        {
            return;
        }

        saving = true;
        var (ids, lost) = await tray.SettleAsync();
        var saved = await Book.AddPhotosAsync(view!.Keepsake.Id, ids, await Who.NameAsync());
        saving = false;
        if (!saved.Ok)
        {
            trouble = saved.Words;
            return;
        }

        await LoadAsync();
        Leave();
        trouble = lost > 0 ? "Some photographs were not kept; take or choose them again." : "";
    }
}
