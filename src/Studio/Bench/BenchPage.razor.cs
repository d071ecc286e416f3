using Microsoft.AspNetCore.Components;
using Microsoft.JSInterop;
using MudBlazor;
using Studio.Clock;
using Studio.Data;
using Studio.Heat;
using Studio.Pieces;
using Studio.Shell;
using Studio.SignIn;

namespace Studio.Bench;

/// <summary>The bench of one piece: one thing a screen, the next step always in the same corner.</summary>
public sealed partial class BenchPage(BenchBook book, PourHeatBook heats, News news, Who who, TimeProvider clock, IJSRuntime script, ISnackbar snackbar) : IDisposable
{
    private static readonly (int, string)[] Steps = [(1, "Prepare"), (2, "Level and room"), (3, "Weigh"), (4, "Pour")];
    private static readonly TimeSpan Beat = TimeSpan.FromSeconds(30);

    private readonly UnreadNumbers unread = new();
    private BenchView? sheet;
    private BenchLayer? layer;
    private PourForm form = new();
    private bool missing;
    private bool busy;
    private bool drafted;
    private bool atClock = true;
    private bool gone;
    private int batch = 1;
    private string wrong = "";
    private IDisposable? ear;
    private ITimer? timer;

    [Parameter]
    public int Id { get; set; }

    private bool Pouring => !atClock && layer is { Plan: not null } && sheet is { Stage: Making.Drawn or Making.Casting };

