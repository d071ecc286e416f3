using System.Text.Json;
using System.Text.RegularExpressions;

namespace Studio.Engine.Tests;

/// <summary>The examples in docs/calculations.md are run: each block named after a calculation is followed by a block of what it gives.</summary>
public sealed partial class DocumentedExamplesTests
{
    public static TheoryData<int> Numbers => [.. Enumerable.Range(0, Examples().Count)];

    [Fact]
    public void Every_calculation_that_is_here_has_an_example() =>
        Examples().Select(e => e.Calculation).Distinct().ShouldBe(Calculations.All.Keys.Where(k => !Calculations.Run(k, "{}").Json.Contains("not here yet", StringComparison.Ordinal)), ignoreOrder: true);

    [Theory]
    [MemberData(nameof(Numbers))]
    public void Example_gives_what_the_page_says(int number)
    {
        var (calculation, input, expected) = Examples()[number];
        var answer = Calculations.Run(calculation, input).Json;
        Same(JsonElement.Parse(expected), JsonElement.Parse(answer), "", calculation is "heat" or "cure" or "time" ? 1e-5 : 1e-9).ShouldBeNull(answer);
    }

    [GeneratedRegex("```json (?<what>\\w+)\n(?<in>.*?)```\\s*```json gives\n(?<out>.*?)```", RegexOptions.Singleline | RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Pair();

    private static List<(string Calculation, string Input, string Expected)> Examples()
    {
        var page = File.ReadAllText(Path.Combine(Sources.Root(), "docs", "calculations.md"));
        return [.. Pair().Matches(page).Select(m => (m.Groups["what"].Value, m.Groups["in"].Value, m.Groups["out"].Value))];
    }

    // a long list on the page ends in "…"
    private static bool CutShort(JsonElement list) =>
        list.GetArrayLength() > 0 && list[list.GetArrayLength() - 1] is { ValueKind: JsonValueKind.String } last && last.GetString() == "…";

    // where the two differ, or null; numbers agree to nine digits, what is iterated to five: processors add up in other orders
    private static string? Same(JsonElement expected, JsonElement actual, string path, double near)
    {
        if (expected.ValueKind != actual.ValueKind)
        {
            return path;
        }

        return expected.ValueKind switch
        {
            JsonValueKind.Object => expected.EnumerateObject().Select(p => p.Name).SequenceEqual(actual.EnumerateObject().Select(p => p.Name), StringComparer.Ordinal)
                ? expected.EnumerateObject().Select(p => Same(p.Value, actual.GetProperty(p.Name), path + "." + p.Name, near)).FirstOrDefault(d => d is not null)
                : path + " has other fields",
            JsonValueKind.Array when CutShort(expected) => expected.EnumerateArray().SkipLast(1).Zip(actual.EnumerateArray()).Select((p, i) => Same(p.First, p.Second, $"{path}[{i}]", near)).FirstOrDefault(d => d is not null),
            JsonValueKind.Array => expected.GetArrayLength() == actual.GetArrayLength()
                ? expected.EnumerateArray().Zip(actual.EnumerateArray()).Select((p, i) => Same(p.First, p.Second, $"{path}[{i}]", near)).FirstOrDefault(d => d is not null)
                : path + " has another length",
            JsonValueKind.Number => Math.Abs(expected.GetDouble() - actual.GetDouble()) <= near * Math.Max(1e-6, Math.Abs(expected.GetDouble())) ? null : path,
            JsonValueKind.String => string.Equals(expected.GetString(), actual.GetString(), StringComparison.Ordinal) ? null : path,
            _ => null,
        };
    }
}
