using Studio.Heat;

namespace Studio.Bench;

/// <summary>The heat of the pour in hand, worked out beside the page.</summary>
public sealed partial class BenchPage
{
    private PourHeat? heat;
    private HeatAsked? asked;
    private CancellationTokenSource heatStop = new();

    // asks anew when anything that the heat depends on has changed; whoever asks later wins
    private async Task AskHeatAsync()
    {
        if (gone || !RendererInfo.IsInteractive || sheet is not { } s || layer is not { Plan: { } plan } l || form.LayerId != l.LayerId)
        {
            return;
        }

        var mine = new HeatAsked(form.Asked(heats), s.Room?.Id, plan.FromMm, plan.ToMm, l.Resin.Id, s.Pours.Sum(p => p.Version));
        if (mine == asked)
        {
            return;
        }

        // only time has gone by: what was said still stands until the new answer is there
        heat = asked is not null && asked with { Ask = mine.Ask } == mine && asked.Ask with { StartedAt = mine.Ask.StartedAt } == mine.Ask ? heat : null;
        asked = mine;
        var stop = Anew();
        try
        {
            await ToldAsync(mine, await heats.AskAsync(mine.Ask, stop));
            if (heat is { Findings.Count: > 0 } told && mine == asked)
            {
                await ToldAsync(mine, await heats.AdviseAsync(told, stop));
            }
        }
        catch (OperationCanceledException)
        {
            // another question took its place, or the page was left
        }
    }

    private Task ToldAsync(HeatAsked mine, PourHeat told) => InvokeAsync(() =>
    {
        if (!gone && mine == asked)
        {
            heat = told;
            StateHasChanged();
        }
    });

    private CancellationToken Anew()
    {
        heatStop.Cancel();
        heatStop.Dispose();
        heatStop = new();
        return heatStop.Token;
    }

    // everything that an answer depends on and this page can see
    private sealed record HeatAsked(HeatAsk Ask, int? ReadingId, double FromMm, double ToMm, int ResinId, int PourVersions);
}
