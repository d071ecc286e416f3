using Studio.Engine.Custody;

namespace Studio.Keepsakes;

/// <summary>A keepsake's entries as the engine reads them.</summary>
public static class CustodyLog
{
    /// <summary>What is true after these entries; one that is not saved yet counts as the newest.</summary>
    public static CustodyState Read(IEnumerable<KeepsakeEvent> log) => CustodyLedger.Read(Entries(log));

    /// <summary>The entries for the engine.</summary>
    public static IReadOnlyList<CustodyEntry> Entries(IEnumerable<KeepsakeEvent> log) =>
        [.. log.Select(e => e.Id == 0 ? e.Entry with { Id = int.MaxValue } : e.Entry)];

    /// <summary>The entries that count: neither taken back nor the taking back itself, in order.</summary>
    public static IReadOnlyList<KeepsakeEvent> Standing(IReadOnlyCollection<KeepsakeEvent> log)
    {
        ArgumentNullException.ThrowIfNull(log);
        var undone = log.Where(e => e.Kind == CustodyKind.Undone).Select(e => e.RefId).ToHashSet();
        return [.. log.Where(e => e.Kind != CustodyKind.Undone && !undone.Contains(e.Id)).OrderBy(e => e.Id)];
    }

    /// <summary>Lets the record follow from its log.</summary>
    public static void Follow(Keepsake keepsake, IEnumerable<KeepsakeEvent> log)
    {
        ArgumentNullException.ThrowIfNull(keepsake);
        var now = Read(log);
        var b = now.Balance;
        (keepsake.Place, keepsake.Custody, keepsake.Count, keepsake.MassG, keepsake.HeldCount, keepsake.HeldG) = (now.Place, now.Whereabouts, b.CameIn.Count, b.CameIn.MassG, b.Held.Count, b.Held.MassG);
    }
}
