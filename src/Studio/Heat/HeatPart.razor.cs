using Studio.Engine.Forecast;
using Studio.Engine.Layers;
using Studio.Pieces;

namespace Studio.Heat;

/// <summary>The heat of a design: a first look at once, the interval a moment later, then advice; a change drops what is under way.</summary>
public sealed partial class HeatPart(HeatBook book) : IDisposable
{
    // while letters still come there is nothing to work out; the browser's clock, not the studio's
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(400);
    private static readonly Dictionary<string, object?> DayId = new(StringComparer.Ordinal) { ["id"] = "heat-day" };

    private CancellationTokenSource? under;
    private HeatReady? ready;
    private ForecastOutcome? told;
    private AdviceOutcome? advice;
    private IReadOnlyList<HeatSight> sights = [];
    private string of = "";
    private string working = "";
    private string why = "";
    private string model = "";
    private double share;
    private bool stale;
    private bool advising;
    private bool gone;

    private IReadOnlyList<string> Colours => [.. Session.Piece.Layers.Select(l => l.Colour)];

    public void Dispose()
    {
        gone = true;
        Session.Changed -= Again;
        under?.Cancel();
        under?.Dispose();
    }

    protected override void OnInitialized() => Session.Changed += Again;

    protected override void OnAfterRender(bool firstRender)
    {
        if (firstRender)
        {
            Again();
        }
    }

    private void Again()
    {
        if (gone || (DesignText.Write(Session.Piece) is var now && now == of))
        {
            return;
        }

        under?.Cancel();
        under?.Dispose();
        under = new();
        stale = told is not null;
        _ = RunAsync(now, under.Token);
    }

    private async Task RunAsync(string design, CancellationToken stop)
    {
        try
        {
            Say("Working out the heat …");
            await Task.Delay(Pause, stop);
            if (Session.Figures.Result is not { Layers.Count: > 0 } result || result.Layers.Count != Session.Piece.Layers.Count)
            {
                Done(Session.Piece.Layers.Count == 0 ? "There is no layer yet." : "The design has fields that need another look first.");
                return;
            }

            await WorkAsync(Copy(design), result, stop);
            of = design;
        }
        catch (OperationCanceledException)
        {
            // a newer design is being worked out
        }
        catch (InvalidOperationException unsolved)
        {
            Done(unsolved.Message + " No answer is given; go by the data sheet.");
        }
    }

    private async Task WorkAsync(Piece piece, LayersResult result, CancellationToken stop)
    {
        Say("Looking up how the resins cure …");
        ready = await book.ReadyAsync(piece, result, Session.Desk);
        if (ready.Plan is not { } plan)
        {
            Done(ready.Why);
            return;
        }

        stop.ThrowIfCancellationRequested();
        Show(plan, await HeatBook.FirstLookAsync(plan, stop));
        Say("Working out the interval …");
        var whole = await HeatBook.WholeAsync(plan, stop);
        stop.ThrowIfCancellationRequested();
        Show(plan, whole);
        (advice, advising) = (null, sights.Any(s => s.Band is "hot" or "runaway"));
        working = "";
        StateHasChanged();
        if (advising)
        {
            var progress = new Progress<double>(s => _ = InvokeAsync(() =>
            {
                share = s;
                StateHasChanged();
            }));
            advice = await HeatBook.AdviseAsync(plan, whole, progress, stop);
            advising = false;
            StateHasChanged();
        }
    }

    private void Show(HeatPlan plan, ForecastOutcome outcome)
    {
        (told, stale, why, model) = (outcome, false, "", $"By {outcome.Model}.");
        sights = [.. plan.Layers.Select((l, i) => HeatSight.Of(l.Name, outcome.Layers[i], l.Limits))];
        advice = null;
        StateHasChanged();
    }

    private void Say(string words)
    {
        if (!gone)
        {
            working = words;
            StateHasChanged();
        }
    }

    private void Done(string words)
    {
        if (!gone)
        {
            (working, why, told, sights, advice, stale) = ("", words, null, [], null, false);
            StateHasChanged();
        }
    }

    // the page goes on changing its own; what is worked out is a copy
    private Piece Copy(string design)
    {
        var copy = new Piece { Id = Session.Piece.Id, Mould = Session.Piece.Mould, MouldId = Session.Piece.MouldId };
        DesignText.Lay(design, copy, Session.Desk.Moulds, Session.Desk.Resins);
        return copy;
    }

    private void Plan(Func<PieceRoomPlan, PieceRoomPlan> change) => Session.Do("room-plan", () =>
    {
        var next = change(Session.Piece.RoomPlan ?? new PieceRoomPlan(null));
        Session.Piece.RoomPlan = next is { DayC: null, NightC: null, PouredC: null } ? null : next;
    });

    private void Wait(PieceLayer layer, double? hours) => Session.Do($"wait{layer.Id}", () => layer.WaitHours = hours);

    private static bool CanTake(AdviceOffer offer) => offer.Kind is AdviceOffer.Thinner or AdviceOffer.TwoPours or AdviceOffer.CoolerRoom or AdviceOffer.LongerWait;

    private void Take(int index, AdviceOffer offer)
    {
        var layer = Session.Piece.Layers[index];
        switch (offer.Kind)
        {
            case AdviceOffer.Thinner:
                Session.Do("", () => (layer.ThicknessMm, layer.ToMm, layer.ResinMl) = (offer.Value, null, null));
                break;
            case AdviceOffer.TwoPours:
                Session.Insert(index);
                Session.Do("", () => Session.Piece.Layers[index + 1].WaitHours = offer.Value);
                break;
            case AdviceOffer.LongerWait:
                var waited = ready!.Plan!.Layers[index].PouredAtHours - ready.Plan.Layers[index - 1].PouredAtHours;
                Session.Do("", () => layer.WaitHours = Math.Round(waited + offer.Value, 1));
                break;
            case AdviceOffer.CoolerRoom:
                var day = ready!.Plan!.Input.Room.Max(r => r.Celsius) - offer.Value;
                Session.Do("", () => Session.Piece.RoomPlan = (Session.Piece.RoomPlan ?? new PieceRoomPlan(null)) with { DayC = day, NightC = Session.Piece.RoomPlan?.NightC - offer.Value });
                break;
            default:
                throw new InvalidOperationException($"Nothing is known of the offer '{offer.Kind}'.");
        }
    }
}
