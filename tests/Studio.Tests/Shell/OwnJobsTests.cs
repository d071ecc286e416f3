using Hangfire;
using Hangfire.InMemory;
using Microsoft.Extensions.DependencyInjection;
using Studio.Tests.SignIn;

namespace Studio.Tests.Shell;

/// <summary>Two studios in one process, as in a test run: neither touches the other's jobs, and the end of one is not the other's.</summary>
public sealed class OwnJobsTests
{
    [Fact]
    public async Task A_studio_keeps_its_jobs_to_itself()
    {
        using var others = new InMemoryStorage();
        JobStorage.Current = others; // as one that started beside it would have left it
        await using var first = new StudioHosted();
        await first.InitializeAsync();
        await using var second = new StudioHosted();
        await second.InitializeAsync();

        JobStorage.Current.ShouldBeSameAs(others);
        var (one, two) = (Jobs(first), Jobs(second));
        one.ShouldNotBeSameAs(two);
        new[] { one, two }.ShouldNotContain(others);
        first.Services.GetRequiredService<JobActivator>().ShouldNotBeSameAs(second.Services.GetRequiredService<JobActivator>());
    }

    [Fact]
    public async Task The_end_of_one_leaves_the_other_at_work()
    {
        await using var staying = new StudioHosted();
        await staying.InitializeAsync();
        await using (var leaving = new StudioHosted())
        {
            await leaving.InitializeAsync();
        }

        using var jobs = Jobs(staying).GetConnection();
        Should.NotThrow(() => jobs.GetFirstByLowestScoreFromSet("schedule", 0, 1));
    }

    private static JobStorage Jobs(StudioHosted studio) => studio.Services.GetRequiredService<JobStorage>();
}
