using Studio.Data;
using Studio.Engine.Cure;
using Studio.Resins;

namespace Studio.Clock;

/// <summary>What is known of the cure of the lots that were poured, read once: a gel waits for the slow ones of the resins that each may be, whether anybody took the fit over or not (decision 022).</summary>
public sealed class LotCures
{
    private readonly Dictionary<(int ResinId, string Lot), LikelyCure?> found = [];

    /// <summary>Reads the lots' fits with two queries, however many there are; a sheet that was not fitted yet is, which takes some tenths of a second once.</summary>
    public static async Task<LotCures> OfAsync(StudioDb db, IEnumerable<(int ResinId, string Lot)> lots)
    {
        var cures = new LotCures();
        foreach (var (lot, known) in await KnownCures.OfAsync(db, lots.ToHashSet()))
        {
            cures.found[lot] = KnownCures.Likely(known);
        }

        return cures;
    }

    /// <summary>The resins that a lot may be; null where nothing is fitted.</summary>
    public LikelyCure? Of(int resinId, string lot) => found.GetValueOrDefault((resinId, lot));

    /// <summary>A pour as the clock takes it, with what is known of its lot today and what was foretold of its own heat.</summary>
    internal ClockPour Told(ClockPour pour, int resinId, string lot, PourForetold? foretold) => pour with { Likely = Of(resinId, lot), Heat = Heat(foretold) };

    /// <summary>What was foretold of a pour's gel when it was made; null where it could not be.</summary>
    internal static HeatGel? Heat(PourForetold? foretold) => foretold is { GelLateHours: { } late, FilmLateHours: { } film } ? new(late, film) : null;
}
