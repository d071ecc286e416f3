using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine.Forecast;
using Studio.Resins;

namespace Studio.Heat;

/// <summary>Foretells the heat of a layer as it would be poured now: this room, these earlier pours, this lot.</summary>
public sealed class PourHeatBook(IDbContextFactory<StudioDb> factory, TimeProvider clock)
{
    /// <summary>A pour without a start is reckoned from the last of these [min], so that a page that waits does not ask anew with every beat.</summary>
    private const int EveryMinutes = 10;

    private const int MostKept = 64;
    private const int MostOthers = 2;

    // the same pour is asked by the page, by the paper and when it is kept; what comes out depends on nothing but the question
    private static readonly ConcurrentDictionary<string, Lazy<Task<ForecastOutcome>>> Worked = new(StringComparer.Ordinal);

    /// <summary>The question at this moment.</summary>
    /// <param name="startedAt">When it is poured [UTC]; null for now.</param>
    /// <param name="roomC">As the maker noted it [°C]; null: as it was last read.</param>
    /// <param name="lot">From the bottle.</param>
    public HeatAsk Asked(int pieceId, int layerId, DateTime? startedAt, double? roomC, string lot) => new(pieceId, layerId, startedAt ?? Lately(), roomC, lot.Trim());

    /// <summary>What is foretold; never without an answer, and if it is that nothing can be foretold and why.</summary>
    public async Task<PourHeat> AskAsync(HeatAsk ask, CancellationToken stop)
    {
        try
        {
            await using var db = await factory.CreateDbContextAsync(stop);
            var (question, why) = await new HeatAsking(db, ask).QuestionAsync();
            return question is null ? PourHeat.NotKnown(why) : question.Tell(await WorkAsync(question).WaitAsync(stop));
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException or System.Data.Common.DbException)
        {
            // a number that does not come out is not replaced by a guess
            return PourHeat.NotKnown($"The heat of this pour could not be worked out: {e.Message}");
        }
    }

    /// <summary>The same with what would help, each change tried on the model; takes some seconds.</summary>
    public async Task<PourHeat> AdviseAsync(PourHeat told, CancellationToken stop)
    {
        if (told is not { Question: { } q, Outcome: { } outcome, Offers: null })
        {
            return told;
        }

        var input = q.Plan.Advice with { Piece = q.Input, Others = await OthersAsync(q.Plan.Layers[^1]), Told = outcome };
        try
        {
            var advice = await Task.Run(() => HeatAdvice.Of(input, null, stop), stop);
            return told with { Offers = [.. advice.Layers.SelectMany(l => l.Offers).Select(o => new HeatOffer(o.Words, o.Kind, o.Value, o.Suffices))] };
        }
        catch (InvalidOperationException)
        {
            return told with { Offers = [] };
        }
    }

    private static Task<ForecastOutcome> WorkAsync(HeatQuestion question)
    {
        if (Worked.Count > MostKept)
        {
            Worked.Clear();
        }

        // three dimensions, for this one stops hands
        return Worked.GetOrAdd(question.Key, _ => new(() => Task.Run(() => HeatForecast.Run(question.Input, question.Plan.Advice.Mould, question.Plan.Advice.Resins, preview: false, CancellationToken.None)))).Value;
    }

    // the slowest in the stores that the sheet allows this deep
    private async Task<IReadOnlyList<OtherResin>> OthersAsync(HeatPlanLayer layer)
    {
        await using var db = await factory.CreateDbContextAsync();
        var found = (await db.Set<Resin>().AsNoTracking().Where(r => !r.Retired && r.Id != layer.Resin.Id).ToListAsync())
            .Where(r => r.DataSheet is not null && !(r.MaxPourMm < layer.ToMm - layer.FromMm))
            .OrderByDescending(r => r.PotLifeMinutes ?? r.CupGelMinutes ?? 0).Take(MostOthers);
        var others = new List<OtherResin>();
        foreach (var resin in found)
        {
            if ((await KnownCures.OfAsync(db, resin.Id, "")).State is { } state)
            {
                others.Add(new(resin.Name, HeatPlan.Forecast(resin, state)));
            }
        }

        return others;
    }

    private DateTime Lately()
    {
        var now = clock.GetUtcNow().UtcDateTime;
        return now.AddTicks(-(now.Ticks % (EveryMinutes * TimeSpan.TicksPerMinute)));
    }
}
