using Studio.Data;

namespace Studio.Moulds;

/// <summary>Tells where a mould is used. The rooms that use it answer: moulds come before them and do not look into their records.</summary>
public interface IMouldUse : IAsked
{
    /// <summary>How many pieces are drawn in it.</summary>
    Task<int> PiecesAsync(StudioDb db, int mouldId);
}
