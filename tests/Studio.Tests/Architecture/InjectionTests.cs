using System.Text.RegularExpressions;

namespace Studio.Tests.Architecture;

/// <summary>
/// What a page asks the house for stands in one place. A page in one file asks by <c>@inject</c> at its head; a page with code behind asks there,
/// by <c>[Inject]</c> or by its constructor, never by both.
/// </summary>
public sealed partial class InjectionTests
{
    private static IReadOnlyDictionary<string, string> Files { get; } =
        Sources.Program("*.razor").Concat(Sources.Program("*.razor.cs")).ToDictionary(f => f.Path, f => f.Text, StringComparer.Ordinal);

    [Fact]
    public void A_page_asks_in_one_way() => Mixed(Files).ShouldBeEmpty();

    [Fact]
    public void A_planted_mixture_is_seen() =>
        Mixed(new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["One.razor"] = "@code {\n  [Inject]\n  private Who Who { get; set; } = default!;\n}",
            ["Two.razor"] = "@inject Who Who\n<p>@Who</p>",
            ["Two.razor.cs"] = "public partial class Two { }",
            ["Three.razor"] = "<p></p>",
            ["Three.razor.cs"] = "public partial class Three(Who who)\n{\n    [Inject]\n    private News News { get; set; } = default!;\n}",
            ["Four.razor"] = "@inject Who Who\n<p>@Who</p>",
        }).ShouldBe(["One.razor: [Inject] in a page of one file", "Two.razor: @inject beside code behind", "Three.razor.cs: by constructor and by [Inject]"], ignoreOrder: true);

    private static IEnumerable<string> Mixed(IReadOnlyDictionary<string, string> files)
    {
        foreach (var (path, text) in files)
        {
            if (path.EndsWith(".razor", StringComparison.Ordinal) && text.Contains("[Inject]", StringComparison.Ordinal))
            {
                yield return $"{path}: [Inject] in a page of one file";
            }

            if (path.EndsWith(".razor", StringComparison.Ordinal) && files.ContainsKey(path + ".cs") && Asked().IsMatch(text))
            {
                yield return $"{path}: @inject beside code behind";
            }

            if (path.EndsWith(".cs", StringComparison.Ordinal) && ByConstructor().IsMatch(text) && text.Contains("[Inject]", StringComparison.Ordinal))
            {
                yield return $"{path}: by constructor and by [Inject]";
            }
        }
    }

    [GeneratedRegex("^@inject ", RegexOptions.ExplicitCapture | RegexOptions.Multiline, 1000)]
    private static partial Regex Asked();

    [GeneratedRegex(@"partial class \w+\(", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ByConstructor();
}
