using System.Data.Common;
using Microsoft.EntityFrameworkCore.Diagnostics;

namespace Studio.Data;

/// <summary>Asks who writes also where a book writes past the change tracker; <see cref="StudioDb"/> asks for everything else.</summary>
internal sealed class WriteGate : DbCommandInterceptor
{
    public static readonly WriteGate Instance = new();

    public override async ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
        DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
    {
        if (Writes(eventData) is { } db)
        {
            await db.AskAsync();
        }

        return result;
    }

    public override InterceptionResult<int> NonQueryExecuting(DbCommand command, CommandEventData eventData, InterceptionResult<int> result)
    {
        if (Writes(eventData) is { } db)
        {
            db.Ask();
        }

        return result;
    }

    // a migration brings the tables about before anybody can sign in; it has a source of its own
    private static StudioDb? Writes(CommandEventData told) =>
        told.CommandSource is CommandSource.ExecuteUpdate or CommandSource.ExecuteDelete or CommandSource.ExecuteSqlRaw ? told.Context as StudioDb : null;
}
