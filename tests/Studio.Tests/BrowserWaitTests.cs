using System.Text.RegularExpressions;

namespace Studio.Tests;

/// <summary>A browser test waits for what it needs, never for a clock: on a busy machine the clock is wrong.</summary>
public sealed partial class BrowserWaitTests
{
    [Fact]
    public void No_browser_test_waits_for_a_clock() =>
        Sources.Tests().Where(f => f.Path.Contains("Studio.Browser", StringComparison.Ordinal))
            .SelectMany(f => ByTheClock().Matches(f.Text).Select(m => $"{f.Path}: {m.Value}"))
            .ShouldBeEmpty();

    [Theory]
    [InlineData("await page.WaitForTimeoutAsync(900);")]
    [InlineData("await Task.Delay(50);")]
    [InlineData("var began = Stopwatch.GetTimestamp();")]
    [InlineData("ToBeVisibleAsync(new() { Timeout = 60_000 });")]
    [InlineData("public async Task A_lamp_is_drawn_in_under_five_minutes()")]
    public void A_wait_for_a_clock_is_seen(string line) => ByTheClock().IsMatch(line).ShouldBeTrue();

    [GeneratedRegex(@"WaitForTimeout|Task\.Delay|Thread\.Sleep|Stopwatch|\bTimeout = |\bTask \w*_(in_)?under_\w+", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ByTheClock();
}
