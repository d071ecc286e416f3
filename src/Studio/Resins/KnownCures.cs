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
    /// <summary>True when a person took it over: then a pour keeps its kinetics, and demoulding and full cure may go by them where they are stricter than the sheet.</summary>
    public bool Accepted => Row is not null;

    /// <summary>A newer fit that nobody has decided on yet; it makes times later where it is slower, and nothing else (decision 022).</summary>
    public FitState? Proposed { get; init; }
}

/// <summary>Finds what is known of a resin's lot: its own accepted row, else the resin's, else a fit of its sheet (decisions 017 and 022).</summary>
public static class KnownCures
{
    // a fit takes a second or so and depends on nothing but the sheet; records compare by content
    private static readonly ConcurrentDictionary<DataSheet, Lazy<Task<Outcome<ResinFit>>>> Fitted = new();

    // a state is kept as data, and its two dozen resins follow from it
    private static readonly System.Runtime.CompilerServices.ConditionalWeakTable<FitState, LikelyCure> Members = [];

    private const int MostKept = 200;

    /// <summary>The resins that a state holds for as good as its best; null where there is no state.</summary>
    public static LikelyCure? Likely(FitState? state) => state is null ? null : Members.GetValue(state, s => new([.. s.Members().Select(m => m.Kinetics)]));

    /// <summary>The same, with those of a newer fit that nobody has decided on.</summary>
    public static LikelyCure? Likely(CureKnowledge known) =>
        known.Proposed is null ? Likely(known.State) : Likely(known.State) is { } own ? own with { Also = Likely(known.Proposed) } : Likely(known.Proposed);

    /// <summary>What is known of a lot; an empty lot asks for the resin as its sheet describes it.</summary>
    public static async Task<CureKnowledge> OfAsync(StudioDb db, int resinId, string lot) => (await OfAsync(db, new HashSet<(int, string)> { (resinId, lot) }))[(resinId, lot)];

    /// <summary>What is known of each lot, with two queries.</summary>
    public static async Task<IReadOnlyDictionary<(int ResinId, string Lot), CureKnowledge>> OfAsync(StudioDb db, IReadOnlySet<(int ResinId, string Lot)> lots)
    {
        var found = new Dictionary<(int, string), CureKnowledge>();
        if (lots.Count == 0)
        {
            return found;
        }

        var ids = lots.Select(l => l.ResinId).Distinct().ToList();
        var rows = (await db.Set<KnownCure>().AsNoTracking().Where(k => ids.Contains(k.ResinId) && k.Standing != KnownCure.Declined).ToListAsync()).ToLookup(k => k.ResinId);
        var accepted = lots.ToDictionary(l => l, l => Newest(rows[l.ResinId].Where(k => k.Standing == KnownCure.Accepted), l.Lot.Trim()));
        var unseen = accepted.Where(l => l.Value is null).Select(l => l.Key.ResinId).Distinct().ToList();
        var resins = unseen.Count == 0 ? [] : await db.Set<Resin>().AsNoTracking().Where(r => unseen.Contains(r.Id)).ToDictionaryAsync(r => r.Id);
        foreach (var (lot, row) in accepted)
        {
            found[lot] = row is not null ? Accepted(row)
                : resins.TryGetValue(lot.ResinId, out var resin) ? await OfSheetAsync(resin)
                : new(null, null, "There is no such resin in the stores.");
            if (Newest(rows[lot.ResinId].Where(k => k.Standing == KnownCure.Proposed && (row is null || k.At > row.At)), lot.Lot.Trim()) is { } proposed)
            {
                found[lot] = found[lot] with { Proposed = proposed.State };
            }
        }

        return found;
    }

    /// <summary>The newest row a person took over: the lot's, else the resin's; null where there is none.</summary>
    public static async Task<KnownCure?> AcceptedAsync(StudioDb db, int resinId, string lot)
    {
        lot = lot.Trim();
        return Newest(await db.Set<KnownCure>().AsNoTracking()
            .Where(k => k.ResinId == resinId && k.Standing == KnownCure.Accepted && (k.Lot == lot || k.Lot == "")).ToListAsync(), lot);
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

        return Fitted.GetOrAdd(sheet, s => new(() => Task.Run(() => Fit(s)))).Value;
    }

    private static KnownCure? Newest(IEnumerable<KnownCure> rows, string lot)
    {
        var newest = rows.OrderByDescending(k => k.DecidedAt ?? k.At).ThenByDescending(k => k.Id).ToList();
        return newest.Find(k => k.Lot == lot) ?? newest.Find(k => k.Lot.Length == 0);
    }

    // a sheet that the solver cannot follow is not known, and takes no other resin with it
    private static Outcome<ResinFit> Fit(DataSheet sheet)
    {
        try
        {
            return SheetFit.Run(sheet);
        }
        catch (InvalidOperationException fault)
        {
            return Outcome<ResinFit>.Refused([new("", fault.Message)]);
        }
    }

    private static CureKnowledge Accepted(KnownCure row) => new(row, row.State,
        (row.CuringLogId is null ? "Fitted from the data sheet" : row.Lot.Length > 0 ? $"Fitted to a thermometer in lot {row.Lot}" : "Fitted to a thermometer")
        + $", taken over by {row.DecidedBy}.");

    private static string Missing(Resin resin) => resin.PotLifeMinutes is null && resin.CupGelMinutes is null && resin.Times.All(t => t.DemouldHours is null)
        ? "its sheet in the stores gives no pot life, no gel time and no demoulding hours. Type one of them."
        : "the figures of its sheet are printed for temperatures too far apart. Look at the temperature beside the pot life.";
}
