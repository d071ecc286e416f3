using Studio.Data;

namespace Studio.Pieces;

/// <summary>Tells which layers are in the mould already. The bench answers: it pours them, and this room does not look into its records.</summary>
public interface IPouredLayers : IAsked
{
    /// <summary>The layers of a piece that were poured and not taken back.</summary>
    Task<IReadOnlyList<MouldLayer>> OfAsync(StudioDb db, int pieceId);
}

/// <summary>A layer in the mould; nothing about it can be redesigned any more.</summary>
/// <param name="LayerId">The layer.</param>
/// <param name="ToMm">Where its top came to [mm].</param>
/// <param name="Curing">It does not let the piece out of its mould yet.</param>
public sealed record MouldLayer(int LayerId, double ToMm, bool Curing = false);
