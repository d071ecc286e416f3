using System.Collections.Concurrent;
using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Cure;
using Studio.Engine.Fit;

namespace Studio.Resins;

/// <summary>What is known of a resin's cure when somebody asks.</summary>
/// <param name="Row">The row a person took over; null where it was fitted from the sheet just now and nobody has looked at it.</param>
/// <param name="State">The resin as known; null where it cannot be.</param>
/// <param name="RestsOn">A whole sentence for the page: what it rests on, or what is missing.</param>
public sealed record CureKnowledge(KnownCure? Row, FitState? State, string RestsOn)
{
    /// <summary>True when a person took it over: then the clock may go by it where it is stricter than the sheet.</summary>
    public bool Accepted => Row is not null;
}

/// <summary>Finds what is known of a resin's lot: its own accepted row, else the resin's, else a fit of its sheet (decision 017).</summary>
public static class KnownCures
{
    // a fit takes a second or so and depends on nothing but the sheet; records compare by content
    private static readonly ConcurrentDictionary<DataSheet, Lazy<Task<Outcome<ResinFit>>>> Fitted = new();

    // a state is kept as data, and its two dozen resins follow from it
    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<FitState, LikelyCure> Members = [];

    private const int MostKept = 200;

    /// <summary>The resins that a state holds for as good as its best; null where there is no state.</summary>
    public static LikelyCure? Likely(FitState? state) => state is null ? null : Members.GetValue(state, s => new([.. s.Members().Select(m => m.Kinetics)]));

    /// <summary>What is known of a lot; an empty lot asks for the resin as its sheet describes it.</summary>
    public static async Task<CureKnowledge> OfAsync(StudioDb db, int resinId, string lot)
    {
        if (await AcceptedAsync(db, resinId, lot) is { } row)
        {
            return Accepted(row);
        }

        return await db.Set<Resin>().AsNoTracking().SingleOrDefaultAsync(r => r.Id == resinId) is { } resin
            ? await OfSheetAsync(resin)
            : new(null, null, "There is no such resin in the stores.");
    }

    /// <summary>The newest row a person took over: the lot's, else the resin's; null where there is none.</summary>
    public static async Task<KnownCure?> AcceptedAsync(StudioDb db, int resinId, string lot)
    {
        lot = lot.Trim();
        var rows = await db.Set<KnownCure>().AsNoTracking()
            .Where(k => k.ResinId == resinId && k.Standing == KnownCure.Accepted && (k.Lot == lot || k.Lot == ""))
            .OrderByDescending(k => k.DecidedAt).ThenByDescending(k => k.Id).ToListAsync();
        return rows.Find(k => k.Lot == lot) ?? rows.FirstOrDefault();
    }

    /// <summary>Fits the sheet of a resin that nobody has looked at yet.</summary>
    public static async Task<CureKnowledge> OfSheetAsync(Resin resin)
    {
        if (resin.DataSheet is not { } sheet)
        {
            return new(null, null, $"How {resin.Name} warms itself is not known: {Missing(resin)}");
        }

        var fit = await FitAsync(sheet);
        return fit.Ok
            ? new(null, fit.Value.State, $"Fitted from the sheet of {resin.Name}; nobody has looked at the fit yet.")
            : new(null, null, $"The sheet of {resin.Name} cannot be fitted: {string.Join(" ", fit.Errors.Select(e => e.Message))}");
    }

    /// <summary>The fit of a sheet, worked out once for each content.</summary>
    public static Task<Outcome<ResinFit>> FitAsync(DataSheet sheet)
    {
        if (Fitted.Count > MostKept)
        {
            Fitted.Clear();
        }

        return Fitted.GetOrAdd(sheet, s => new(() => Task.Run(() => SheetFit.Run(s)))).Value;
    }

    private static CureKnowledge Accepted(KnownCure row) => new(row, row.State,
        (row.CuringLogId is null ? "Fitted from the data sheet" : row.Lot.Length > 0 ? $"Fitted to a thermometer in lot {row.Lot}" : "Fitted to a thermometer")
        + $", taken over by {row.DecidedBy}.");

    private static string Missing(Resin resin) => resin.PotLifeMinutes is null && resin.CupGelMinutes is null && resin.Times.All(t => t.DemouldHours is null)
        ? "its sheet in the stores gives no pot life, no gel time and no demoulding hours. Type one of them."
        : "the figures of its sheet are printed for temperatures too far apart. Look at the temperature beside the pot life.";
}
