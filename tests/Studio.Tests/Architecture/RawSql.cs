using System.Text.RegularExpressions;
using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Tests.Architecture;

/// <summary>SQL written by hand, and the tables that it names: a room asks another one for what is that one's.</summary>
internal static partial class RawSql
{
    private static readonly IReadOnlyDictionary<string, string> Rooms = Tables();

    /// <summary>Each place where a file names a table of another room in SQL of its own.</summary>
    public static IReadOnlyList<string> Foreign(IEnumerable<(string Path, string Text)> files) =>
        [.. from file in files
            where Raw().IsMatch(file.Text)
            let room = file.Path.Split(Path.DirectorySeparatorChar)[2]
            from table in Named().Matches(file.Text).Select(m => m.Groups["table"].Value).Distinct(StringComparer.OrdinalIgnoreCase)
            where Rooms.TryGetValue(table, out var owner) && owner != room
            select $"{file.Path} names {table} of {Rooms[table]}"];

    private static Dictionary<string, string> Tables()
    {
        using var db = new SqliteStudioDb(new DbContextOptionsBuilder<SqliteStudioDb>().UseSqlite("Data Source=:memory:").Options);
        return db.Model.GetEntityTypes()
            .Where(t => t.ClrType.Namespace?.StartsWith("Studio.", StringComparison.Ordinal) == true)
            .ToDictionary(t => t.GetTableName()!, t => t.ClrType.Namespace!.Split('.')[1], StringComparer.OrdinalIgnoreCase);
    }

    [GeneratedRegex(@"\b(SqlQuery|SqlQueryRaw|FromSql|FromSqlRaw|FromSqlInterpolated|ExecuteSql|ExecuteSqlRaw|ExecuteSqlInterpolated|ExecuteSqlAsync|ExecuteSqlRawAsync|ExecuteSqlInterpolatedAsync|CommandText)\b", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Raw();

    [GeneratedRegex(@"\b(from|join|into|update)\s+\\?""?(?<table>\w+)", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase, 1000)]
    private static partial Regex Named();
}
