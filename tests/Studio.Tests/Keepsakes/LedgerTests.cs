using Studio.Engine.Custody;

namespace Studio.Tests.Keepsakes;

public sealed class LedgerTests : IDisposable
{
    private readonly KeepsakeScene scene = new();

    public void Dispose() => scene.Dispose();

    [Fact]
    public async Task An_empty_ledger_knows_that_it_is_empty() =>
        (await scene.Book.LedgerAsync("", "", 10)).Any.ShouldBeFalse();

    [Theory]
    [InlineData("HEATHER")]
    [InlineData("fraser")]
    [InlineData("beekeeper")]
    [InlineData("26-014")]
    [InlineData("drawer")]
    public async Task Words_find_it_by_what_it_is_whose_it_is_and_where_it_lies(string search)
    {
        await scene.TakenInAsync();
        (await scene.Book.LedgerAsync(search, "", 10)).Lines.ShouldHaveSingleItem();
        (await scene.Book.LedgerAsync(search + " nowhere", "", 10)).Lines.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_number_typed_with_slips_of_the_hand_finds_its_keepsake()
    {
        var number = (await scene.TakenInAsync()).Keepsake.EntryNumber;
        var check = number[^1];
        foreach (var typed in new[] { number, number.ToLowerInvariant(), $"ks 26 oooo1 {check}", $"KS26—0000l{check}" })
        {
            (await scene.Book.LedgerAsync(typed, CustodyWhereabouts.Returned, 10)).Lines.ShouldHaveSingleItem(typed).EntryNumber.ShouldBe(number);
        }
    }

    [Fact]
    public async Task A_number_whose_check_character_does_not_fit_is_said_and_the_nearest_shown()
    {
        var number = (await scene.TakenInAsync()).Keepsake.EntryNumber;
        var wrong = number[..^1] + (number[^1] == 'A' ? 'B' : 'A');
        var page = await scene.Book.LedgerAsync(wrong, "", 10);
        page.NumberNote.ShouldContain("does not fit");
        page.Lines.ShouldHaveSingleItem().EntryNumber.ShouldBe(number);
    }

    [Fact]
    public async Task The_filter_follows_custody_and_more_is_said_not_hidden()
    {
        var first = await scene.TakenInAsync();
        await scene.TakenInAsync(description: "hive nails");
        await scene.TakenInAsync(description: "buttons");
        await scene.DoneAsync(first, KeepsakeScene.Return());
        (await scene.Book.LedgerAsync("", CustodyWhereabouts.Returned, 10)).Lines.ShouldHaveSingleItem().Id.ShouldBe(first.Keepsake.Id);
        var page = await scene.Book.LedgerAsync("", CustodyWhereabouts.Here, 1);
        (page.Lines.Count, page.More).ShouldBe((1, true));
        page.Lines[0].Description.ShouldBe("buttons");
    }

    [Fact]
    public async Task A_piece_is_told_what_may_be_cast_and_what_each_needs_first()
    {
        await scene.TakenInAsync();
        await scene.TakenInAsync("iron", Permissions.ReturnUntouched, description: "hive nails");
        var pieces = await scene.Book.ForPieceAsync(scene.CommissionId);
        pieces.Select(p => p.MayBeCast).ShouldBe([true, false]);
        pieces[0].Findings.ShouldHaveSingleItem().Code.ShouldBe("material-dried-flower");
        pieces[1].WhyNot.ShouldContain("untouched");
    }

    [Fact]
    public async Task Every_word_a_percent_sign_or_an_underscore_is_looked_for_as_it_stands()
    {
        await scene.TakenInAsync(description: "50% wool");
        await scene.TakenInAsync(description: "wool");
        (await scene.Book.LedgerAsync("50%", "", 10)).Lines.ShouldHaveSingleItem();
        (await scene.Book.LedgerAsync("_ool", "", 10)).Lines.ShouldBeEmpty();
    }
}
