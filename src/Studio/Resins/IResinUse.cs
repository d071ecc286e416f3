using Studio.Data;

namespace Studio.Resins;

/// <summary>Tells where a resin is used. The rooms that use it answer: resins come before them and do not look into their records.</summary>
public interface IResinUse : IAsked
{
    /// <summary>In how many pieces it is poured or drawn.</summary>
    Task<int> PiecesAsync(StudioDb db, int resinId);
}

/// <summary>Tells which pour a thermometer's log belongs to.</summary>
public interface ILogPours : IAsked
{
    /// <summary>The pour of each log that a fit of this resin came from, by the log's id.</summary>
    Task<IReadOnlyDictionary<int, int>> OfAsync(StudioDb db, IReadOnlyCollection<int> logIds);
}
