using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Data;
using Studio.Engine;
using Studio.Engine.Bubbles;
using Studio.Shell;
using Studio.Stores;

namespace Studio.Bench;

/// <summary>The pot a piece cures in, as the bench speaks of it.</summary>
/// <param name="Name">As the maker calls it.</param>
/// <param name="WorkingBar">Gauge pressure [bar].</param>
/// <param name="Plan">Whether it may be used today.</param>
public sealed record BenchPot(string Name, double? WorkingBar, PotPlan Plan)
{
    private const string Care = "Never above its plate, only with its relief valve working; let the pressure off slowly and wholly before a clamp is touched.";

    /// <summary>The pot that a piece is planned for; null for none. A retired one is not planned.</summary>
    internal static async Task<BenchPot?> OfAsync(StudioDb db, int? id, DateOnly today)
    {
        if (id is null || await db.Set<Pot>().AsNoTracking().SingleOrDefaultAsync(p => p.Id == id) is not { } pot)
        {
            return null;
        }

        var plan = PotBook.Plan(pot, today);
        return new(pot.Name, pot.WorkingBar, pot.Retired && plan.Planned
            ? new PotPlan(false, null, null, [new("pot-retired", Severity.Stop, "pot", "It is retired: choose another on the design's page.", "the stores")])
            : plan);
    }

    /// <summary>What to do with the pot for a layer.</summary>
    /// <param name="times">Its times once it is poured; null before.</param>
    /// <param name="zone">The studio's.</param>
    /// <param name="now">[UTC].</param>
    public Finding Of(LayerTimes? times, TimeZoneInfo zone, DateTime now) => Plan.Planned
        ? new("pot-planned", Severity.Note, "layer", $"{Until(times, zone, now)} {Care}", "the cure clock's gel; the pot's plate and manual go before this page")
        : new("pot-not-planned", Severity.Warn, "layer", $"No pressure for this piece: it is to cure in {Name}. {Plan.Findings[0].Message}", Plan.Findings[0].Source);

    private string Until(LayerTimes? times, TimeZoneInfo zone, DateTime now)
    {
        var under = $"Under pressure in {Name} at {PotWords.Bar(WorkingBar ?? 0)}";
        return times switch
        {
            null => $"{under} until the layer has gelled; once it is poured the clock says when.",
            { Gel.At: not { } } => $"{under} until the layer has gelled, or the bubbles come back; when that is, is not known. {times.Gel.RestsOn}",
            _ when times.Gel.Reached(now) => $"The layer has gelled by the clock, {Say.When(times.Gel.At.Value, zone, now)}; try a leftover in its cup before you let the pressure in {Name} off.",
            _ => $"{under} until at least {Say.When(times.Gel.At.Value, zone, now)}, or the bubbles come back.",
        };
    }
}
