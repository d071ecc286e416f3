using Hangfire;
using Studio.Shell;

namespace Studio.Keepsakes;

/// <summary>Comes round every night and recomputes every keepsake's balance.</summary>
internal sealed class CustodyJob : IRecurring
{
    public void Schedule(IRecurringJobManager jobs) => jobs.AddOrUpdate<CustodyBook>("custody", book => book.LookAsync(), Cron.Daily(3, 15));
}
