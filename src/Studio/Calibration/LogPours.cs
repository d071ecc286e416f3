using Microsoft.EntityFrameworkCore;
using Studio.Data;
using Studio.Resins;

namespace Studio.Calibration;

/// <summary>Answers the resins which pour a log belongs to.</summary>
internal sealed class LogPours : ILogPours
{
    public async Task<IReadOnlyDictionary<int, int>> OfAsync(StudioDb db, IReadOnlyCollection<int> logIds) =>
        await db.Set<CuringLog>().Where(l => logIds.Contains(l.Id)).ToDictionaryAsync(l => l.Id, l => l.PourId);
}
