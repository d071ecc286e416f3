using Studio.Data;

namespace Studio.Keepsakes;

/// <summary>Tells the pieces that keepsakes go into, by what they are called now, and hears which of them left. Pieces come after keepsakes and answer.</summary>
public interface IPieceNames : IAsked
{
    /// <summary>The names of these pieces; one that is not there is left out.</summary>
    Task<IReadOnlyDictionary<int, string>> OfAsync(StudioDb db, IReadOnlyCollection<int> pieceIds);

    /// <summary>Pieces of a commission that do not go to the family: they failed, were let go, or their commission was.</summary>
    Task<IReadOnlySet<int>> StayingAsync(StudioDb db, int commissionId);

    /// <summary>Castings of a commission that stand here: poured, not home, and not lost to the family.</summary>
    Task<IReadOnlyList<PieceHere>> HereAsync(StudioDb db, int commissionId);

    /// <summary>Castings that leave with a parcel are home from then on; kept with the caller's save.</summary>
    Task LeaveAsync(StudioDb db, IReadOnlyCollection<int> pieceIds);

    /// <summary>A commission's pieces, oldest first.</summary>
    Task<IReadOnlyList<PieceName>> OfCommissionAsync(StudioDb db, int commissionId);
}

/// <summary>A piece that a keepsake can go into.</summary>
/// <param name="Takes">True while something can still be set in.</param>
public sealed record PieceName(int Id, string Name, bool Takes);

/// <summary>A casting that stands here.</summary>
/// <param name="Finished">True once its work by hand is done: only then can it go.</param>
/// <param name="Words">How far it is, such as "in its mould".</param>
public sealed record PieceHere(int Id, string Name, bool Finished, string Words);

/// <summary>Tells the pours that hold keepsakes. The clock, which keeps them, comes after keepsakes and answers.</summary>
public interface IPourNames : IAsked
{
    /// <summary>Standing pours of a piece whose layer has this keepsake drawn in it.</summary>
    Task<IReadOnlyList<(int PourId, int LayerId)>> HoldingAsync(StudioDb db, int pieceId, int keepsakeId);

    /// <summary>These pours; one that is not there is left out.</summary>
    Task<IReadOnlyDictionary<int, PourName>> OfAsync(StudioDb db, IReadOnlyCollection<int> pourIds);
}

/// <summary>A pour that a keepsake lies in.</summary>
/// <param name="PieceId">Its piece.</param>
/// <param name="LayerNumber">Counted from 1 in pouring order.</param>
/// <param name="LayerName">As it was called when it was poured.</param>
/// <param name="Withdrawn">Taken back: it holds nothing.</param>
public sealed record PourName(int PieceId, int LayerNumber, string LayerName, bool Withdrawn);
