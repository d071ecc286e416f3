namespace Studio.Engine.Custody;

/// <summary>Reads a keepsake's log: what is true now follows from its entries and from nothing else.</summary>
public static class CustodyLedger
{
    /// <summary>A bench scale shows tenths: half of one is no difference [g]; common practice, no source.</summary>
    public const double ScaleSlackG = 0.05;

    /// <summary>The state after the last of these entries. A log that cannot be is read as far as it goes, with its faults named.</summary>
    /// <param name="entries">One keepsake's, in any order; they count by rising id.</param>
    public static CustodyState Read(IEnumerable<CustodyEntry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var all = entries.OrderBy(e => e.Id).ToList();
        var undone = all.Where(e => e.Kind == CustodyKind.Undone && e.RefId is not null).Select(e => e.RefId!.Value).ToHashSet();
        var standing = all.Where(e => e.Kind != CustodyKind.Undone && !undone.Contains(e.Id)).ToList();
        var came = standing.FirstOrDefault(e => e.Kind == CustodyKind.Received);
        var reading = new CustodyReading(
            standing.LastOrDefault(e => e.Kind == CustodyKind.Corrected && e.Count is not null)?.Count ?? came?.Count ?? 0,
            standing.LastOrDefault(e => e.Kind == CustodyKind.Corrected && e.MassG is not null)?.MassG ?? came?.MassG);
        if (came is null)
        {
            reading.Fault(all.Count > 0 ? all[0].Id : 0, "There is no entry that it came in.");
        }

        foreach (var orphan in all.Where(e => e.Kind == CustodyKind.Undone && all.All(o => o.Id != e.RefId)))
        {
            reading.Fault(orphan.Id, "It takes back an entry that is not in the log.");
        }

        standing.ForEach(reading.Take);
        return reading.State(standing.LastOrDefault(e => CustodyKind.CanBeUndone(e.Kind))?.Id);
    }
}
