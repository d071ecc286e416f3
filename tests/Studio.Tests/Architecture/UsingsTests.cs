using System.Text.RegularExpressions;

namespace Studio.Tests.Architecture;

/// <summary>Usings stand in order, those of System first: what the formatter's quick look at white space does not see.</summary>
public sealed partial class UsingsTests
{
    [Fact]
    public void Every_file_names_them_in_order() =>
        Sources.Program("*.cs").Concat(Sources.Tests()).Where(f => !InOrder(f.Text)).Select(f => f.Path).ShouldBeEmpty();

    [Theory]
    [InlineData("using Studio.Pieces;\nusing Studio.Data;\n", false)]
    [InlineData("using Studio.Data;\nusing System.Text;\n", false)]
    [InlineData("using System.Text;\nusing Studio.Data;\nusing Studio.Data.Files;\nusing Studio.Pieces;\n", true)]
    public void A_planted_one_is_seen(string text, bool inOrder) => InOrder(text).ShouldBe(inOrder);

    private static bool InOrder(string text)
    {
        var names = Using().Matches(text).Select(m => m.Groups["name"].Value).ToList();
        return names.SequenceEqual(names.OrderBy(n => n.Split('.')[0] != "System").ThenBy(n => n.Replace('.', '\u0001'), StringComparer.OrdinalIgnoreCase), StringComparer.Ordinal);
    }

    [GeneratedRegex(@"^using (?<name>[\w.]+);\r?$", RegexOptions.Multiline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Using();
}
