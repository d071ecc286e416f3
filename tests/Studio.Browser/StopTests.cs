using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Playwright;

namespace Studio.Browser;

public sealed class StopTests
{
    [Fact]
    public async Task A_studio_that_stops_closes_the_pages_that_are_open_and_leaves_no_trace()
    {
        await using var own = new StudioInBrowser { LookEverySeconds = 1 };
        await own.InitializeAsync();
        await using var window = await own.WindowAsync();
        var page = await window.NewPageAsync();
        await page.FirstStartAsync("wren@studio.example", "heather and brass");
        await page.OpenAsync("/commissions");
        var other = await window.NewPageAsync();
        await other.OpenAsync("/stores/resins");
        var host = own.Services.GetRequiredService<IHost>();
        var pages = own.Services.GetRequiredService<Shell.OpenPages>(); // the services end with the studio

        // in the middle of being drawn: the parts that a page asks for next must still be there
        await other.GotoAsync("/", new() { WaitUntil = WaitUntilState.Commit });
        await host.StopAsync(TestContext.Current.CancellationToken);

        pages.Open.ShouldBe(0);
        own.Traces.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_page_whose_browser_left_in_the_middle_leaves_no_trace_when_the_studio_stops()
    {
        await using var own = new StudioInBrowser { LookEverySeconds = 1 };
        await own.InitializeAsync();
        await using var window = await own.WindowAsync();
        var page = await window.NewPageAsync();
        await page.FirstStartAsync("wren@studio.example", "heather and brass");
        await page.GotoAsync("/stores/resins", new() { WaitUntil = WaitUntilState.Commit });
        await page.ReadyAsync();

        await own.Chromium.CloseAsync();
        await own.Services.GetRequiredService<IHost>().StopAsync(TestContext.Current.CancellationToken);
        await own.DisposeAsync();

        own.Traces.ShouldBeEmpty();
    }
}
