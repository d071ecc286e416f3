using Studio.Engine.Moulds;
using Studio.Engine.Parts;

namespace Studio.Pieces;

/// <summary>What is cut for the room for lights.</summary>
public sealed partial class PieceBook
{
    /// <summary>The parts of a design as it stands; what cannot be worked out yet says why.</summary>
    public static PartsPlan Parts(Piece piece)
    {
        var parts = piece.Parts ?? new PieceParts();
        return PartsCalculation.Run(new PartsInput
        {
            Mould = piece.Mould is { } mould && MouldShapes.Make(mould.Spec) is { Ok: true } made ? made.Value : null,
            Former = piece.Former,
            Cut = parts.Cut,
            Cover = parts.Cover,
            Feet = parts.Feet,
            Fittings = parts.Fittings,
            Light = parts.Light,
        });
    }
}
