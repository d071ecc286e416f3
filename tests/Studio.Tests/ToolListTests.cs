using System.Text.RegularExpressions;

namespace Studio.Tests;

/// <summary>A new machine has only what <c>deploy/check</c> installs: whatever a test may skip on must stand in its list.</summary>
public sealed partial class ToolListTests
{
    private static readonly string Root = Sources.Root();

    [Fact]
    public void Every_program_that_a_test_asks_for_is_installed_by_the_check() =>
        Asked(Sources.Tests()).Except(Installed(), StringComparer.Ordinal).ShouldBeEmpty();

    [Fact]
    public void Every_program_that_the_check_installs_is_asked_for() =>
        Installed().Except(Asked(Sources.Tests()), StringComparer.Ordinal).ShouldBeEmpty();

    [Fact]
    public void No_test_skips_by_itself() =>
        Sources.Tests().Where(f => Path.GetFileName(f.Path) is not "Tool.cs" and not "ToolListTests.cs")
            .Where(f => Skip().IsMatch(f.Text)).Select(f => f.Path).ShouldBeEmpty();

    [Fact]
    public void A_program_that_nobody_installs_is_seen() =>
        Asked([("planted.cs", """Tool.Need("teapot");""")]).Except(Installed(), StringComparer.Ordinal).ShouldBe(["teapot"]);

    [Theory]
    [InlineData("Assert.Skip(\"no teapot\");")]
    [InlineData("Assert.SkipUnless(File.Exists(\"/usr/bin/teapot\"), \"no teapot\");")]
    [InlineData("[Fact(Skip = \"no teapot\")]")]
    [InlineData("[Theory(DisplayName = \"a\", SkipUnless = \"x\")]")]
    public void A_skip_of_its_own_is_seen(string line) => Skip().IsMatch(line).ShouldBeTrue();

    private static IEnumerable<string> Asked(IEnumerable<(string Path, string Text)> files) =>
        files.Where(f => Path.GetFileName(f.Path) != "ToolListTests.cs").SelectMany(f => Need().Matches(f.Text)).Select(m => m.Groups["tool"].Value).Distinct(StringComparer.Ordinal);

    private static IReadOnlyList<string> Installed() =>
        [.. List().Match(File.ReadAllText(Path.Combine(Root, "deploy", "check"))).Groups["pairs"].Value.Split(' ').Select(p => p.Split(':')[0])];

    [GeneratedRegex(@"Tool\.Need\(""(?<tool>[^""]+)""\)", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Need();

    [GeneratedRegex(@"^needed=\((?<pairs>[^)]+)\)$", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex List();

    [GeneratedRegex(@"Assert\.Skip|\bSkip(Unless|When)? = ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Skip();
}