    private string DraftKey => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"pour-{form.LayerId}");

    private IReadOnlyList<Engine.Finding> Findings => sheet is { } s && layer is { } l ? BenchBook.Findings(s, l, form, form.StartedAt ?? s.Now, heat) : [];

    private bool Weighed => layer?.Plan is { } plan && Enumerable.Range(1, plan.Batches.Count).All(b => Cup(b) is { AddedAG: > 0, AddedBG: > 0 });

    private bool CanGo => form.Step switch
    {
        _ when !Pouring => true,
        _ when heat is { RunAway: true } => false, // before anything is mixed
        3 => batch < layer!.Plan!.Batches.Count ? Cup(batch) is { AddedAG: > 0, AddedBG: > 0 } : Weighed,
        4 => heat is not null && !Stopped && (form.Why.Trim().Length >= 3 || !Findings.Any(f => f.Severity == Engine.Severity.Stop)),
        _ => true,
    };

    private bool Stopped => Findings.Any(f => f.Severity == Engine.Severity.Stop && BenchBook.Final(f));

    // what the corner does when no pour is in hand; early demoulding asks for its reason elsewhere
    private string ClockAct => sheet switch
    {
        { Stage: Making.Drawn or Making.Casting } when layer is { Plan: not null } => "next-step",
        { Stage: Making.Casting, Times.Next.Kind: ActKind.Demould } => "demould",
        { Stage: Making.Demoulded, Times.Next.Kind: ActKind.Finish } => "finish",
        _ => "",
    };

    private string NextId => Pouring ? "next-step" : ClockAct;

    private string? NextLabel => (Pouring, form.Step) switch
    {
        (false, _) => ClockAct switch
        {
            "next-step" => $"Prepare layer {layer!.Order + 1}",
            "demould" => "It is out of its mould",
            "finish" => "It is finished",
            _ => null,
        },
        (_, 1) => "All laid ready",
        (_, 2) => "Level and warm enough",
        (_, 3) => batch < layer!.Plan!.Batches.Count ? $"To cup {batch + 1}" : "Weighed",
        _ => busy ? "Keeping…" : "Keep this pour",
    };

    private string Hint => Pouring && !CanGo
        ? heat is { RunAway: true } ? "Run-away: do not pour." : form.Step == 4 && heat is null ? "Working out the heat …" : form.Step == 3 ? "Type what the scale shows for A and for B." : "Answer the stop with a reason first."
        : "";

    public void Dispose()
    {
        gone = true;
        ear?.Dispose();
        timer?.Dispose();
        heatStop.Cancel();
        heatStop.Dispose();
    }

    protected override async Task OnInitializedAsync()
    {
        if (RendererInfo.IsInteractive)
        {
            ear = news.Listen(n =>
            {
                if (n.Topic is News.Room or News.Settings || (n.Topic is News.Pour or News.Piece && n.Id == Id))
                {
                    _ = InvokeAsync(LoadAsync);
                }
            });
            timer = clock.CreateTimer(state => _ = InvokeAsync(Tick), null, Beat, Beat);
        }

        await LoadAsync();
        atClock = sheet is null || layer is null || sheet.Times.Next.Kind is not (ActKind.PourFirst or ActKind.PourNext or ActKind.WindowClosed);
    }

    protected override async Task OnAfterRenderAsync(bool firstRender)
    {
        // asked once the page has read: the first render may come before that
        if (!drafted && layer is not null)
        {
            drafted = true;
            await TakeDraftAsync();
        }
    }

    private async Task LoadAsync()
    {
        if (gone)
        {
            return;
        }

        sheet = await book.ReadAsync(Id);
        missing = sheet is null;
        layer = sheet?.ToPour;
        if (layer is not null && form.LayerId != layer.LayerId)
        {
            // another tablet poured it, or this one did: the next layer begins with an empty sheet, and the clock is what matters now
            atClock = atClock || form.LayerId != 0;
            form = new() { PieceId = Id, LayerId = layer.LayerId, Lot = layer.Resin.LastLot, Set = BenchKeepsakes.Begin(layer) };
            batch = 1;
        }

        form.Set = layer is null ? null : Answered(form.Set);
        StateHasChanged();
        _ = AskHeatAsync();
    }

    private void Tick()
    {
        if (!gone && sheet is not null)
        {
            sheet = book.Look(sheet);
            StateHasChanged();
            _ = AskHeatAsync();
        }
    }

    private async Task TakeDraftAsync()
    {
        var kept = await script.DraftAsync<PourForm>(DraftKey);
        if (kept is not null && kept.LayerId == form.LayerId && kept.PieceId == Id)
        {
            form = kept;
            form.Set = Answered(form.Set);
            atClock = atClock && kept.Tally.Count == 0;
            batch = kept.Tally.Count > 0 ? kept.Tally[^1].Batch : 1;
            StateHasChanged();
            _ = AskHeatAsync();
        }
    }

    // what was typed stays; a keepsake that came into the layer since is asked for too
    private List<SetRow> Answered(List<SetRow>? typed) =>
        [.. BenchKeepsakes.Begin(layer!).Select(offered => typed?.Find(t => t.KeepsakeId == offered.KeepsakeId && t.Copy == offered.Copy) ?? offered)];

    private async Task KeepDraftAsync()
    {
        wrong = "";
        _ = AskHeatAsync();
        await script.KeepDraftAsync(DraftKey, form);
    }

    private async Task BackAsync()
    {
        if (form.Step == 3 && batch > 1)
        {
            batch--;
        }
        else if (form.Step == 1)
        {
            atClock = true;
        }
        else
        {
            form.Step--;
        }

        await KeepDraftAsync();
    }

    private async Task NextAsync()
    {
        if (!Pouring && ClockAct is "demould" or "finish")
        {
            await ActAsync(ClockAct == "demould");
            return;
        }

        if (!Pouring)
        {
            atClock = false;
            form.Step = 1;
        }
        else if (form.Step == 3 && batch < layer!.Plan!.Batches.Count)
        {
            batch++;
        }
        else if (form.Step < 4)
        {
            form.Step++;
            form.RoomC ??= form.Step == 4 ? FreshRoom() : null;
        }
        else
        {
            await PourAsync();
            return;
        }

        await KeepDraftAsync();
    }

    // a piece that failed has no pour in hand any more
    private Task FailedAsync()
    {
        atClock = true;
        return LoadAsync();
    }

    private async Task PourAsync()
    {
        if (busy || !CanGo || unread.Refuse())
        {
            return;
        }

        busy = true;
        var draft = DraftKey;
        var saved = await book.PourAsync(form, await who.NameAsync());
        busy = false;
        wrong = saved.Words;
        if (saved.Ok)
        {
            await script.DropDraftAsync(draft);
            atClock = true;
            form = new();
            await LoadAsync();
            snackbar.Add("The pour is kept. The clock runs.", Severity.Normal);
            foreach (var notice in saved.Notices)
            {
                snackbar.Add(notice, Severity.Warning);
            }
        }
    }

    private async Task ActAsync(bool demould)
    {
        if (busy)
        {
            return;
        }

        busy = true;
        var by = await who.NameAsync();
        var saved = await (demould ? book.DemouldAsync(Id, "", by) : book.FinishAsync(Id, "", by));
        (busy, wrong) = (false, saved.Words);
        if (saved.Ok)
        {
            var id = Id;
            snackbar.Add(demould ? "It is out of its mould." : "It is finished.", Severity.Normal, o =>
            {
                o.Action = "Undo";
                o.OnClick = async _ => await book.StepBackAsync(id, demould ? Making.Demoulded : Making.Finished, by);
            });
            await LoadAsync();
        }
    }

    // a reading older than half an hour is not this pour's
    private double? FreshRoom() => sheet?.Room is { } room && sheet.Now - room.At < TimeSpan.FromMinutes(30) ? room.Celsius : null;

    private Weighed Cup(int number) => Weighing.Of(layer!.Plan!.Batches[number - 1].PartAG, layer.Plan.Batches[number - 1].PartBG, form.Tally, number);
}
