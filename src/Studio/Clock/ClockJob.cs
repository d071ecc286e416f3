using Hangfire;
using Studio.Shell;

namespace Studio.Clock;

/// <summary>Comes round every minute and asks the book what the clock newly says.</summary>
internal sealed class ClockJob : IRecurring
{
    public void Schedule(IRecurringJobManager jobs) => jobs.AddOrUpdate<ClockBook>("clock", book => book.AdvanceAsync(), Cron.Minutely);
}
