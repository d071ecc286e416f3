using Studio.Engine.Custody;

namespace Studio.Engine.Tests.Custody;

public sealed class CustodyLedgerTests
{
    private int next;

    [Fact]
    public void Ashes_are_divided_by_the_scale()
    {
        // hand-worked: 200 g came, 40 g into the piece, 160 g went back
        var now = Read(In(1, 200), Set(0, 40), Out(CustodyKind.Returned, 1, 160));
        now.Balance.Held.ShouldBe(new CustodyAmount(0, 0));
        now.Balance.SetIn.ShouldBe(new CustodyAmount(0, 40));
        now.Balance.Returned.ShouldBe(new CustodyAmount(1, 160));
        now.Balance.PiecesAddUp.ShouldBeTrue();
        now.Balance.GramsAddUp.ShouldBe(true);
        now.Whereabouts.ShouldBe(CustodyWhereabouts.InPiece);
    }

    [Fact]
    public void Buttons_are_divided_by_number()
    {
        var now = Read(In(12, null), Set(5, null));
        now.Balance.Held.Count.ShouldBe(7);
        now.Balance.SetIn.Count.ShouldBe(5);
        now.Balance.GramsAddUp.ShouldBeNull("nobody weighed them");
        now.Whereabouts.ShouldBe(CustodyWhereabouts.Here, "seven are in the drawer");
    }

    [Fact]
    public void What_the_scale_alone_tells_is_told_as_that()
    {
        // 6.1 g of heather dries to 5.4 g; 2 g go in, 3.4 g go back
        var now = Read(In(1, 6.1), Entry(CustodyKind.Weighed, null, 5.4), Set(0, 2), Out(CustodyKind.Returned, 1, 3.4));
        now.Balance.ByDifferenceG.ShouldBe(0.7, 1e-9);
        now.Balance.GramsAddUp.ShouldBe(true);
        now.Balance.InHand.ShouldBeFalse();
    }

    [Fact]
    public void All_that_is_here_weighs_what_was_here()
    {
        var now = Read(In(3, 30), Set(1, 10), Out(CustodyKind.Returned, 2, null));
        now.Balance.Returned.ShouldBe(new CustodyAmount(2, 20));
        now.Balance.GramsAddUp.ShouldBe(true);
    }

    [Fact]
    public void A_part_that_nobody_weighed_leaves_the_grams_unknown_until_the_scale_is_asked()
    {
        var part = Set(0, null);
        Read(In(1, 6), part).Balance.Held.MassG.ShouldBeNull();
        var weighed = Read(In(1, 6), part, Entry(CustodyKind.Weighed, null, 4));
        weighed.Balance.Held.MassG.ShouldBe(4);
        weighed.Balance.SetIn.MassG.ShouldBeNull("two grams are missing by the scale, and nobody weighed what went in");
        weighed.Balance.GramsAddUp.ShouldBeNull();
    }

    [Fact]
    public void A_first_weighing_tells_what_came_in_where_nothing_left_unweighed()
    {
        Read(In(1, null), Entry(CustodyKind.Weighed, null, 12)).Balance.CameIn.MassG.ShouldBe(12);
        Read(In(1, null), Set(0, 3), Entry(CustodyKind.Weighed, null, 9)).Balance.CameIn.MassG.ShouldBe(12);
        Read(In(1, null), Set(0, null), Entry(CustodyKind.Weighed, null, 9)).Balance.CameIn.MassG.ShouldBeNull();
    }

    [Fact]
    public void What_a_withdrawn_pour_held_is_here_again_whatever_was_done_since()
    {
        var set = Set(5, 10);
        var now = Read(In(12, 24), set, Entry(CustodyKind.Moved, null, null) with { Place = "drawer 2" }, Entry(CustodyKind.TakenOut, null, null) with { RefId = set.Id, Place = "bench" });
        now.Balance.Held.ShouldBe(new CustodyAmount(12, 24));
        now.SetIn.ShouldBeEmpty();
        now.Place.ShouldBe("bench");
    }

    [Fact]
    public void An_unweighed_part_that_is_out_again_makes_the_grams_known_again()
    {
        var set = Set(0, null);
        Read(In(1, 6), set, Entry(CustodyKind.TakenOut, null, null) with { RefId = set.Id }).Balance.Held.MassG.ShouldBe(6);
    }

    [Fact]
    public void Dividing_makes_more_pieces_and_no_more_grams()
    {
        var now = Read(In(1, 8), Entry(CustodyKind.Divided, 2, null), Set(1, 2.5));
        now.Balance.Held.ShouldBe(new CustodyAmount(2, 5.5));
        now.Balance.PiecesAddUp.ShouldBeTrue();
    }

    [Fact]
    public void A_correction_changes_what_came_in_and_everything_after_it()
    {
        var now = Read(In(12, 24), Set(5, 10), Entry(CustodyKind.Corrected, 14, 28));
        now.Balance.CameIn.ShouldBe(new CustodyAmount(14, 28));
        now.Balance.Held.ShouldBe(new CustodyAmount(9, 18));
        Read(In(12, 24), Set(5, 10), Entry(CustodyKind.Corrected, 3, null)).Faults.ShouldNotBeEmpty("five are in the piece");
    }

    [Fact]
    public void What_is_taken_back_counts_no_longer()
    {
        var back = Out(CustodyKind.Returned, 12, null);
        var now = Read(In(12, null), back, Entry(CustodyKind.Undone, null, null) with { RefId = back.Id });
        now.Balance.Held.Count.ShouldBe(12);
        now.Whereabouts.ShouldBe(CustodyWhereabouts.Here);
    }

    [Fact]
    public void A_log_that_cannot_be_is_named()
    {
        Read(Set(1, null)).Faults.ShouldNotBeEmpty();
        Read(In(1, null), Out(CustodyKind.Returned, 2, null)).Faults.ShouldHaveSingleItem().Message.ShouldContain("2 pieces leave where 1 are held");
        Read(In(1, 5), Out(CustodyKind.Lost, 0, 6)).Faults.ShouldHaveSingleItem();
        Read(In(1, 5), Entry(CustodyKind.TakenOut, null, null) with { RefId = 99 }).Faults.ShouldHaveSingleItem();
        Read(In(1, 5), Entry(CustodyKind.Undone, null, null) with { RefId = 99 }).Faults.ShouldHaveSingleItem();
    }

    private static CustodyState Read(params CustodyEntry[] entries) => CustodyLedger.Read(entries);

    private CustodyEntry Entry(string kind, int? count, double? grams) => new(++next, kind) { Count = count, MassG = grams };

    private CustodyEntry In(int count, double? grams) => Entry(CustodyKind.Received, count, grams) with { Id = 0, Place = "drawer 1" };

    private CustodyEntry Set(int count, double? grams) => Entry(CustodyKind.SetIn, count, grams) with { PieceId = 1, LayerId = 1, PourId = 1 };

    private CustodyEntry Out(string kind, int count, double? grams) => Entry(kind, count, grams);
}
