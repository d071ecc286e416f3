using Microsoft.EntityFrameworkCore;
using Studio.Data;

namespace Studio.Tests;

public sealed class MigrationTests
{
    [Fact]
    public void The_model_has_no_change_without_a_SQLite_migration()
    {
        using var db = new SqliteStudioDb(new DbContextOptionsBuilder<SqliteStudioDb>().UseSqlite("Data Source=:memory:").Options);
        db.Database.HasPendingModelChanges().ShouldBeFalse("run db/add-migration NAME");
    }

    [Fact]
    public void The_model_has_no_change_without_a_PostgreSQL_migration()
    {
        using var db = new PostgresStudioDb(new DbContextOptionsBuilder<PostgresStudioDb>().UseNpgsql("Host=localhost").Options);
        db.Database.HasPendingModelChanges().ShouldBeFalse("run db/add-migration NAME");
    }
}
