using System.Diagnostics;

namespace Studio.Tests;

/// <summary>What passes says so quietly: <c>deploy/check</c> counts a passing project whose log holds a stack trace as a failure.</summary>
public sealed class PassingLogTests
{
    private const string Passed = "   Studio.Tests  Total: 52, Errors: 0, Failed: 0, Skipped: 0, Not Run: 0, Time: 38.852s";

    [Theory]
    [InlineData("         at Hangfire.Server.ServerHeartbeatProcess.Execute(BackgroundProcessContext context) in C:\\projects\\hangfire\\ServerHeartbeatProcess.cs:line 50")]
    [InlineData("         at Microsoft.Extensions.DependencyInjection.ServiceLookup.ThrowHelper.ThrowObjectDisposedException()")]
    [InlineData("      System.ObjectDisposedException: Cannot access a disposed object.")]
    [InlineData("Unhandled exception. System.InvalidOperationException: planted")]
    public async Task A_trace_in_a_log_is_seen(string line) => (await SeenAsync(Passed, line)).ShouldBe($"2:{line}");

    [Theory]
    [InlineData(Passed)]
    [InlineData("  The studio is open at http://127.0.0.1:35797")]
    [InlineData("warn: Microsoft.AspNetCore.Server.Kestrel[0]")]
    [InlineData("      Look at the pour at 14:10 (layer 3)")]
    public async Task A_quiet_log_is_let_pass(string line) => (await SeenAsync(Passed, line)).ShouldBe("");

    [Fact]
    public void The_run_of_a_project_looks_for_traces_where_nothing_failed() =>
        File.ReadAllText(Path.Combine(Sources.Root(), "deploy", "check")).ShouldContain("""if [ "$bad" -eq 0 ] && [ "$errors" -eq 0 ] && [ -n "$(traced "$out")" ]; then""");

    private static async Task<string> SeenAsync(params string[] lines)
    {
        var log = Path.GetTempFileName();
        try
        {
            await File.WriteAllLinesAsync(log, lines);
            using var check = Process.Start(new ProcessStartInfo("bash", [Path.Combine(Sources.Root(), "deploy", "check"), "--traces", log]) { RedirectStandardOutput = true, UseShellExecute = false })!;
            var seen = await check.StandardOutput.ReadToEndAsync();
            await check.WaitForExitAsync();
            return seen.TrimEnd('\n');
        }
        finally
        {
            File.Delete(log);
        }
    }
}
