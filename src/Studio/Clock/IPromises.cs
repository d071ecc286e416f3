using Studio.Data;

namespace Studio.Clock;

/// <summary>Tells which day was promised to a family. Prices come after the clock and answer.</summary>
public interface IPromises : IAsked
{
    /// <summary>By commission, the day of the price that they agreed to; nothing for one without.</summary>
    Task<IReadOnlyDictionary<int, DateOnly>> OfAsync(StudioDb db, IReadOnlyCollection<int> commissionIds);
}
