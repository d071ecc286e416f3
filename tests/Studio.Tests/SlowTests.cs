using System.Text.RegularExpressions;

namespace Studio.Tests;

/// <summary>What <c>deploy/check --quick</c> leaves out says why, and the whole run leaves nothing out.</summary>
public sealed partial class SlowTests
{
    // why a test may be slow; DEVELOPERS.md names them
    private static readonly string[] Reasons = ["draws", "files", "host", "kill", "meshes", "papers", "solver"];

    [Fact]
    public void Every_slow_test_says_why() => Unsaid(Sources.Tests()).ShouldBeEmpty();

    [Theory]
    [InlineData("""[Trait("Slow", "because")]""")]
    [InlineData("""[Trait("Slow", "")]""")]
    [InlineData("""[Trait("slow", "solver")]""")]
    public void A_planted_other_reason_is_seen(string line) => Unsaid([("planted.cs", line)]).ShouldHaveSingleItem();

    [Fact]
    public void Only_the_quick_look_leaves_them_out()
    {
        var check = File.ReadAllLines(Path.Combine(Sources.Root(), "deploy", "check"));
        check.Where(l => l.Contains("-trait-", StringComparison.Ordinal)).ShouldHaveSingleItem().ShouldContain("""${quick:+-trait- "Slow=*"}""");
        check.Where(l => l.Contains("quick=\"yes\"", StringComparison.Ordinal)).ShouldHaveSingleItem().ShouldContain("""if [ "${1:-}" = "--quick" ]""");
    }

    [Fact]
    public void The_reasons_are_written_down_for_developers()
    {
        var page = File.ReadAllText(Path.Combine(Sources.Root(), "DEVELOPERS.md"));
        Reasons.ShouldAllBe(r => page.Contains($"`{r}`", StringComparison.Ordinal));
    }

    private static IEnumerable<string> Unsaid(IEnumerable<(string Path, string Text)> files) =>
        files.Where(f => Path.GetFileName(f.Path) != "SlowTests.cs").SelectMany(f => Marked().Matches(f.Text).Where(m => m.Groups["name"].Value != "Slow" || !Reasons.Contains(m.Groups["why"].Value, StringComparer.Ordinal)).Select(m => $"{f.Path}: {m.Value}"));

    [GeneratedRegex("""\[Trait\("(?<name>[^"]*)", "(?<why>[^"]*)"\)\]""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Marked();
}
