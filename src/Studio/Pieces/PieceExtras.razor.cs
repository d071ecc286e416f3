namespace Studio.Pieces;

/// <summary>What belongs to a piece beyond its layers.</summary>
public sealed partial class PieceExtras
{
    private static readonly string[] Bought = ["light", "battery", "hardware", "film", "packaging"];

    private Piece Piece => Session.Piece;

    private bool HasBattery => Piece.Fittings.Any(f => Session.Desk.Materials.Any(m => m.Id == f.MaterialId && m.Kind is "battery" or "light"));

    private void TakeMould(int id) => Session.Do("", () => (Piece.MouldId, Piece.Mould) = (id, Session.Desk.Moulds.FirstOrDefault(m => m.Id == id)));
}
