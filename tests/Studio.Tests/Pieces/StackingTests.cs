using CsCheck;
using Studio.Engine.Layers;
using Studio.Pieces;

namespace Studio.Tests.Pieces;

public sealed class StackingTests
{
    [Fact]
    public void Moving_a_line_leaves_everything_above_the_next_layer_where_it_was()
    {
        var piece = PieceSamples.Piece();
        (piece.Layers[2].ResinMl, piece.Layers[2].ThicknessMm) = (null, 30);
        Move(piece, 0, 52).ShouldBeTrue();
        Figures(piece).Layers.Select(l => l.ToMm).ShouldBe([52, 100, 130]);
    }

    [Fact]
    public void A_line_stops_a_millimetre_short_of_its_neighbours()
    {
        var piece = PieceSamples.Piece();
        Move(piece, 0, 5000);
        piece.Layers[0].ToMm.ShouldBe(99);
        Move(piece, 0, -5);
        piece.Layers[0].ToMm.ShouldBe(1);
        Move(piece, 0, double.NaN).ShouldBeFalse();
    }

    [Fact]
    public void The_top_line_goes_no_higher_than_the_rim_and_an_amount_becomes_a_height()
    {
        var piece = PieceSamples.Piece();
        Move(piece, 2, 400);
        (piece.Layers[2].ToMm, piece.Layers[2].ResinMl).ShouldBe((150, null));
    }

    [Fact]
    public void Whatever_line_is_moved_the_design_can_still_be_worked_out()
    {
        Gen.Select(Gen.Int[0, 2], Gen.Double[-50, 300]).Array[1, 12].Sample(moves =>
        {
            var piece = PieceSamples.Piece();
            foreach (var (index, to) in moves)
            {
                Move(piece, index, to);
                PieceBook.Figures(piece).Errors.ShouldBeEmpty();
            }
        });
    }

    [Fact]
    public void Layers_that_change_places_keep_their_thickness()
    {
        var piece = PieceSamples.Piece();
        piece.Layers[2].ToMm = 130;
        (piece.Layers[1].ThicknessMm, piece.Layers[1].ToMm, piece.Layers[2].ResinMl) = (null, 100, null);
        Stacking.Swap(piece.Layers, 1, Figures(piece));
        piece.Layers.Select(l => (l.Name, l.Order)).ShouldBe([("Blue", 0), ("Top", 1), ("Clear", 2)]);
        Figures(piece).Layers.Select(l => l.DepthMm).ShouldBe([40, 30, 60]);
    }

    private static LayersResult Figures(Piece piece) => PieceBook.Figures(piece).Result!;

    private static bool Move(Piece piece, int index, double to) => Stacking.MoveLine(piece.Layers, Figures(piece), 150, index, to);
}
