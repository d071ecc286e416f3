using System.Text.RegularExpressions;

namespace Studio.Tests.Architecture;

/// <summary>What is typed as a number or a time is read in one place, the fields of the Shell: nothing else in a component reads it.</summary>
public sealed partial class TypedNumbersTests
{
    // whatever else of a component reads text as a number is named here, with the reason why no typed number can be lost there
    private static readonly Dictionary<string, string> Own = new(StringComparer.Ordinal)
    {
        ["Bench/BenchWeigh.razor.cs"] = "the scale's keypad: a figure joins the tally only once it is read, by the same reader, and stands in the field until then",
        ["Climate/RoomPage.razor.cs"] = "a choice of days from a list",
        ["Film/PlacementFields.razor.cs"] = "a turn chosen from a list",
        ["Film/SlideField.razor"] = "a slider: the browser gives a number within its ends or nothing",
        ["Heat/BubblePart.razor.cs"] = "a pot chosen from a list",
        ["Keepsakes/IntakePage.razor.cs"] = "an entry number that the studio gave",
        ["Keepsakes/ReceiptsPage.razor.cs"] = "numbers of keepsakes in the page's address",
    };

    private static IEnumerable<(string Name, string Text)> Components =>
        Sources.Program("*.razor*").Where(f => f.Path.EndsWith(".razor", StringComparison.Ordinal) || f.Path.EndsWith(".razor.cs", StringComparison.Ordinal))
            .Select(f => (Name: Path.GetRelativePath(Path.Combine("src", "Studio"), f.Path).Replace('\\', '/'), f.Text))
            .Where(f => !f.Name.StartsWith("Shell/", StringComparison.Ordinal));

    [Fact]
    public void Only_the_fields_of_the_Shell_read_what_is_typed_or_it_is_on_the_list() =>
        Components.Where(c => Reads().IsMatch(c.Text)).Select(c => c.Name).Order(StringComparer.Ordinal).ShouldBe(Own.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void Only_the_Shell_has_inputs_for_numbers_and_times() => Components.Where(c => Raw().IsMatch(c.Text)).Select(c => c.Name).ShouldBeEmpty();

    [Theory]
    [InlineData("double.TryParse(e.Value?.ToString(), out var grams)")]
    [InlineData("amount = decimal.Parse(typed, CultureInfo.InvariantCulture)")]
    [InlineData("var (value, _) = Quantity.Read(typed, \"g\");")]
    public void A_planted_reader_is_seen(string line) => Reads().IsMatch(line).ShouldBeTrue();

    [Theory]
    [InlineData("<input type=\"number\" @bind=\"grams\" />")]
    [InlineData("<input inputmode=\"decimal\" @bind=\"grams\" />")]
    [InlineData("<input type=\"datetime-local\" />")]
    [InlineData("<MudNumericField T=\"double\" @bind-Value=\"grams\" />")]
    [InlineData("<InputNumber @bind-Value=\"grams\" />")]
    [InlineData("<MudTextField T=\"double\" @bind-Value=\"grams\" />")]
    public void A_planted_input_is_seen(string line) => Raw().IsMatch(line).ShouldBeTrue();

    [GeneratedRegex(@"\bTryParse(Exact)?\(|\b(double|decimal|int|long|DateTime|TimeOnly|TimeSpan)\.Parse(Exact)?\(|\bQuantity\.Read\(", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Reads();

    [GeneratedRegex(@"type=""(number|datetime-local|time)""|inputmode=""(decimal|numeric)""|InputType\.(Number|Time|DateTimeLocal)|<MudNumericField|<InputNumber|<MudTextField T=""(double|decimal|int|long)\??""", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Raw();
}
