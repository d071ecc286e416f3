using System.Text.RegularExpressions;
using Studio.Commissions;

namespace Studio.Tests.Architecture;

/// <summary>No silent default speaks to a family: on a paper that leaves the studio, a key that nobody knows is refused and never falls through.</summary>
public sealed partial class FamilyPapersTests
{
    // papers that stay in the studio
    private static readonly string[] Workshop = ["PourPaper.cs", "PourPaperBook.cs", "FilmPaper.cs", "PartsPaper.cs", "PartsPaper.TrueSize.cs", "PartsPaperBook.cs", "PartsPaperSketch.cs"];

    // what writes the words on them
    private static readonly string[] Words =
        ["CustodyWords.cs", "EntrySlip.cs", "EntryWords.cs", "KeepsakeKinds.cs", "Handovers.cs", "Permissions.cs", "ConditionWords.cs",
        "QuoteWriting.cs", "QuoteWords.cs", "QuoteToday.cs", "CastingWords.cs", "CellCaution.cs", "DeliveryTerms.cs"];

    // what falls through by right: the line as it stands, and why
    private static readonly Dictionary<string, string> ByRight = new(StringComparer.Ordinal)
    {
        ["""_ => $"{model.Format.Number(numbers)} entries, {model.Format.Number(objects)} objects in all","""] = "counts, not a key",
        ["_ => studio.StudioName,"] = "whichever ways of reaching the studio are filled in, not a key",
        ["if (figures.Result is null || PieceBook.Section(piece, figures.Result, _ => LayerState.Poured, asStands: false, figures.Sheets) is not { } section)"] = "every layer is drawn poured: a function of the layer, not a choice",
        ["_ => null,"] = "of a handover that nobody knows nothing is said, and SendPoints names it before the price is sent",
        ["_ => PaperPattern.None,"] = "how a layer is hatched, no words",
        ["_ => [],"] = "what a shape on the paper is drawn of, no words",
        ["""_ => "SourceSans3-Regular","""] = "a face of the type",
        ["""_ => Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format ? "" : rune.ToString(),"""] = "a letter, not a key",
        ["public static double WidthMm(this PaperSize size) => size is PaperSize.Letter ? 215.9 : 210;"] = "one of two sheets of paper, by a closed list",
        ["public static double HeightMm(this PaperSize size) => size is PaperSize.Letter ? 279.4 : 297;"] = "one of two sheets of paper, by a closed list",
        ["public static LabelGrid For(PaperSize size) => size is PaperSize.Letter ? LetterThreeByTen : A4ThreeByEight;"] = "one of two sheets of paper, by a closed list",
        ["shapes.AddRange(bands.SelectMany(b => Area(b.Rings, b.Layer.Colour, Pattern(b), b.Layer.State is LayerState.Now ? 1.4 : 0.5)));"] = "how thick a line is, no words",
        ["foreach (var (from, to) in PaperHatch.Lines(flat, -45, 4.5).Concat(polygon.Pattern is PaperPattern.CrossHatch ? PaperHatch.Lines(flat, 45, 4.5) : []))"] = "how a field is hatched, no words",
        ["""private static string Typed(KeepsakeEvent e, string lead) => e.Words.Trim().Length > 0 ? lead + Say.Sentence(e.Words) : lead is ": " or ". " ? "." : "";"""] = "the end of a sentence, not a key",
        ["_ => Say.Sentence(e.OldWords),"] = "what somebody wrote then, word for word",
        ["""private string TimePattern => Words.Name is "en-US" ? "h:mm\u00A0tt" : "HH:mm";"""] = "the clock of the paper's language",
        ["""private string DayPattern => Words.Name is "en-US" ? "MMMM d, yyyy" : "d MMMM yyyy";"""] = "the order of a date in the paper's language",
        ["""var day = local.ToString(Words.Name is "en-US" ? "dddd, MMMM d" : "dddd d MMMM", Words);"""] = "the order of a date in the paper's language",
        ["""private static string Amount(KeepsakeEvent e) => Upper(Amount(e.Count, e.MassG)) + (e.Kind == CustodyKind.Returned ? "" : e is { Count: 1 } or { Count: null or 0, MassG: null } ? " was" : " were");"""] = "a verb after an amount; the kind itself is said by a switch that knows all",
    };

    private static IEnumerable<(string Path, string Text)> Family =>
        Sources.Program("*.cs").Where(f => Path.GetFileName(f.Path) is var name && (Words.Contains(name, StringComparer.Ordinal)
            || (name.Contains("Paper", StringComparison.Ordinal) && !Workshop.Contains(name, StringComparer.Ordinal))));

    [Fact]
    public void Nothing_falls_through_on_a_paper_of_the_family() =>
        Family.SelectMany(f => Falling(f.Text)).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).ShouldBe(ByRight.Keys.Order(StringComparer.Ordinal));

    [Fact]
    public void The_receipt_the_quote_and_the_labels_are_among_them() =>
        new[] { "ReceiptPaper.cs", "QuotePaper.cs", "QuotePaperBook.cs", "LabelPaper.cs", "KeepsakePaperBook.cs", "CustodyWords.cs" }.Except(Family.Select(f => Path.GetFileName(f.Path)), StringComparer.Ordinal).ShouldBeEmpty();

    [Theory]
    [InlineData("""            _ => "It may be cast in resin.",""")]
    [InlineData("""permits switch { "all" => "All of it", _ => "A part of it" }""")]
    [InlineData("""Delivery = commission.Handover == "delivery" ? "Delivered to you" : "Collected from the studio",""")]
    [InlineData("""Permission = k.Permits is "embed-all" or "embed-part" ? "It may be cast." : "It goes back.",""")]
    [InlineData("""Words = k.Permits == Permissions.EmbedAll ? "All of it" : "Nothing",""")]
    [InlineData("""All.FirstOrDefault(k => k.Key == key).Label ?? key""")]
    public void A_planted_one_is_seen(string line) => Falling(line).ShouldHaveSingleItem();

    [Fact]
    public void A_handover_that_nobody_knows_is_refused() =>
        Should.Throw<InvalidOperationException>(() => Handovers.OnPaper("by-owl")).Message.ShouldContain("by-owl");

    [Theory]
    [InlineData("collection", "Collected from the studio")]
    [InlineData("delivery", "Delivered to you")]
    public void A_handover_is_said_to_the_family(string key, string words) => Handovers.OnPaper(key).ShouldBe(words);

    private static IEnumerable<string> Falling(string text) =>
        text.Split('\n').Select(l => l.Trim()).Where(l => !l.StartsWith("//", StringComparison.Ordinal) && (Default().IsMatch(l) || Key().IsMatch(l)));

    [GeneratedRegex(@"(^|[{,] )_ => ", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Default();

    // a comparison with a key that then chooses between two words, or a key that stands for its own label
    [GeneratedRegex(@"(==|\bis) (""[^""]*""( or ""[^""]*"")*|[A-Z]\w+\.[A-Z]\w+) \? |\?\? key\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Key();
}
