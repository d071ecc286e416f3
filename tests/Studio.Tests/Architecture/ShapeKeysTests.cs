using System.Text.RegularExpressions;
using Studio.Engine.Moulds;

namespace Studio.Tests.Architecture;

/// <summary>A mould's shape says all it knows in its own file: nothing outside asks for a shape by its key.</summary>
public sealed class ShapeKeysTests
{
    // the same word for something else
    private static readonly Dictionary<string, string> Others = new(StringComparer.Ordinal)
    {
        ["src/Studio/Calibration/LogChart.razor: measured"] = "a line's class in the drawing",
        ["src/Studio/Data/Files/MeshFolder.cs: mesh"] = "what a file without a name is called",
        ["src/Studio/Moulds/MeshPart.razor: mesh"] = "the path of a form's field",
        ["src/Studio/Moulds/MouldForm.cs: mesh"] = "the path of a form's field",
    };

    private static readonly Regex Key = new($"\"(?<key>{string.Join('|', MouldShapes.All.Select(s => Regex.Escape(s.Key)))})\"", RegexOptions.ExplicitCapture, TimeSpan.FromSeconds(1));

    [Fact]
    public void No_shape_is_asked_for_by_its_key_outside_the_shapes() =>
        Named(Sources.Program("*.cs").Concat(Sources.Program("*.razor"))).Order(StringComparer.Ordinal).ShouldBe(Others.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [InlineData("""if (mould.Shape == "cone")""")]
    [InlineData("""spec.Shape switch { "pyramid" or "prism" => 4 }""")]
    public void A_planted_key_is_seen(string line) => Named([(Path.Combine("src", "Studio", "Heat", "Planted.cs"), line)]).ShouldNotBeEmpty();

    private static IEnumerable<string> Named(IEnumerable<(string Path, string Text)> files) =>
        files.Where(f => !f.Path.Contains(Path.Combine("Studio.Engine", "Moulds"), StringComparison.Ordinal))
            .SelectMany(f => f.Text.Split('\n').Where(l => !l.TrimStart().StartsWith("//", StringComparison.Ordinal)).SelectMany(l => Key.Matches(l)).Select(m => $"{f.Path.Replace('\\', '/')}: {m.Groups["key"].Value}"))
            .Distinct(StringComparer.Ordinal);
}
