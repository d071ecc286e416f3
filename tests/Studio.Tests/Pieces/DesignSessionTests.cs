using Studio.Pieces;

namespace Studio.Tests.Pieces;

public sealed class DesignSessionTests
{
    private readonly DesignSession session = new(PieceSamples.Desk(PieceSamples.Piece()));

    [Fact]
    public void Every_change_recomputes_at_once_and_can_be_taken_back()
    {
        var before = session.Figures.Result!.FinishedMassG;
        session.MoveLine(0, 60, last: true);
        session.Dirty.ShouldBeTrue();
        session.Figures.Result!.Layers[0].ToMm.ShouldBe(60);
        session.Undo();
        session.Dirty.ShouldBeFalse();
        session.Figures.Result!.FinishedMassG.ShouldBe(before);
    }

    [Fact]
    public void A_whole_drag_is_one_step_of_undo()
    {
        foreach (var mm in new[] { 41, 44, 49, 55 })
        {
            session.MoveLine(0, mm, last: mm == 55);
        }

        session.MoveLine(0, 70, last: true);
        session.Undo();
        session.Piece.Layers[0].ToMm.ShouldBe(55);
        session.Undo();
        session.Piece.Layers[0].ToMm.ShouldBe(40);
    }

    [Fact]
    public void A_removed_layer_comes_back_as_it_was()
    {
        var before = DesignText.Write(session.Piece);
        session.Remove(1);
        session.Piece.Layers.Count.ShouldBe(2);
        session.Undo();
        DesignText.Write(session.Piece).ShouldBe(before);
        session.Piece.Layers[1].Resin!.Name.ShouldBe("Deep");
    }

    [Fact]
    public void A_half_typed_number_does_not_empty_the_drawing()
    {
        session.Do("x", () => session.Piece.Layers[0].ToMm = null);
        session.Figures.Result.ShouldBeNull();
        session.Good.ShouldNotBeNull();
        session.Section(asStands: true)!.Bands.Count.ShouldBe(3);
    }

    [Fact]
    public void A_new_layer_lies_within_the_one_at_its_place()
    {
        session.Insert(0);
        session.Figures.Errors.ShouldBeEmpty();
        session.Figures.Result!.Layers.Select(l => Math.Round(l.ToMm)).Take(3).ShouldBe([20, 40, 100]);
        session.Open.ShouldBe(0);
    }

    [Fact]
    public void A_poured_layer_is_settled_with_all_that_lies_under_it()
    {
        var poured = new DesignSession(PieceSamples.Desk(PieceSamples.Piece(), null, new MouldLayer(2, 100)));
        poured.Settled.ShouldBe(2);
        poured.MoveLine(1, 90, last: true);
        poured.Swap(1);
        poured.Dirty.ShouldBeFalse();
        poured.Insert(0);
        poured.Piece.Layers.Take(2).Select(l => l.Name).ShouldBe(["Blue", "Clear"]);
    }

    [Fact]
    public void A_draft_from_the_browser_is_taken_up_and_nonsense_is_not()
    {
        var other = PieceSamples.Piece();
        other.Layers[0].ToMm = 33;
        session.TakeUp(DesignText.Write(other)).ShouldBeTrue();
        session.Piece.Layers[0].ToMm.ShouldBe(33);
        session.TakeUp("{\"Id\":8}").ShouldBeFalse();
        session.TakeUp("<html>").ShouldBeFalse();
        session.Piece.Layers[0].ToMm.ShouldBe(33);
        DesignDraft.Read("half a dra").ShouldBeNull();
    }

    [Fact]
    public void My_design_can_be_laid_over_a_newer_one_and_waits_to_be_kept()
    {
        session.MoveLine(0, 60, last: true);
        var theirs = PieceSamples.Piece();
        theirs.Notes = "theirs";
        session.Reread(PieceSamples.Desk(theirs), mine: true);
        session.Piece.Layers[0].ToMm.ShouldBe(60);
        session.Dirty.ShouldBeTrue();
    }
}
