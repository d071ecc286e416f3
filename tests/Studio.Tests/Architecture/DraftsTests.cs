namespace Studio.Tests.Architecture;

/// <summary>What is typed and not kept lies in the browser by one way alone, which also bears what an older program left there.</summary>
public sealed class DraftsTests
{
    private static readonly string[] Names = ["studio.draft", "studio.keepDraft", "studio.dropDraft"];

    [Fact]
    public void Only_one_file_asks_the_browser_for_drafts() =>
        Asking(Sources.Program("*.cs").Concat(Sources.Program("*.razor"))).ShouldBe([Path.Combine("src", "Studio", "Shell", "Drafts.cs")]);

    [Fact]
    public void A_planted_page_that_asks_by_itself_is_seen() =>
        Asking([("Planted.razor", """await Script.InvokeVoidAsync("studio.keepDraft", "key", text);""")]).ShouldBe(["Planted.razor"]);

    private static IEnumerable<string> Asking(IEnumerable<(string Path, string Text)> files) =>
        files.Where(f => Names.Any(n => f.Text.Contains('"' + n + '"', StringComparison.Ordinal))).Select(f => f.Path);
}
