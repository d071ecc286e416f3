using Studio.Engine;
using Studio.Engine.Custody;
using Studio.Keepsakes;
using Studio.Pieces;

namespace Studio.Tests.Pieces;

public sealed class PlacedRulesTests
{
    [Theory]
    [InlineData(Permissions.ReturnUntouched, "brass", "untouched")]
    [InlineData(Permissions.CopyReturn, "letter", "Cast the copy instead")]
    [InlineData(Permissions.EmbedAll, "battery", "never goes inside")]
    [InlineData(Permissions.EmbedAll, "electronics", "out of the casting")]
    [InlineData(Permissions.EmbedAll, "photograph-only-copy", "only photograph")]
    public void What_must_stay_out_of_resin_stops_the_design_and_says_what_to_do(string permits, string kind, string words)
    {
        var finding = Findings(PieceSamples.Keepsake(5, permits, kind)).Single();
        finding.Severity.ShouldBe(Severity.Stop);
        finding.Path.ShouldBe("layers[1].placed[0]");
        finding.Message.ShouldContain(words);
    }

    [Fact]
    public void A_keepsake_that_may_be_cast_is_welcome() => Findings(PieceSamples.Keepsake(5, Permissions.EmbedAll)).ShouldBeEmpty();

    [Fact]
    public void What_has_gone_back_cannot_be_set_in() =>
        Findings(PieceSamples.Keepsake(5, Permissions.EmbedAll, custody: "returned")).Single().Message.ShouldContain("gone back");

    [Fact]
    public void A_part_is_noted_and_a_flower_asks_to_be_dried()
    {
        var codes = Findings(PieceSamples.Keepsake(5, Permissions.EmbedPart, "dried-flower")).Select(f => f.Code);
        codes.ShouldBe(["material-dried-flower", "keepsake-part"]);
    }

    [Fact]
    public void The_same_keepsake_in_two_pieces_is_asked_about()
    {
        var shelf = new KeepsakeShelf([PieceSamples.Keepsake(5, Permissions.EmbedAll)], new Dictionary<int, string> { [5] = "The other pyramid" });
        var piece = PieceSamples.Piece(new LayerPlaced(5, "Whistle", 17, 8.5, null));
        PlacedRules.Of(piece, shelf).Single().Message.ShouldContain("The other pyramid");
    }

    [Fact]
    public void A_keepsake_of_another_commission_is_refused() =>
        PlacedRules.Of(PieceSamples.Piece(new LayerPlaced(99, "Stranger", null, null, 0)), KeepsakeShelf.Empty).Single().Severity.ShouldBe(Severity.Stop);

    [Fact]
    public void A_copy_of_ours_is_not_their_keepsake_any_more()
    {
        var copy = PlacedStart.Copy(PieceSamples.Keepsake(5, Permissions.CopyReturn, "letter"));
        copy.KeepsakeId.ShouldBeNull();
        PlacedRules.Of(PieceSamples.Piece(copy), KeepsakeShelf.Empty).ShouldBeEmpty();
    }

    private static List<Finding> Findings(Keepsake keepsake) =>
        [.. PlacedRules.Of(PieceSamples.Piece(new LayerPlaced(keepsake.Id, "Whistle", 17, 8.5, null)), new KeepsakeShelf([keepsake], new Dictionary<int, string>()))];
}
