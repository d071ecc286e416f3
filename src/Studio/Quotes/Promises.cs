using Microsoft.EntityFrameworkCore;
using Studio.Clock;
using Studio.Data;

namespace Studio.Quotes;

/// <summary>Answers the clock which day the price promises that a family agreed to.</summary>
internal sealed class Promises : IPromises
{
    public async Task<IReadOnlyDictionary<int, DateOnly>> OfAsync(StudioDb db, IReadOnlyCollection<int> commissionIds) =>
        commissionIds.Count == 0 ? new Dictionary<int, DateOnly>()
        : (await db.Set<Quote>().AsNoTracking().Where(q => commissionIds.Contains(q.CommissionId) && q.State == QuoteState.Accepted).OrderBy(q => q.Id).Select(q => new { q.CommissionId, q.Form }).ToListAsync())
            .Where(q => q.Form.PromiseOn is not null).GroupBy(q => q.CommissionId).ToDictionary(g => g.Key, g => g.Max(q => q.Form.PromiseOn!.Value));
}
